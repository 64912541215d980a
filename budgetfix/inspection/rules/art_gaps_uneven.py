"""Pictures in a row or a grid with different gaps.

How to measure. Every gap between neighbours of a row, a column or a grid of
three or more, across and up; take the narrowest from the widest. Frames that
hang freely are left out.

Why: a row is a rhythm, and one wrong beat is what one hears.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.art import gaps, group_names, group_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give


def _measure(look: Look, subject: str) -> Measured | None:
    group = group_of(look, subject)
    between = gaps(group) if group is not None else ()
    if len(between) < 2:
        return None
    return Measured(max(between) - min(between), give=tape_give(*between[:2]), note="apart")


RULE = Rule(
    slug="art-gaps-uneven",
    title="Gaps between pictures uneven",
    measures="spread of the gaps in a row",
    unit="mm",
    band=Band(high=Twin(0.5), bad_high=Twin(3), aim=(None, 0.0)),
    weight=Fraction(1),
    subjects=group_names,
    measure=_measure,
    basis="common practice",
    family="picture group",
    absence="wall-bare",
    profiles={"handing-back": Fraction(0)},
)
