"""A wardrobe or sofa pushed close to an outside wall.

How to measure. From the wall to the back of the piece, at its nearest point.
Only walls that the survey marks as outside walls count.

Why: cold outside walls sweat, and the air must pass behind.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give

KINDS = ("wardrobe", "sofa", "corner sofa")
NEAR_MM = 300.0
"""A piece farther from the wall does not stand at it."""


def _subjects(look: Look) -> tuple[str, ...]:
    outside = {wall.wall for wall in look.walls if wall.outside}
    return tuple(piece.name for piece in look.pieces(whats=KINDS) if piece.wall in outside) if outside else ()


def _measure(look: Look, subject: str) -> Measured | None:
    piece = look.piece(subject)
    outside = {wall.wall for wall in look.walls if wall.outside}
    if piece is None or piece.wall not in outside or piece.gap > NEAR_MM:
        return None
    return Measured(piece.gap, give=tape_give(piece.gap), uncertain=look.guessed(subject, "gap"))


RULE = Rule(
    slug="damp-gap",
    title="No air behind at an outside wall",
    measures="gap between an outside wall and a wardrobe or sofa",
    unit="mm",
    band=Band(low=Twin(2), bad_low=0.0),
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="free floor",
    family_by_room=True,
    bad_words="touching",
)
