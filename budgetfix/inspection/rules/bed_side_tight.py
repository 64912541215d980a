"""Too little floor beside the bed.

How to measure. From the side of the bed to the next thing or wall, on each
side where someone gets out; a nightstand does not count. A bed for two uses
both sides, and the main way is the side nearest the door. A bed for one uses
its wider side: the other may stand at the wall, or leave 12 in (300 mm) to
make the bed.

Why: someone climbs over the other every night.

Basis: HUD, Manual of Acceptable Practices vol. 4 (1973), published value C16:
24 in in the major path, 22 in on the circulation side, 12 in on the least used
side. Our rule leaves one figure of C16 out on purpose, the 42 in for dressing:
few bedrooms have it.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, slope, tape_give
from budgetfix.room.items import Piece
from budgetfix.room.places import footprint
from budgetfix.room.sides import Side, free_ahead, middle_of, sides, strip

GLARING = Twin(10)
OTHER = Band(low=Twin(22, 560), bad_low=GLARING, aim=(Twin(30), None))
MAIN = Band(low=Twin(24, 610), bad_low=GLARING, aim=(Twin(30), None))
FOR_TWO = Twin(53, 1350)
REACH_MM = 1200.0


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(bed.name for bed in look.pieces(whats=("bed",)) if bed.wall in look.lines)


def _beside(look: Look, bed: Piece, side: Side, outward: tuple[float, float]) -> float:
    x0, y0, x1, y1 = strip(side, outward, REACH_MM).bounds
    blocks = [
        footprint(piece, look.lines)
        for piece in look.pieces(box=(x0, y0, x1, y1))
        if piece.name != bed.name and piece.what != "nightstand" and piece.at != bed.name
    ]
    return free_ahead(side, outward, look.outline, blocks, REACH_MM)


def _to_door(look: Look, side: Side) -> float:
    doors = [door for door in look.openings(whats=("door", "opening")) if door.wall in look.lines]
    spots = [look.lines[door.wall].point(door.from_left + door.width / 2) for door in doors]
    return min((math.dist(middle_of(side), spot) for spot in spots), default=0.0)


def _measure(look: Look, subject: str) -> Measured | None:
    bed = look.piece(subject)
    if bed is None:
        return None
    its = sides(bed, look.lines)
    left, right = (its.look[1], -its.look[0]), (-its.look[1], its.look[0])
    places = (("left", its.left, left), ("right", its.right, right))
    free = {name: _beside(look, bed, side, outward) for name, side, outward in places}
    doorway = {name: _to_door(look, side) for name, side, _ in places}
    sleepers = bed.sleepers or (2 if bed.width >= look.mm(FOR_TWO) else 1)
    main = min(free, key=lambda name: (round(doorway[name], 3), -free[name], name))
    used = sorted(free) if sleepers > 1 else [max(free, key=lambda name: (free[name], name))]
    judged = []
    for name in used:
        band = MAIN if name == main or sleepers == 1 else OTHER
        judged.append((slope(free[name], band, "mm", look.household.metric), -free[name], name, band))
    _, _, name, band = max(judged, key=lambda one: one[:3])
    return Measured(free[name], give=tape_give(free[name]), band=band, note=f"{name} side, lying on your back")


RULE = Rule(
    slug="bed-side-tight",
    title="Too tight beside the bed",
    measures="free floor beside a bed, on the sides where someone gets out",
    unit="mm",
    band=OTHER,
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="C16 (HUD 1973)",
    lifting_helps=True,
    profiles={"handing-back": Fraction(0)},
    shown=(("The main way", MAIN), ("The other side in use", OTHER)),
)
