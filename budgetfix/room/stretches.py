"""Stretches of wall: what sticks out of a wall, and the clear span between. Millimetres from the left corner."""

from __future__ import annotations

import math
from collections.abc import Iterable
from itertools import accumulate

from budgetfix.room.items import Curtain, Opening, Piece
from budgetfix.room.places import WallLine, footprint

Stretch = tuple[float, float]
STACK_SHARE = {"sheer": 0.18, "lined": 0.22, "blackout": 0.28}
"""Open stack over flat width, by cloth (common practice)."""


def stack_of(curtain: Curtain) -> float:
    """Width of the open cloth on one side: as measured, else by the flat width and the cloth."""
    if curtain.stack is not None:
        return curtain.stack
    each_side = curtain.panel_width * max(1, curtain.panels // 2)
    return each_side * STACK_SHARE[curtain.cloth]


def rod_ends(curtain: Curtain) -> Stretch:
    """Where a rod starts and ends."""
    return (curtain.rod_from_left, curtain.rod_from_left + curtain.rod_width)


def cloth_of(curtain: Curtain) -> tuple[Stretch, ...]:
    """The open cloth: one stretch at each end of the rod (one alone for a single panel)."""
    (start, end), wide = rod_ends(curtain), stack_of(curtain)
    both = ((start, start + wide), (end - wide, end))
    return both if curtain.panels > 1 else both[:1]


def along_wall(piece: Piece, lines: dict[str, WallLine], wall: str) -> tuple[float, float, float]:
    """(from, to, nearest) of a piece along any wall of the room, its own or not: `nearest` is its gap to that wall."""
    spots = [lines[wall].local(float(x), float(y)) for x, y in footprint(piece, lines).exterior.coords]
    along, off = [spot[0] for spot in spots], [spot[1] for spot in spots]
    return (min(along), max(along), min(off))


def wall_strip(line: WallLine, stretch: Stretch, deep: float) -> tuple[float, float, float, float]:
    """The floor along a stretch of wall, `deep` into the room: (min x, min y, max x, max y)."""
    (x0, y0), (x1, y1) = line.point(stretch[0]), line.point(stretch[1], deep)
    return (min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))


def lead_run(
    lines: dict[str, WallLine], spot: tuple[float, float], wall: str, at: float, doors: Iterable[Opening] = ()
) -> float:
    """How long a lead must be from a spot of floor straight to a wall and along the walls to `at` of a wall.

    To the nearest wall, or the socket's own, and then either way round the room; none (infinite) where each of these
    runs passes a door.
    """
    starts = dict(zip(lines, accumulate((line.length for line in lines.values()), initial=0.0), strict=False))
    whole, socket = sum(line.length for line in lines.values()), starts[wall] + at
    shut = [starts[door.wall] + door.from_left + door.width / 2 for door in doors if door.wall in lines]
    places = {name: line.local(*spot) for name, line in lines.items()}
    legs = {name: off for name, (beside, off) in places.items() if 0 <= beside <= lines[name].length and off >= 0}
    nearest = min(legs.values(), default=math.inf)
    runs = [math.inf]
    for name, off in legs.items():
        if name == wall or off <= nearest + 0.1:
            low, high = sorted((starts[name] + places[name][0], socket))
            passed = [low < door < high for door in shut]
            runs += [off + high - low] if not any(passed) else []
            runs += [off + whole - (high - low)] if all(passed) else []
    return min(runs)


def clear_span(length: float, middle: float, blocks: Iterable[Stretch]) -> Stretch:
    """The clear stretch of a wall around a point: between the nearest blocks, or the corners.

    A block over the point itself leaves an empty stretch.
    """
    low, high = 0.0, length
    for start, end in blocks:
        if end <= middle + 0.05:
            low = max(low, end)
        elif start >= middle - 0.05:
            high = min(high, start)
        else:
            return (middle, middle)
    return (low, high)


def overlap(one: Stretch, other: Stretch) -> float:
    """How much of the wall two stretches share; below 0 when they are apart."""
    return min(one[1], other[1]) - max(one[0], other[0])
