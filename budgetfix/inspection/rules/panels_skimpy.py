"""Too little cloth for the rod.

How to measure. All panels laid flat, widths added up, over the rod from end to end.

Sound: 1.5 for eyelets, tabs and pockets, 1.8 for waves and sheers, 1.9 for pleats. Aim: 2.0, sheers 2.5.
Glaring: 1.0. Why: cloth pulled flat looks like a bed sheet.

Basis: an extension circular asks for 100 % fullness, 2.0 (published value P20), a school lesson for three times the
window (P19); what practitioners let pass is less, and differs with the heading: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.windows import at_window, dressed

LEAST = {"eyelet": 1.5, "tab": 1.5, "pocket": 1.5, "wave": 1.8, "pleat": 1.9}
SHEER = 1.8


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
    how="Lay the panels flat and add up their widths; measure the rod.",
    unit="ratio",
    band=Band(low=1.5, bad_low=1.0, aim=(2.0, None)),
    weight=Fraction(2),
    subjects=dressed,
    measure=_measure,
    basis="P19, P20; by heading common practice",
    why="Cloth pulled flat looks like a bed sheet.",
    family="window dressing",
    absence="window-bare",
    profiles={"listing": Fraction(3, 2), "handing-back": Fraction(0)},
)
