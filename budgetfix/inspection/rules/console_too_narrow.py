"""A screen wider than, or nearly as wide as, the bench below it.

How to measure. The bench's width less the screen's, both sides together.
Something about as tall as the bench (within 6 in, 150 mm) right beside it
(within 4 in, 100 mm) counts to its width. Below 0 the screen overhangs.

Why: a screen that overhangs its bench looks as if it would fall, and a narrow
bench makes the wall bare.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.screens import bench_of, beside, screens

AS_TALL, BESIDE = Twin(6), Twin(4)


def _measure(look: Look, subject: str) -> Measured | None:
    screen = look.hung_one(subject)
    found = bench_of(look, screen) if screen is not None else None
    if screen is None or found is None:
        return None
    bench, (low, high) = found
    give = tape_give(high - low, screen.width)
    for piece, (start, end) in beside(look, screen.wall, bench, look.mm(BESIDE)):
        if abs(piece.height - bench.height) <= look.mm(AS_TALL) + 0.1:
            low, high = min(low, start), max(high, end)
    return Measured(high - low - screen.width, give=give, note="past the screen")


RULE = Rule(
    slug="console-too-narrow",
    title="Bench too narrow",
    measures="width of the bench less the width of the screen",
    unit="mm",
    band=Band(low=Twin(8, 200), bad_low=Twin(-2), aim=(Twin(12, 300), None)),
    weight=Fraction(3),
    subjects=screens,
    measure=_measure,
    basis="common practice",
    family="screen",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
)
