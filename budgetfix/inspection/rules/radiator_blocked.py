"""A heater with furniture close before it, or long cloth hanging over it.

How to measure. From the front of the heater to the next thing that stands
before it. With the curtains open: how much of the heater is behind cloth? Up
to 4 in, 100 mm, passes.

Why: the warmth stays behind the sofa or at the window.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.items import Piece
from budgetfix.room.places import extent, footprint
from budgetfix.room.sides import free_ahead, sides, strip
from budgetfix.room.stretches import cloth_of, overlap

FIXED_HEATERS = ("radiator", "electric heater", "baseboard heater")
FREE = Twin(4)
REACH_MM = 600.0


def _covered(look: Look, heater: Piece) -> float:
    """The widest stretch of a heater that open cloth hangs over on one side."""
    start, end = heater.from_left, heater.from_left + extent(heater, look.lines)[0]
    windows = {window.name for window in look.openings(whats=("window",), wall=heater.wall)}
    covered = 0.0
    for curtain in look.curtains():
        if curtain.window in windows and curtain.hem < heater.height:
            covered = max([covered, *(overlap((start, end), cloth) for cloth in cloth_of(curtain))])
    return covered


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(heater.name for heater in look.pieces(whats=FIXED_HEATERS) if heater.wall in look.lines)


def _measure(look: Look, subject: str) -> Measured | None:
    heater = look.piece(subject)
    if heater is None:
        return None
    its = sides(heater, look.lines)
    x0, y0, x1, y1 = strip(its.front, its.look, REACH_MM).bounds
    others = [piece for piece in look.pieces(box=(x0, y0, x1, y1)) if piece.name != subject]
    blocks = [footprint(piece, look.lines) for piece in others]
    free = free_ahead(its.front, its.look, look.outline, blocks, REACH_MM)
    if _covered(look, heater) > look.mm(FREE):
        return Measured(free, severity=Fraction(1), note="long cloth hangs over it")
    return Measured(free, give=tape_give(free), note="free before it")


RULE = Rule(
    slug="radiator-blocked",
    title="Heater blocked",
    measures="free floor before a heater, and cloth over it",
    unit="mm",
    band=Band(low=FREE, bad_low=0.0),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    profiles={"handing-back": Fraction(0)},
    family="free floor",
    family_by_room=True,
    bad_words="touching, or cloth over it",
)
