"""Photographs of the family and names in view (listing only).

How to measure. No tape: count what hangs and shows a face or a name.

Why: buyers are to see their own life in the room, not the seller's.

Basis: common practice of home stagers.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule


def _subjects(look: Look) -> tuple[str, ...]:
    return ("room",) if look.walls else ()


def _measure(look: Look, _subject: str) -> Measured | None:
    return Measured(float(sum(hung.personal for hung in look.hung())))


RULE = Rule(
    slug="personal-things",
    title="Personal things in view",
    measures="photographs and names in view",
    unit="count",
    band=Band(high=0.0, bad_high=6.0, aim=(0.0, 0.0)),
    weight=Fraction(5),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    profiles={"living": Fraction(0), "handing-back": Fraction(0)},
)
