"""A room of straight edges only.

How to measure. No tape: count the main pieces (seats, tables, rugs), and how
many of them are round or oval. Rooms with fewer than five are silent.

Why: one curve among many corners rests the eye. A matter of taste, so it is
off unless asked for.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import SEATS, TABLES_TO_REACH

MAIN = (*SEATS, *TABLES_TO_REACH, "dining table", "desk")
LEAST = 5


def _subjects(look: Look) -> tuple[str, ...]:
    return ("room",) if look.walls else ()


def _measure(look: Look, _subject: str) -> Measured | None:
    shapes = [piece.round for piece in look.pieces(whats=MAIN)] + [rug.round for rug in look.rugs()]
    if len(shapes) < LEAST:
        return None
    return Measured(sum(shapes) / len(shapes), note=f"{sum(shapes)} of {len(shapes)} pieces")


RULE = Rule(
    slug="all-straight-edges",
    title="Straight edges only",
    measures="share of the main pieces that are round or oval",
    unit="ratio",
    band=Band(low=0.2, bad_low=0.0),
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    off=True,
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
    sound_words="one in five is curved",
    bad_words="none is",
)
