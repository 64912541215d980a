"""A screen alone on a long wall, with nothing about as tall beside it.

How to measure. Only where 24 in (610 mm) or more of wall is free beside the
bench, to the corner or the next door: the height of the tallest thing within
24 in of the bench and no farther out than its front. Seats do not count. The
better side is judged.

Why: one black rectangle in the middle of a wall pulls every eye; a lamp, a
plant or a basket beside it takes the weight off.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.screens import bench_of, beside, screens
from budgetfix.room.items import Hung
from budgetfix.room.stretches import Stretch

FREE = Twin(24)
"""So much free wall asks for something, and so near it must stand."""


def _measure(look: Look, subject: str) -> Measured | None:
    screen = look.hung_one(subject)
    found = bench_of(look, screen) if screen is not None else None
    if screen is None or found is None:
        return None
    bench, (low, high) = found
    left, right = (free >= look.mm(FREE) - 0.1 for free in _free(look, screen, (low, high)))
    if not left and not right:
        return None
    heights = [bench.height]
    for piece, (start, end) in beside(look, screen.wall, bench, look.mm(FREE)):
        if (left and end <= low + 0.1) or (right and start >= high - 0.1):
            heights.append(piece.height)
    centre = screen.bottom + screen.height / 2
    give = tape_give(max(heights), screen.bottom)
    return Measured(max(heights), give=give, band=Band(low=centre, bad_low=bench.height))


def _free(look: Look, screen: Hung, bench: Stretch) -> Stretch:
    """Wall left and right of the bench, to the corner or the next door."""
    doors = look.openings(whats=("door", "opening", "closet"), wall=screen.wall)
    before = max((one.from_left + one.width for one in doors if one.from_left < bench[0]), default=0.0)
    after = min((one.from_left for one in doors if one.from_left >= bench[0]), default=look.lines[screen.wall].length)
    return (bench[0] - before, after - bench[1])


RULE = Rule(
    slug="console-flank-flat",
    title="Nothing tall beside the screen",
    measures="height of the tallest thing beside the bench",
    unit="mm",
    band=Band(),
    weight=Fraction(1),
    subjects=screens,
    measure=_measure,
    basis="common practice",
    family="screen",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
    sound_words="as high as the screen's centre",
    bad_words="no higher than the bench itself",
)
