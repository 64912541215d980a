"""A screen wider than, or nearly as wide as, the bench below it.

How to measure. The bench's width less the screen's. Something about as tall as the bench (within 6 in) that stands
right beside it (within 4 in) counts to its width.

Sound: 8 in (200 mm) more than the screen. Aim: 12 in (300). Glaring: 2 in (50) less. Why: a screen that overhangs
its bench looks as if it would fall, and a narrow bench makes the wall look bare.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.screens import screens
from budgetfix.room.items import SEATS
from budgetfix.room.places import extent

AS_TALL, BESIDE = Twin(6), Twin(4)


def _measure(look: Look, subject: str) -> Measured | None:
    screen = look.hung_one(subject)
    bench = look.piece(screen.on) if screen is not None and screen.on else None
    if screen is None or bench is None or bench.wall not in look.lines:
        return None
    wide, _ = extent(bench, look.lines)
    low, high = bench.from_left, bench.from_left + wide
    beside = [one for one in look.pieces(wall=bench.wall) if one.name != bench.name and one.what not in SEATS]
    near = [one for one in beside if abs(one.height - bench.height) <= look.mm(AS_TALL) + 0.1]
    for one in sorted(near, key=lambda one: (one.from_left, one.name)):
        along, _ = extent(one, look.lines)
        start, end = one.from_left, one.from_left + along
        if start - high <= look.mm(BESIDE) + 0.1 and low - end <= look.mm(BESIDE) + 0.1:
            low, high = min(low, start), max(high, end)
    return Measured(high - low - screen.width, give=tape_give(wide, screen.width))


RULE = Rule(
    slug="console-too-narrow",
    title="Bench too narrow",
    measures="width of the bench less the width of the screen",
    how="Measure the bench and the screen, edge to edge.",
    unit="mm",
    band=Band(low=Twin(8, 200), bad_low=Twin(-2), aim=(Twin(12, 300), None)),
    weight=Fraction(3),
    subjects=screens,
    measure=_measure,
    basis="common practice",
    why="A screen that overhangs its bench looks as if it would fall.",
    family="screen",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
)
