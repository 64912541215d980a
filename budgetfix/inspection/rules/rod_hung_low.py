"""A curtain rod just above the frame, under a stretch of bare wall.

How to measure. Floor to rod, floor to the frame's upper edge, floor to ceiling. With less than 5 in between frame and
ceiling the rule is silent.

Sound: at least 4 in (100 mm) above the frame, and half of the bare wall up or within 6 in (150) of the ceiling.
Aim: within 6 in of the ceiling. Glaring: 1 in (25) above the frame (a tenth of the bare wall where that is under 10 in,
250).
Why: a high rod makes the window and the ceiling taller; a low one cuts the wall in two.

Basis: common practice. The drops that are sold decide the heights on offer; that is the remedy's business.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.windows import at_window, dressed

SILENT, LEAST, UNDER_CEILING, BAD = Twin(5), Twin(4), Twin(6), Twin(1)
SHORT_GAP = Twin(10)


def _measure(look: Look, subject: str) -> Measured | None:
    found = at_window(look, subject)
    if found is None:
        return None
    window, curtain = found
    bare = look.facts.ceiling - window.top
    if bare < look.mm(SILENT) - 0.1:
        return None
    need = max(look.mm(LEAST), min(bare / 2, bare - look.mm(UNDER_CEILING)))
    bad = bare / 10 if bare < look.mm(SHORT_GAP) else look.mm(BAD)
    band = Band(low=need, bad_low=bad, aim=(bare - look.mm(UNDER_CEILING), None))
    up = curtain.rod_height - window.top
    return Measured(up, give=tape_give(curtain.rod_height, window.top), band=band, note="above the frame")


RULE = Rule(
    slug="rod-hung-low",
    title="Rod hung low",
    measures="height of the rod above the frame",
    how="Measure from the frame's upper edge to the rod.",
    unit="mm",
    band=Band(low=LEAST, bad_low=BAD),
    weight=Fraction(3),
    subjects=dressed,
    measure=_measure,
    basis="common practice",
    why="A low rod cuts the wall in two.",
    family="window dressing",
    absence="window-bare",
    profiles={"listing": Fraction(3, 2), "handing-back": Fraction(0)},
)
