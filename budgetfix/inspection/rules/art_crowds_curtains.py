"""A picture close to, or behind, the open curtain.

How to measure. Open the curtain. From the nearest cloth to the picture's edge,
on the same wall.

Why: each needs its own piece of wall.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.art import group_names, group_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.stretches import cloth_of, overlap


def _measure(look: Look, subject: str) -> Measured | None:
    group = group_of(look, subject)
    if group is None:
        return None
    windows = {one.name for one in look.openings(whats=("window",), wall=group.wall)}
    cloths = [cloth for one in look.curtains() if one.window in windows for cloth in cloth_of(one)]
    if not cloths:
        return None
    apart = min(-overlap((group.left, group.right), cloth) for cloth in cloths)
    return Measured(apart, give=tape_give(group.left, group.right))


RULE = Rule(
    slug="art-crowds-curtains",
    title="Picture crowds the curtain",
    measures="distance from the picture to the open curtain",
    unit="mm",
    band=Band(low=Twin(4), bad_low=0.0, aim=(Twin(6), None)),
    weight=Fraction(1),
    subjects=group_names,
    measure=_measure,
    basis="common practice",
    family="picture group",
    absence="wall-bare",
    profiles={"handing-back": Fraction(0)},
    bad_words="touching",
)
