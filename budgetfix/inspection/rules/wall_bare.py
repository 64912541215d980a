"""A long piece against a wall with nothing over it.

How to measure. Pieces 48 in (1220 mm) wide or more whose back is within 6 in
(150 mm) of the wall: is anything hung or leaned over them? A screen on its
bench counts. Beds with a headboard, pieces that come within 24 in (610 mm) of
the ceiling, and pieces under a window are left out.

Why: a long low thing against a blank wall looks unfinished.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.art import stretch_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import Piece
from budgetfix.room.places import turned
from budgetfix.room.stretches import overlap

LONG, AGAINST, UNDER_CEILING = Twin(48), Twin(6), Twin(24)
WHATS = (
    "sofa", "corner sofa", "loveseat", "daybed", "console", "sideboard", "desk", "bed", "dresser", "chest of drawers",
    "cabinet", "shelf unit", "shoe cabinet", "bookcase", "screen bench", "bench", "bench seat", "wardrobe",
)  # fmt: skip
OVER = ("picture", "mirror", "screen", "shelf", "clock")


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(one.name for one in look.pieces(whats=WHATS) if _judged(look, one))


def _judged(look: Look, piece: Piece) -> bool:
    if piece.wall not in look.lines or piece.width < look.mm(LONG) - 0.1 or piece.gap > look.mm(AGAINST) + 0.1:
        return False
    if turned(piece, look.lines) or (piece.what == "bed" and piece.headboard):
        return False
    return piece.height < look.facts.ceiling - look.mm(UNDER_CEILING)


def _measure(look: Look, subject: str) -> Measured | None:
    piece = look.piece(subject)
    if piece is None or not _judged(look, piece):
        return None
    own = stretch_of(look, piece, piece.wall)
    windows = look.openings(whats=("window",), wall=piece.wall)
    if any(overlap(own, (one.from_left, one.from_left + one.width)) > 0 for one in windows):
        return None
    hung = look.hung(whats=OVER, wall=piece.wall)
    bare = not any(overlap(own, (one.from_left, one.from_left + one.width)) > 0 for one in hung)
    return Measured(float(bare), severity=Fraction(int(bare)), note="bare" if bare else "something over it")


RULE = Rule(
    slug="wall-bare",
    title="Wall bare",
    measures="something on the wall over a long piece",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="picture group",
    profiles={"handing-back": Fraction(0)},
    sound_words="something over it",
    bad_words="bare",
)
