"""Pictures too small for what they hang over.

How to measure. The group from its left edge to its right edge, divided by the
width of the piece below; on a bare wall by the clear span between what sticks
out (open curtains, shelves, tall pieces), counted to 96 in (2440 mm).

Why: a small picture over a long sofa looks like a stamp on a parcel.

Basis: common practice; two thirds of the piece is the rule of thumb.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.art import clear_of, group_names, group_of, piece_below
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give

COUNTED = Twin(96)
OVER = Band(low=0.55, bad_low=0.3, aim=(0.6, 0.7))
BARE = Band(low=0.5, bad_low=0.3, aim=(0.6, 0.7))


def _measure(look: Look, subject: str) -> Measured | None:
    group = group_of(look, subject)
    if group is None:
        return None
    piece = piece_below(look, group)
    if piece is not None:
        give = tape_give(group.width, piece.width) / piece.width
        return Measured(group.width / piece.width, give=give, note=f"of the {piece.name}")
    low, high = clear_of(look, group)
    span = min(high - low, look.mm(COUNTED))
    if span <= 0:
        return None
    return Measured(group.width / span, give=tape_give(group.width, span) / span, band=BARE, note="of the clear wall")


RULE = Rule(
    slug="art-too-small",
    title="Picture too small",
    measures="width of the group over what it hangs over",
    unit="ratio",
    band=OVER,
    weight=Fraction(3),
    subjects=group_names,
    measure=_measure,
    basis="common practice",
    family="picture group",
    absence="wall-bare",
    profiles={"handing-back": Fraction(0)},
    shown=(("Over furniture", OVER), ("On a bare wall", BARE)),
)
