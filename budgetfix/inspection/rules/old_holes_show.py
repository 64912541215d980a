"""Open holes and marks of what hung there before.

How to measure. No tape: stand in the door, then in the middle of the room, and
count the holes and marks that you see on the walls: pin holes, plug holes,
scuffs, what strips left behind, painted patches, stains. The survey takes them
on a sheet of their own, with the patch of wall that they take up; a scuff
counts as much as a hole. A patch is out of view
where pictures, or pieces up to 4 in (100 mm) from the wall, cover all of it.

Why: each one says that something is missing here, and a landlord counts them
too.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from shapely.ops import unary_union

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import Hung
from budgetfix.room.overlaps import AT_WALL_MM
from budgetfix.room.places import rectangle
from budgetfix.room.stretches import along_wall

HOLES = ("old holes", "mark")
SLACK_MM = 0.1


def _subjects(look: Look) -> tuple[str, ...]:
    return ("room",) if look.walls else ()


def _in_view(look: Look, patch: Hung) -> bool:
    """True where something of the patch is neither behind a picture nor behind a piece at the wall."""
    covers = [
        (one.from_left, one.bottom, one.from_left + one.width, one.bottom + one.height)
        for one in look.hung(wall=patch.wall)
        if one.what not in HOLES
    ]
    for piece in look.pieces(wall=patch.wall):
        start, end, near = along_wall(piece, look.lines, patch.wall)
        if near <= AT_WALL_MM and not piece.hangs:
            covers.append((start, 0.0, end, piece.height))
    wide, tall = max(patch.width, 1.0), max(patch.height, 1.0)
    spot = rectangle(patch.from_left, patch.bottom, patch.from_left + wide, patch.bottom + tall)
    return not unary_union([rectangle(*one).buffer(SLACK_MM) for one in covers]).covers(spot)


def _measure(look: Look, _subject: str) -> Measured | None:
    patches = [one for one in look.hung(whats=HOLES) if one.wall in look.lines and one.things > 0]
    shown = [patch for patch in patches if _in_view(look, patch)]
    walls = ", ".join(sorted({patch.wall for patch in shown}))
    return Measured(float(sum(patch.things for patch in shown)), note=f"in view on wall {walls}" if walls else "")


RULE = Rule(
    slug="old-holes-show",
    title="Old holes show",
    measures="open holes or marks in view on the walls",
    unit="count",
    band=Band(high=0.0, bad_high=8.0, aim=(None, 0.0)),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    profiles={"handing-back": Fraction(3)},
)
