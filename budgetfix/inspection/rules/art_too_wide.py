"""Pictures nearly as wide as, or wider than, what they hang over.

How to measure. The group from its left edge to its right edge, divided by the
width of the piece below; on a bare wall by the clear span between what sticks
out.

Why: what hangs must not look heavier than what stands.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.art import clear_of, group_names, group_of, piece_below
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give


def _measure(look: Look, subject: str) -> Measured | None:
    group = group_of(look, subject)
    if group is None:
        return None
    piece = piece_below(look, group)
    low, high = (0.0, piece.width) if piece is not None else clear_of(look, group)
    if high <= low:
        return None
    note = f"of the {piece.name}" if piece is not None else "of the clear wall"
    return Measured(group.width / (high - low), give=tape_give(group.width, high - low) / (high - low), note=note)


RULE = Rule(
    slug="art-too-wide",
    title="Picture too wide",
    measures="width of the group over what it hangs over",
    unit="ratio",
    band=Band(high=0.9, bad_high=1.1),
    weight=Fraction(1),
    subjects=group_names,
    measure=_measure,
    basis="common practice",
    family="picture group",
    absence="wall-bare",
    profiles={"handing-back": Fraction(0)},
)
