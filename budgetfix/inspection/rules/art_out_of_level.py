"""Pictures in a row whose tops, middles and bottoms all differ.

How to measure. Each frame's lower and upper edge above the floor, in a row (of
a grid the worst row). Whichever of tops, middles and bottoms is most level
counts.

Why: nothing shows like a slope between two frames.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.art import group_names, group_of, rows_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.items import Hung


def _measure(look: Look, subject: str) -> Measured | None:
    group = group_of(look, subject)
    rows = [row for row in rows_of(group) if len(row) > 1] if group is not None else []
    if not rows:
        return None
    return Measured(max(_spread(row) for row in rows), give=tape_give(*(one.bottom for one in rows[0][:2])))


def _spread(row: tuple[Hung, ...]) -> float:
    lines = [[frame.bottom + frame.height * share for frame in row] for share in (0.0, 0.5, 1.0)]
    return min(max(heights) - min(heights) for heights in lines)


RULE = Rule(
    slug="art-out-of-level",
    title="Pictures out of level",
    measures="least spread of tops, middles or bottoms in a row",
    unit="mm",
    band=Band(high=Twin(0.5), bad_high=Twin(1.5), aim=(None, 0.0)),
    weight=Fraction(2),
    subjects=group_names,
    measure=_measure,
    basis="common practice",
    family="picture group",
    absence="wall-bare",
    profiles={"handing-back": Fraction(0)},
)
