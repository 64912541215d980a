"""A screen that stands on furniture and is not strapped to it or to the wall.

How to measure. No tape: tip it gently with a finger. Does a strap hold it?
Where the survey does not say, it counts as loose and the finding as uncertain.

Why: a screen that tips falls on who pulled at it.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.inspection.screens import screens

HELD = ("strap", "screws")


def _measure(look: Look, subject: str) -> Measured | None:
    screen = look.hung_one(subject)
    if screen is None or not screen.on:
        return None
    loose = screen.fixing not in HELD
    severity = (
        (Fraction(1) if look.household.children or look.household.toddlers else Fraction(2, 5))
        if loose
        else Fraction(0)
    )
    note = "not strapped" if loose else "strapped"
    return Measured(float(loose), severity=severity, note=note, uncertain=screen.fixing == "unknown")


RULE = Rule(
    slug="screen-loose",
    title="Screen not strapped",
    measures="is a standing screen strapped",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(5),
    subjects=screens,
    measure=_measure,
    basis="common practice",
    safety=True,
    sound_words="strapped",
    bad_words="not strapped; severity 1 where children live or visit, else 0.4",
)
