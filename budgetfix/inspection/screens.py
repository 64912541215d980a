"""What the screen rules look at: the screens of a room, and the seat they are judged from."""

from __future__ import annotations

import math

from budgetfix.inspection.look import Look
from budgetfix.room.items import SEATS, Hung, Piece
from budgetfix.room.places import footprint, middle
from budgetfix.room.seating import eye, main_seat
from budgetfix.room.stretches import Stretch, along_wall, wall_strip

DIAGONAL_OF_WIDTH = 1 / 0.871576
"""Of a 16:9 screen (geometry: 16 over the root of 337)."""
SQUARER = 1.55
"""A screen less wide than this for its height is no 16:9 one (1.78), but an old 4:3 set (1.33)."""
Point = tuple[float, float]


def diagonal_of(screen: Hung) -> float:
    """By its width for a 16:9 screen, whatever its foot adds to its height; an old set by its own two sides."""
    if screen.height > 0 and screen.width / screen.height < SQUARER:
        return math.hypot(screen.width, screen.height)
    return screen.width * DIAGONAL_OF_WIDTH


def screens(look: Look) -> tuple[str, ...]:
    """Names of the screens at walls of this room."""
    return tuple(one.name for one in look.hung(whats=("screen",)) if one.wall in look.lines)


def seat_of(look: Look) -> Piece | None:
    """The main seat."""
    seat = main_seat(look.pieces(whats=SEATS))
    return seat if seat is not None and seat.wall in look.lines else None


def eye_of(look: Look, seat: Piece) -> Point:
    """The eye of someone in that seat, on plan."""
    return eye(seat, look.lines, look.household.metric)


def face(look: Look, screen: Hung) -> Point:
    """The middle of the screen's face, on plan: over the middle of what it stands on, else at the wall."""
    line, at = look.lines[screen.wall], screen.from_left + screen.width / 2
    bench = look.piece(screen.on) if screen.on else None
    if bench is not None and bench.wall in look.lines:
        _, off = line.local(*middle(bench, look.lines))
        return line.point(at, off)
    return line.point(at, screen.depth)


def bench_of(look: Look, screen: Hung) -> tuple[Piece, Stretch] | None:
    """What the screen stands on, and from where to where it stands along the screen's wall."""
    bench = look.piece(screen.on) if screen.on else None
    if bench is None or bench.wall not in look.lines or screen.wall not in look.lines:
        return None
    low, high, _ = along_wall(bench, look.lines, screen.wall)
    return bench, (low, high)


def beside(look: Look, wall: str, bench: Piece, within: float) -> tuple[tuple[Piece, Stretch], ...]:
    """What stands beside a bench, seats left out: within so far of its ends, no farther out than its front.

    From the left.
    """
    line = look.lines[wall]
    low, high, _ = along_wall(bench, look.lines, wall)
    front = max(line.local(x, y)[1] for x, y in footprint(bench, look.lines).exterior.coords)
    reach = wall_strip(line, (max(0.0, low - within), min(line.length, high + within)), front)
    found = []
    for piece in look.pieces(box=reach):
        if piece.name == bench.name or piece.what in SEATS or piece.hangs or piece.wall not in look.lines:
            continue
        start, end, off = along_wall(piece, look.lines, wall)
        if off < front - 0.1 and (end <= low + 0.1 or start >= high - 0.1):
            found.append((piece, (start, end)))
    return tuple(sorted(found, key=lambda one: (one[1], one[0].name)))


def degrees(one: Point, other: Point) -> float:
    """The angle between two directions, 0 to 180."""
    turn = math.atan2(one[0] * other[1] - one[1] * other[0], one[0] * other[0] + one[1] * other[1])
    return abs(math.degrees(turn))


def towards(start: Point, end: Point) -> Point:
    """The direction from one point to another."""
    return (end[0] - start[0], end[1] - start[1])
