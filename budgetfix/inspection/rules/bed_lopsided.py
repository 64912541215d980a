"""A bed for two with one nightstand or one lamp, or off the middle of its wall.

How to measure. Count the stands and the lamps on each side of the bed. Then
from the bed's middle to the middle of the wall at its head: more than 6 in
(150 mm) is off, where the bed could stand in the middle with 22 in (560 mm) on
each side and clear of the doors.

Why: one side gets the table and the light, the other the floor.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import Piece
from budgetfix.room.places import extent, middle
from budgetfix.room.sides import along, length, middle_of, sides

OFF = Twin(6)
BESIDE = Twin(22, 560)
FOR_TWO = Twin(53, 1350)
NEAR = Twin(24, 610)


def _subjects(look: Look) -> tuple[str, ...]:
    beds = look.pieces(whats=("bed",))
    return tuple(bed.name for bed in beds if bed.wall in look.lines and _for_two(look, bed))


def _for_two(look: Look, bed: Piece) -> bool:
    return bed.sleepers > 1 or (bed.sleepers == 0 and bed.width >= look.mm(FOR_TWO))


def _uneven(look: Look, bed: Piece) -> str:
    its = sides(bed, look.lines)
    left = (its.look[1], -its.look[0])
    center, half = along(middle_of(its.front), left), length(its.front) / 2
    stands = [stand for stand in look.pieces(whats=("nightstand",)) if stand.at in ("", bed.name)]
    lamps = look.lights(whats=("table lamp", "wall light"))
    for word, things in (("nightstand", tuple(stands)), ("lamp", lamps)):
        asides = [along(middle(one, look.lines), left) - center for one in things if one.wall in look.lines]
        near = [aside for aside in asides if abs(aside) - half <= look.mm(NEAR)]
        if sum(aside > 0 for aside in near) != sum(aside <= 0 for aside in near):
            return f"{word}s uneven"
    return ""


def _off_middle(look: Look, bed: Piece) -> str:
    line, wide = look.lines[bed.wall], extent(bed, look.lines)[0]
    start = (line.length - wide) / 2
    doors = look.openings(whats=("door", "opening", "closet"), wall=bed.wall)
    taken = any(door.from_left < start + wide and door.from_left + door.width > start for door in doors)
    off = abs(bed.from_left - start)
    fits = start >= look.mm(BESIDE) - 0.1 and not taken
    return "off the middle of its wall" if fits and off > look.mm(OFF) + 0.1 else ""


def _measure(look: Look, subject: str) -> Measured | None:
    bed = look.piece(subject)
    if bed is None:
        return None
    faults = [word for word in (_uneven(look, bed), _off_middle(look, bed)) if word]
    severity = Fraction(1) if faults else Fraction(0)
    return Measured(float(bool(faults)), severity=severity, note=", ".join(faults) or "even")


RULE = Rule(
    slug="bed-lopsided",
    title="Bed lopsided",
    measures="whether stands and lamps are even, and the bed is in the middle of its wall",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    profiles={"handing-back": Fraction(0)},
    sound_words="even",
    bad_words="uneven, or off the middle",
)
