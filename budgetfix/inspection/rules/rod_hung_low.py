"""A curtain rod just above the frame, under a stretch of bare wall.

How to measure. From the floor to the rod, to the frame's upper edge, and to
the ceiling. With less than 5 in (130 mm) between frame and ceiling the rule is
silent.

Why: a high rod makes the window and the ceiling taller; a low one cuts the
wall in two.

Basis: common practice. The drops that are sold decide the heights on offer;
that is the remedy's business.
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
    unit="mm",
    band=Band(low=LEAST, bad_low=BAD),
    weight=Fraction(3),
    subjects=dressed,
    measure=_measure,
    basis="common practice",
    family="window dressing",
    absence="window-bare",
    profiles={"listing": Fraction(3, 2), "handing-back": Fraction(0)},
    sound_words=(
        "4 in (100 mm) or more above the frame, and half of the bare wall up or 6 in (150 mm) below the ceiling"
    ),
    bad_words="1 in (25 mm) above the frame; a tenth of the bare wall where that is under 10 in (250 mm)",
    aim_words="6 in (150 mm) below the ceiling or higher",
)
