"""Curtains that end in the air, or lie in a heap.

How to measure. From the floor up to the hem (below 0 for cloth that lies on
the floor). Sill curtains: from the sill up to the hem. Apron curtains: from
the sill down to the hem.

Why: short curtains look like outgrown trousers.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.windows import at_window, dressed

FLOOR = Band(Twin(-1), Twin(0.75, 20), Twin(-6), Twin(3), (Twin(0.25), Twin(0.5)))
APRON = Band(Twin(4), Twin(6), Twin(1), Twin(9))


def _measure(look: Look, subject: str) -> Measured | None:
    found = at_window(look, subject)
    if found is None:
        return None
    window, curtain = found
    give, sill = tape_give(curtain.hem), tape_give(window.bottom)
    if curtain.length == "sill":
        return Measured(curtain.hem - window.bottom, give=give + sill, band=FLOOR, note="above the sill")
    if curtain.length == "apron":
        below = window.bottom - curtain.hem
        return Measured(below, give=give + sill, band=APRON, note="below the sill", own_band=True)
    return Measured(curtain.hem, give=give, band=FLOOR, note="off the floor")


RULE = Rule(
    slug="hem-off-floor",
    title="Hem off the floor",
    measures="height of the hem above the floor",
    unit="mm",
    band=FLOOR,
    weight=Fraction(3),
    subjects=dressed,
    measure=_measure,
    basis="common practice",
    family="window dressing",
    absence="window-bare",
    profiles={"listing": Fraction(3, 2), "handing-back": Fraction(0)},
    shown=(("To the floor, or to the sill", FLOOR), ("Apron, below the sill", APRON)),
)
