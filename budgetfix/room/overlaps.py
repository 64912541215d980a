"""Two things on one spot of floor or wall. Millimetres; touching within 1 mm is no overlap."""

from __future__ import annotations

from functools import lru_cache
from itertools import combinations

from shapely.geometry import Polygon

from budgetfix.room.items import Hung, Opening, Piece
from budgetfix.room.places import WallLine, footprint, outline, wall_lines
from budgetfix.room.survey import Survey

TOUCH_MM = 1.0
AT_WALL_MM = 100.0
"""A piece this near to a wall stands before what hangs low on it."""
SMALL = ("sconce", "picture light", "alarm")
Lines = dict[str, WallLine]


@lru_cache(maxsize=8192)
def _spot(piece: Piece, line_items: tuple[tuple[str, WallLine], ...]) -> Polygon:
    return footprint(piece, dict(line_items))


def _floor_apart(one: Piece, other: Piece) -> bool:
    return (
        one.hangs
        or other.hangs
        or (one.tucked and one.at == other.name)
        or (other.tucked and other.at == one.name)
        or (one.tucked and other.tucked and one.at == other.at)
    )


def pieces_overlap(one: Piece, other: Piece, lines: Lines) -> bool:
    """True where two pieces share floor."""
    if one.wall not in lines or other.wall not in lines or _floor_apart(one, other):
        return False
    key = tuple(sorted(lines.items()))
    first, second = _spot(one, key), _spot(other, key)
    (ax, ay, bx, by), (cx, cy, dx, dy) = first.bounds, second.bounds
    if min(bx, dx) - max(ax, cx) <= TOUCH_MM or min(by, dy) - max(ay, cy) <= TOUCH_MM:
        return False
    shared = first.intersection(second).bounds
    return bool(shared) and shared[2] - shared[0] > TOUCH_MM and shared[3] - shared[1] > TOUCH_MM


def hung_overlap(one: Hung, other: Hung) -> bool:
    """True where two things share a spot of one wall."""
    if one.wall != other.wall or one.what in SMALL or other.what in SMALL:
        return False
    beside = min(one.from_left + one.width, other.from_left + other.width) - max(one.from_left, other.from_left)
    above = min(one.bottom + one.height, other.bottom + other.height) - max(one.bottom, other.bottom)
    return beside > TOUCH_MM and above > TOUCH_MM


def hides(piece: Piece, hung: Hung) -> bool:
    """True where a piece against the wall stands before what hangs there."""
    if piece.wall != hung.wall or piece.gap > AT_WALL_MM or hung.what in SMALL or piece.faces not in ("", piece.wall):
        return False
    beside = min(piece.from_left + piece.width, hung.from_left + hung.width) - max(piece.from_left, hung.from_left)
    return beside > TOUCH_MM and piece.height - hung.bottom > TOUCH_MM


def covers_opening(opening: Opening, hung: Hung) -> bool:
    """True where something hangs over a door or a window."""
    if opening.wall != hung.wall or hung.what in SMALL:
        return False
    beside = min(opening.from_left + opening.width, hung.from_left + hung.width) - max(
        opening.from_left, hung.from_left
    )
    above = min(opening.top, hung.bottom + hung.height) - max(opening.bottom, hung.bottom)
    return beside > TOUCH_MM and above > TOUCH_MM


def sticks_out(piece: Piece, survey: Survey, room: str) -> bool:
    """True where a piece leaves the room."""
    lines = wall_lines(survey, room)
    outside = footprint(piece, lines).difference(outline(survey, room).buffer(TOUCH_MM))
    return bool(outside.area > TOUCH_MM)


def overlaps(survey: Survey, room: str) -> tuple[tuple[str, str], ...]:
    """Pairs of names on one spot, sorted; a piece that leaves the room is paired with "outside"."""
    lines = wall_lines(survey, room)
    pieces = [piece for piece in survey.furniture if piece.room == room and piece.wall in lines]
    hung = [one for one in survey.pictures if one.room == room and one.wall in lines]
    found = [(one.name, other.name) for one, other in combinations(pieces, 2) if pieces_overlap(one, other, lines)]
    found += [(one.name, other.name) for one, other in combinations(hung, 2) if hung_overlap(one, other)]
    found += [(piece.name, one.name) for piece in pieces for one in hung if hides(piece, one)]
    openings = [one for one in survey.openings if one.room == room]
    found += [(opening.name, one.name) for opening in openings for one in hung if covers_opening(opening, one)]
    found += [(piece.name, "outside") for piece in pieces if sticks_out(piece, survey, room)]
    return tuple(sorted((min(pair), max(pair)) for pair in found))
