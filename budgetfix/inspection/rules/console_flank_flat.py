"""A screen alone on a long wall, with nothing about as tall beside it.

How to measure. On each side of the bench with 24 in (610 mm) or more of free wall: the height of the tallest thing that
stands there (seats do not count). The better side is judged; nothing there counts as the bench's own height.

Sound: as high as the screen's centre. Glaring: the bench's own height. Why: one black rectangle in the middle of a
wall pulls every eye; a lamp, a plant or a basket beside it takes the weight off.

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

FREE, NEAR = Twin(24), Twin(24)


def _measure(look: Look, subject: str) -> Measured | None:
    screen = look.hung_one(subject)
    bench = look.piece(screen.on) if screen is not None and screen.on else None
    if screen is None or bench is None or bench.wall not in look.lines:
        return None
    wide, _ = extent(bench, look.lines)
    low, high = bench.from_left, bench.from_left + wide
    sides = ((low - look.mm(NEAR), low), (high, high + look.mm(NEAR)))
    bare = (low, look.lines[bench.wall].length - high)
    standing = [one for one in look.pieces(wall=bench.wall) if one.name != bench.name and one.what not in SEATS]
    heights = []
    for (start, end), free in zip(sides, bare, strict=True):
        if free < look.mm(FREE) - 0.1:
            continue
        there = [one.height for one in standing if _meets(one.from_left, extent(one, look.lines)[0], start, end)]
        heights.append(max([bench.height, *there]))
    if not heights:
        return None
    centre = screen.bottom + screen.height / 2
    return Measured(max(heights), give=tape_give(max(heights)), band=Band(low=centre, bad_low=bench.height))


def _meets(start: float, along: float, low: float, high: float) -> bool:
    return start < high - 0.1 and start + along > low + 0.1


RULE = Rule(
    slug="console-flank-flat",
    title="Nothing tall beside the screen",
    measures="height of the tallest thing beside the bench",
    how="Measure the tallest thing that stands beside the bench, seats left out.",
    unit="mm",
    band=Band(low=Twin(32)),
    weight=Fraction(1),
    subjects=screens,
    measure=_measure,
    basis="common practice",
    why="One black rectangle in the middle of a wall pulls every eye.",
    family="screen",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
)
