"""The seating group: the main seat, its eye, the seats around it, and their fronts. Millimetres, on plan."""

from __future__ import annotations

import math
from collections.abc import Iterable

from shapely.geometry import LineString

from budgetfix.base.twin import Twin
from budgetfix.room.items import SEATS, Piece
from budgetfix.room.places import WallLine, facing, footprint

Lines = dict[str, WallLine]
Point = tuple[float, float]
SOFAS = ("sofa", "corner sofa", "loveseat", "daybed")
EYE_BEFORE_BACK = Twin(12)
"""The eye is this far before the seat's back (common practice)."""
GROUP_WITHIN = Twin(96)
"""Seats within 8 ft of the main seat are its group (common practice)."""


def main_seat(pieces: Iterable[Piece]) -> Piece | None:
    """The seat that is marked `main`, else the longest sofa, else the widest seat; ties by name."""
    seats = sorted((piece for piece in pieces if piece.what in SEATS), key=lambda piece: piece.name)
    marked = [piece for piece in seats if piece.main]
    sofas = [piece for piece in seats if piece.what in SOFAS]
    return next(iter(marked or sorted(sofas or seats, key=lambda piece: (-piece.width, piece.name))), None)


def look_direction(piece: Piece, lines: Lines) -> Point:
    """Unit vector of where a seat faces."""
    return facing(piece, lines)


def front_edge(piece: Piece, lines: Lines) -> LineString:
    """The front edge of a seat."""
    look = facing(piece, lines)
    corners = [(float(x), float(y)) for x, y in footprint(piece, lines).exterior.coords[:-1]]
    ahead = sorted(corners, key=lambda point: (-(point[0] * look[0] + point[1] * look[1]), point))
    (one, other) = sorted(ahead[:2])
    return LineString([one, other])


def front_middle(piece: Piece, lines: Lines) -> Point:
    """The middle of the front edge."""
    (x0, y0), (x1, y1) = front_edge(piece, lines).coords
    return ((x0 + x1) / 2, (y0 + y1) / 2)


def back_middle(piece: Piece, lines: Lines) -> Point:
    """The middle of the back edge."""
    look, (x, y) = facing(piece, lines), front_middle(piece, lines)
    return (x - look[0] * piece.depth, y - look[1] * piece.depth)


def eye(piece: Piece, lines: Lines, metric: bool = True) -> Point:
    """Where the eye of someone in the middle of the seat is, on plan: 12 in before the seat's back."""
    look, (x, y) = facing(piece, lines), back_middle(piece, lines)
    before = EYE_BEFORE_BACK.in_mm(metric)
    return (x + look[0] * before, y + look[1] * before)


def group(pieces: Iterable[Piece], lines: Lines, metric: bool = True) -> tuple[Piece, ...]:
    """The main seat and every seat whose footprint is within 8 ft of its own, by name; empty without a seat."""
    seats = sorted((piece for piece in pieces if piece.what in SEATS), key=lambda piece: piece.name)
    main = main_seat(seats)
    if main is None or main.wall not in lines:
        return ()
    middle = footprint(main, lines)
    within = GROUP_WITHIN.in_mm(metric)
    return tuple(
        seat for seat in seats if seat.wall in lines and footprint(seat, lines).distance(middle) <= within + 0.1
    )


def angle_between(one: Point, other: Point) -> float:
    """Degrees between two directions, 0 to 180."""
    length = math.hypot(*one) * math.hypot(*other)
    if length == 0:
        return 0.0
    cosine = (one[0] * other[0] + one[1] * other[1]) / length
    return math.degrees(math.acos(max(-1.0, min(1.0, cosine))))
