"""Pictures that are not in the middle of what they belong to.

How to measure. From the corner to both edges of the group, and of what it
belongs to: over a piece that piece, whatever its size; on a bare wall the
clear span between what sticks out (open curtains, shelves, tall pieces), not
the corners. Compare the middles.

Why: an eye finds the middle to a hand's width, and stumbles.

Basis: common practice. Curtains first, then art: a wider rod moves the middle.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.art import clear_of, group_names, group_of, piece_below, stretch_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give


def _measure(look: Look, subject: str) -> Measured | None:
    group = group_of(look, subject)
    if group is None:
        return None
    piece = piece_below(look, group)
    low, high = stretch_of(look, piece, group.wall) if piece is not None else clear_of(look, group)
    if high <= low:
        return None
    note = f"off the {piece.name}'s middle" if piece is not None else "off the wall's middle"
    return Measured(abs(group.middle - (low + high) / 2), give=tape_give(group.middle, high), note=note)


RULE = Rule(
    slug="art-off-center",
    title="Picture off centre",
    measures="distance between the group's middle and its place's",
    unit="mm",
    band=Band(high=Twin(2), bad_high=Twin(8), aim=(None, 0.0)),
    weight=Fraction(2),
    subjects=group_names,
    measure=_measure,
    basis="common practice",
    family="picture group",
    absence="wall-bare",
    profiles={"handing-back": Fraction(0)},
)
