"""Pictures in a row whose tops, middles and bottoms all differ.

How to measure. Tops, middles and bottoms above the floor; whichever of the three is most level counts.

Sound: 1/2 in (15 mm). Aim: 0. Glaring: 1 1/2 in (40). Why: nothing shows like a slope between two frames.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.art import group_names, group_of, in_row
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give


def _measure(look: Look, subject: str) -> Measured | None:
    group = group_of(look, subject)
    if group is None or not in_row(group):
        return None
    lines = (
        [frame.bottom for frame in group.frames],
        [frame.bottom + frame.height / 2 for frame in group.frames],
        [frame.bottom + frame.height for frame in group.frames],
    )
    spread = min(max(heights) - min(heights) for heights in lines)
    return Measured(spread, give=tape_give(0.0, 0.0) / 2)


RULE = Rule(
    slug="art-out-of-level",
    title="Pictures out of level",
    measures="least spread of tops, middles or bottoms in a row",
    how="Measure each frame's lower and upper edge above the floor.",
    unit="mm",
    band=Band(high=Twin(0.5), bad_high=Twin(1.5), aim=(None, 0.0)),
    weight=Fraction(2),
    subjects=group_names,
    measure=_measure,
    basis="common practice",
    why="Nothing shows like a slope between two frames.",
    family="picture group",
    absence="wall-bare",
    profiles={"handing-back": Fraction(0)},
)
