"""Pictures of one group so far apart that they fall apart.

How to measure. The widest gap between neighbours of a named group.

Sound: 4 in (100 mm). Aim: 2 to 3 in. Glaring: 9 in (230). Why: a group is seen as one thing or not at all.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.art import gaps, group_names, group_of, in_row
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give


def _measure(look: Look, subject: str) -> Measured | None:
    group = group_of(look, subject)
    if group is None or not group.named or not in_row(group):
        return None
    return Measured(max(gaps(group)), give=tape_give(0.0))


RULE = Rule(
    slug="art-gaps-wide",
    title="Gaps between pictures wide",
    measures="widest gap in a group",
    how="Measure the gaps between neighbours.",
    unit="mm",
    band=Band(high=Twin(4), bad_high=Twin(9), aim=(Twin(2), Twin(3))),
    weight=Fraction(1),
    subjects=group_names,
    measure=_measure,
    basis="common practice",
    why="A group is seen as one thing or not at all.",
    family="picture group",
    absence="wall-bare",
    profiles={"handing-back": Fraction(0)},
)
