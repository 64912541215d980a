"""A wall light too high or too low.

How to measure. The middle of the light above the floor. Beside a bed (at its
head's wall, within 36 in, 910 mm, of its side): from the top of the mattress
to the light's lower edge.

Why: too low it dazzles, too high it lights the ceiling.

Basis: common practice. A band in the brief speaks of the height above the
floor.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.items import Hung, Piece
from budgetfix.room.stretches import along_wall

WALL = Band(Twin(60), Twin(66), Twin(50), Twin(76))
BED = Band(Twin(20), Twin(24), Twin(10), Twin(34))
BESIDE, AT_HEAD = Twin(36), Twin(12)
MATTRESS = Twin(24, 600)


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(one.name for one in look.hung(whats=("sconce",)) if one.wall in look.lines)


def _bed(look: Look, lamp: Hung) -> Piece | None:
    """The bed that the light hangs beside."""
    middle = lamp.from_left + lamp.width / 2
    for bed in sorted(look.pieces(whats=("bed",), wall=lamp.wall), key=lambda one: one.name):
        low, high, near = along_wall(bed, look.lines, lamp.wall)
        if near <= look.mm(AT_HEAD) + 0.1 and low - look.mm(BESIDE) <= middle <= high + look.mm(BESIDE):
            return bed
    return None


def _measure(look: Look, subject: str) -> Measured | None:
    lamp = look.hung_one(subject)
    if lamp is None or lamp.wall not in look.lines:
        return None
    bed = _bed(look, lamp)
    if bed is None:
        give = tape_give(lamp.bottom) + tape_give(lamp.height) / 2
        return Measured(lamp.bottom + lamp.height / 2, give=give, note="to its middle")
    top = look.mm(MATTRESS) if bed.seat is None else bed.seat
    unsure = bed.seat is None or look.guessed(bed.name, "seat")
    give = tape_give(lamp.bottom, top)
    return Measured(lamp.bottom - top, give=give, band=BED, note="above the mattress", uncertain=unsure, own_band=True)


RULE = Rule(
    slug="sconce-off-height",
    title="Wall light off height",
    measures="height of the middle above the floor, or of the lower edge above the mattress",
    unit="mm",
    band=WALL,
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="picture group",
    profiles={"handing-back": Fraction(0)},
    shown=(("Above the floor", WALL), ("Beside a bed, above the mattress", BED)),
)
