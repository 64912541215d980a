"""Too many things on one surface.

How to measure. No tape: count what stands on it. A tray with things on it is
one, a pile of books is one.

Why: a full surface looks like work to be done.

Basis: common practice; photographs ask for fewer.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(piece.name for piece in look.pieces() if piece.surface and piece.things > 0)


def _measure(look: Look, subject: str) -> Measured | None:
    piece = look.piece(subject)
    return None if piece is None else Measured(float(piece.things))


RULE = Rule(
    slug="surface-crowded",
    title="Surface crowded",
    measures="things that stand on one surface",
    unit="count",
    band=Band(high=5.0, bad_high=15.0, aim=(None, 3.0)),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    bands={"listing": Band(high=3.0, bad_high=8.0, aim=(None, 3.0))},
    basis="common practice",
    profiles={"handing-back": Fraction(0)},
)
