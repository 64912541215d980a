"""A rug under a bed that ends before the feet reach the floor.

How to measure. On each side of the bed: from the bed's side to the rug's edge.
A side within 12 in (300 mm) of a wall does not count.

Why: the feet land on the bare floor.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.places import footprint
from budgetfix.room.sides import free_ahead, sides, span

AT_WALL = Twin(12)


def _subjects(look: Look) -> tuple[str, ...]:
    beds = {bed.name for bed in look.pieces(whats=("bed",))}
    return tuple(rug.name for rug in look.rugs() if rug.under in beds and rug.wall in look.lines)


def _measure(look: Look, subject: str) -> Measured | None:
    rug = look.rug(subject)
    bed = look.piece(rug.under) if rug is not None and rug.under else None
    if rug is None or bed is None or bed.wall not in look.lines:
        return None
    its, cloth, spot = sides(bed, look.lines), footprint(rug, look.lines), footprint(bed, look.lines)
    beyond = []
    for side, out in ((its.left, (its.look[1], -its.look[0])), (its.right, (-its.look[1], its.look[0]))):
        if free_ahead(side, out, look.outline, (), 1200.0) > look.mm(AT_WALL):
            beyond.append(span(cloth, out)[1] - span(spot, out)[1])
    return Measured(min(beyond), give=tape_give(0.0, 0.0), note="on its shorter side") if beyond else None


RULE = Rule(
    slug="rug-under-bed",
    title="Rug under the bed too small",
    measures="how far a rug reaches beyond the sides of the bed",
    unit="mm",
    band=Band(low=Twin(18), bad_low=Twin(6), aim=(Twin(24, 610), None)),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="rug size",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
)
