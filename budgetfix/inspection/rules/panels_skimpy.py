"""Too little cloth for the rod.

How to measure. Lay the panels flat and add up their widths; measure the rod
from end to end, as it hangs; divide.

Why: cloth pulled flat looks like a bed sheet.

Basis: 2.0 is the extension default (Extension Circular A-249, How to Make
Draperies, 1956, published value P20); a school lesson (Math in the Workplace:
Homemaker, P19) asks for three times the window. Our band leaves both on
purpose: what practitioners let pass is less, and differs with the heading
(common practice).
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.windows import at_window, dressed

LEAST = {"eyelet": 1.5, "tab": 1.5, "pocket": 1.5, "wave": 1.8, "pleat": 1.9}
SHEER = 1.8
PLAIN, WAVE, PLEAT = (Band(low=LEAST[heading], bad_low=1.0, aim=(2.0, None)) for heading in ("eyelet", "wave", "pleat"))
SHEERS = Band(low=SHEER, bad_low=1.0, aim=(2.5, None))


def _measure(look: Look, subject: str) -> Measured | None:
    found = at_window(look, subject)
    if found is None or found[1].rod_width <= 0:
        return None
    curtain = found[1]
    flat = curtain.panels * curtain.panel_width
    least = max(LEAST[curtain.heading], SHEER if curtain.cloth == "sheer" else 0.0)
    full = 2.5 if curtain.cloth == "sheer" else 2.0
    give = (tape_give(curtain.panel_width) * curtain.panels + tape_give(curtain.rod_width)) / curtain.rod_width
    return Measured(
        flat / curtain.rod_width, give=give, band=Band(low=least, bad_low=1.0, aim=(full, None)), note="of the rod"
    )


RULE = Rule(
    slug="panels-skimpy",
    title="Panels skimpy",
    measures="flat width of all panels over the rod",
    unit="ratio",
    band=PLAIN,
    weight=Fraction(2),
    subjects=dressed,
    measure=_measure,
    basis="P19, P20; by heading common practice",
    family="window dressing",
    absence="window-bare",
    profiles={"listing": Fraction(3, 2), "handing-back": Fraction(0)},
    shown=(("Eyelets, tabs, pockets", PLAIN), ("Waves", WAVE), ("Pleats", PLEAT), ("Sheers", SHEERS)),
)
