"""Pictures of one group so far apart that they fall apart.

How to measure. The widest gap between neighbours of a group that the survey
names. What it does not name is grouped by gaps no wider than what is sound.

Why: a group is seen as one thing or not at all.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.art import group_names, group_of, widest_gap
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give


def _measure(look: Look, subject: str) -> Measured | None:
    group = group_of(look, subject)
    if group is None or not group.named or len(group.frames) < 2:
        return None
    widest = widest_gap(group)
    return Measured(widest, give=tape_give(widest), note="at the widest")


RULE = Rule(
    slug="art-gaps-wide",
    title="Gaps between pictures wide",
    measures="widest gap in a group",
    unit="mm",
    band=Band(high=Twin(4), bad_high=Twin(9), aim=(Twin(2), Twin(3))),
    weight=Fraction(1),
    subjects=group_names,
    measure=_measure,
    basis="common practice",
    family="picture group",
    absence="wall-bare",
    profiles={"handing-back": Fraction(0)},
)
