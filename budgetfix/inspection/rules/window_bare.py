"""A window of a bedroom, or one that people look into, without blind and without
cloth.

How to measure. No tape: is there a blind or a curtain? Windows of other rooms
count where the survey says that they are overlooked.

Why: nobody sleeps or sits at ease in a lit shop window.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule


def _subjects(look: Look) -> tuple[str, ...]:
    private = look.facts.kind == "bedroom"
    return tuple(one.name for one in look.openings(whats=("window",)) if private or one.overlooked)


def _measure(look: Look, subject: str) -> Measured | None:
    window = look.opening(subject)
    if window is None:
        return None
    cloth = any(subject in (one.window, one.also_window) for one in look.curtains())
    bare = not cloth and not window.blind
    return Measured(float(bare), severity=Fraction(int(bare)), note="bare" if bare else "dressed")


RULE = Rule(
    slug="window-bare",
    title="Window bare",
    measures="blind or cloth at a window that needs it",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(4),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="window dressing",
    profiles={"listing": Fraction(3, 2), "handing-back": Fraction(0)},
    sound_words="dressed",
    bad_words="bare",
)
