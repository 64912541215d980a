"""A tall piece, or one with drawers, that is not fixed to the wall.

How to measure. Height from the floor, depth front to back. Drawers count from
27 in (690 mm) up; other pieces from 48 in (1220 mm) up, or when they are more
than three times as high as deep. Then feel behind the top for a strap or a
bracket.

Why: a climbing child or one open drawer is enough to tip it. There is no half
way, so the severity is flat.

Basis: 16 CFR 1261.2 via ASTM F2057-23: clothing storage from 27 in up
(published value S5). Our band leaves S5 on purpose in two ways: weight and
volume are not asked for, because nobody weighs a full dresser, and bookcases
and cabinets are judged too (common practice).
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import TALL, WITH_DRAWERS, Piece

DRAWERS_FROM = Twin(27)
OTHERS_FROM = Twin(48)
SLENDER = 3.0
CHILDREN, NOBODY = Fraction(1), Fraction(1, 2)


def _tips(look: Look, piece: Piece) -> bool:
    if piece.what in WITH_DRAWERS and piece.height >= look.mm(DRAWERS_FROM) - 0.1:
        return True
    return piece.height >= look.mm(OTHERS_FROM) - 0.1 or piece.height > SLENDER * piece.depth + 0.1


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(piece.name for piece in look.pieces(whats=TALL))


def _measure(look: Look, subject: str) -> Measured | None:
    piece = look.piece(subject)
    if piece is None or piece.hangs or not _tips(look, piece):
        return None
    if piece.fixed:
        return Measured(0.0, severity=Fraction(0), note="fixed to the wall")
    home = look.household
    flat = CHILDREN if home.children or home.toddlers else NOBODY
    return Measured(1.0, severity=flat, note="not fixed", uncertain=look.guessed(subject, "height", "depth"))


RULE = Rule(
    slug="tall-piece-loose",
    title="Tall piece not fixed to the wall",
    measures="whether a tall piece, or one with drawers, is fixed to the wall",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(5),
    subjects=_subjects,
    measure=_measure,
    basis="S5 (16 CFR 1261.2, ASTM F2057-23) for drawers; common practice",
    safety=True,
    gone_cures=True,
    sound_words="fixed to the wall",
    bad_words="not fixed; severity 1 with children in the home, else 0.5",
)
