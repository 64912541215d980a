"""A rod so short that the open curtains cover glass.

How to measure. From the frame's outer edge to the end of the rod, left and
right. It should go as far as the open cloth needs: the flat width of the panel
x 0.18 (sheer), 0.22 (lined), 0.28 (blackout), unless you measured the open
cloth.

What one side cannot have the other takes, so curtains near a corner need not
be symmetrical. The wall ends at the corner, the next door, halfway to the next
window with a rod of its own, and at a shelf, a screen or a piece taller than
the sill. Severity: what is missing on both sides over what is asked.

Why: cloth belongs on the wall, not before the light, and the window looks as
wide as the rod.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.numbers import exact
from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.windows import at_window, dressed, glass, wall_beside
from budgetfix.room.stretches import rod_ends, stack_of

LESS, LEAST = Twin(2), Twin(5, 130)


def asked(need: float, walls: tuple[float, float]) -> tuple[float, float]:
    """What each side should have: the need, at most the wall; what one cannot have the other takes."""
    left, right = (min(need, wall) for wall in walls)
    return min(walls[0], left + need - right), min(walls[1], right + need - left)


def _measure(look: Look, subject: str) -> Measured | None:
    found = at_window(look, subject)
    if found is None:
        return None
    window, curtain = found
    frame = glass(look, window, curtain)
    start, end = rod_ends(curtain)
    past = (frame[0] - start, end - frame[1])
    need = max(look.mm(LEAST), stack_of(curtain) - look.mm(LESS))
    wanted = asked(need, wall_beside(look, window, curtain, frame))
    total = sum(wanted)
    short = [max(0.0, want - have) if want - have > 0.1 else 0.0 for want, have in zip(wanted, past, strict=True)]
    severity = min(Fraction(3), exact(sum(short)) / exact(total)) if total > 0.1 else Fraction(0)
    worst = min(range(2), key=lambda side: (round(past[side] - wanted[side], 3), past[side], side))
    band = Band(low=wanted[worst], bad_low=0.0, aim=(Twin(8), Twin(12)))
    give = tape_give((start, end)[worst], frame[worst])
    unsure = abs(past[worst] - wanted[worst]) <= give
    return Measured(past[worst], band=band, severity=severity, note="past the frame", uncertain=unsure)


RULE = Rule(
    slug="rod-too-narrow",
    title="Rod too narrow",
    measures="how far the rod goes past the frame, the worse side",
    unit="mm",
    band=Band(low=LEAST, bad_low=0.0, aim=(Twin(8), Twin(12))),
    weight=Fraction(3),
    subjects=dressed,
    measure=_measure,
    basis="common practice",
    family="window dressing",
    absence="window-bare",
    profiles={"listing": Fraction(3, 2), "handing-back": Fraction(0)},
    sound_words="the open cloth less 2 in (50 mm), at least 5 in (130 mm) each side, or all that the wall allows",
    bad_words="nothing past the frame",
)
