"""A screen whose feet stand wider than the bench is.

How to measure. The width of the feet, from outside to outside, and the width
of the bench's top.

Why: a nudge, and the screen is on the floor.

Basis: common practice. Local codes and the maker's instructions come first.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.screens import bench_of, screens


def _measure(look: Look, subject: str) -> Measured | None:
    screen = look.hung_one(subject)
    found = bench_of(look, screen) if screen is not None else None
    if screen is None or found is None or screen.feet is None:
        return None
    _, (low, high) = found
    over = screen.feet - (high - low)
    unsure = abs(over) <= tape_give(screen.feet, high - low)
    severity = Fraction(int(over > 0.1))
    return Measured(max(0.0, over), severity=severity, note="beyond the bench", uncertain=unsure)


RULE = Rule(
    slug="screen-feet-overhang",
    title="Screen feet off the bench",
    measures="width of the feet beyond the bench",
    unit="mm",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(5),
    subjects=screens,
    measure=_measure,
    basis="common practice",
    safety=True,
    sound_words="feet on the bench",
    bad_words="any overhang",
)
