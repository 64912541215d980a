"""A free blind cord or loop that a child can get a head into.

How to measure. Let the cord hang and measure its free length, or the length of
the loop. A cord that is tied down, or wound on a cleat out of reach, counts as
0.

Why: loops strangle small children, silently and in minutes.

Basis: ANSI/WCMA A100.1-2018 4.3.1 as adopted by 16 CFR 1120.3 and 1260
(published value S6).
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.numbers import TOLERANCE
from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule

MOST = Twin(8)
CHILDREN, NOBODY = Fraction(1), Fraction(2, 5)


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(window.name for window in look.openings(whats=("window",)))


def _measure(look: Look, subject: str) -> Measured | None:
    window = look.opening(subject)
    if window is None:
        return None
    if window.cord <= look.mm(MOST) + TOLERANCE["mm"]:
        return Measured(window.cord, severity=Fraction(0))
    home = look.household
    flat = CHILDREN if home.children or home.toddlers else NOBODY
    return Measured(window.cord, severity=flat, note="free cord or loop")


RULE = Rule(
    slug="cord-in-reach",
    title="Blind cord in reach",
    measures="free length of a blind's operating cord or loop",
    unit="mm",
    band=Band(high=MOST),
    weight=Fraction(5),
    subjects=_subjects,
    measure=_measure,
    basis="S6 (ANSI/WCMA A100.1-2018 4.3.1; 16 CFR 1120.3, 1260)",
    safety=True,
    bad_words="any longer; severity 1 with children in the home, else 0.4",
)
