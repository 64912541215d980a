"""A screen whose feet stand wider than the bench is.

How to measure. The outside width of the feet, and the width of the bench's top.

Sound: nothing overhangs. Anything is glaring. Why: a nudge, and the screen is on the floor.

Basis: common practice. Local codes and the maker's instructions come first.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.screens import screens
from budgetfix.room.places import extent


def _measure(look: Look, subject: str) -> Measured | None:
    screen = look.hung_one(subject)
    bench = look.piece(screen.on) if screen is not None and screen.on else None
    if screen is None or bench is None or screen.feet is None or bench.wall not in look.lines:
        return None
    over = screen.feet - extent(bench, look.lines)[0]
    severity = Fraction(1) if over > 0.1 else Fraction(0)
    return Measured(max(0.0, over), severity=severity, note="beyond the bench", uncertain=abs(over) < tape_give(over))


RULE = Rule(
    slug="screen-feet-overhang",
    title="Screen feet off the bench",
    measures="width of the feet beyond the bench",
    how="Measure the feet from outside to outside, and the bench's top.",
    unit="mm",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(5),
    subjects=screens,
    measure=_measure,
    basis="common practice",
    why="A nudge, and the screen is on the floor.",
    safety=True,
    sound_words="feet on the bench",
)
