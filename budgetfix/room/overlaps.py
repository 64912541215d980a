"""Two things on one spot of floor or wall. Millimetres; touching within 1 mm is no overlap."""

from __future__ import annotations

from itertools import combinations
from typing import cast

from shapely.geometry import Polygon

from budgetfix.room.items import Hung, Light, Opening, Piece
from budgetfix.room.places import WallLine, extent, footprint, outline, wall_lines
from budgetfix.room.survey import Survey

TOUCH_MM = 1.0
AT_WALL_MM = 100.0
"""A piece this near to a wall stands before what hangs low on it."""
SMALL = ("sconce", "picture light", "alarm", "old holes", "mark")
"""What takes no wall from anything else."""
BEFORE_MM = 610.0
"""Floor that a doorway needs before it (common practice, 24 in)."""
Lines = dict[str, WallLine]
Box = tuple[float, float, float, float]
Standing = Piece | Light


def _floor_apart(one: Standing, other: Standing) -> bool:
    if not isinstance(one, Piece) or not isinstance(other, Piece):
        return any(isinstance(each, Piece) and (each.hangs or each.what == "floor lamp") for each in (one, other))
    return (
        one.hangs
        or other.hangs
        or (one.tucked and one.at == other.name)
        or (other.tucked and other.at == one.name)
        or (one.tucked and other.tucked and one.at == other.at)
    )


def pieces_overlap(one: Standing, other: Standing, lines: Lines) -> bool:
    """True where two pieces, or a piece and a floor lamp, share floor.

    What hangs needs no floor, a tucked chair shares its table's, and a lamp may be surveyed as a piece too.
    """
    if one.wall not in lines or other.wall not in lines or _floor_apart(one, other):
        return False
    return _share(footprint(one, lines), footprint(other, lines))


def _share(one: Polygon, other: Polygon) -> bool:
    if not _boxes_meet(one.bounds, other.bounds):
        return False
    shared = one.intersection(other).bounds
    return shared[2] - shared[0] > TOUCH_MM and shared[3] - shared[1] > TOUCH_MM


def hung_overlap(one: Hung, other: Hung) -> bool:
    """True where two things share a spot of one wall."""
    if one.wall != other.wall or one.what in SMALL or other.what in SMALL:
        return False
    beside = min(one.from_left + one.width, other.from_left + other.width) - max(one.from_left, other.from_left)
    above = min(one.bottom + one.height, other.bottom + other.height) - max(one.bottom, other.bottom)
    return beside > TOUCH_MM and above > TOUCH_MM


def hides(piece: Piece, hung: Hung, lines: Lines) -> bool:
    """True where a piece against the wall stands before what hangs there."""
    if piece.wall != hung.wall or piece.gap > AT_WALL_MM or hung.what in SMALL or piece.wall not in lines:
        return False
    along, _ = extent(piece, lines)
    beside = min(piece.from_left + along, hung.from_left + hung.width) - max(piece.from_left, hung.from_left)
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


def in_doorways(survey: Survey, room: str, of: frozenset[str] | None = None) -> tuple[tuple[str, str], ...]:
    """Pairs (door, piece), smaller name first, sorted: pieces on the floor that a door needs. `of`: only these pieces.

    A leaf that opens in needs a square of its own width, any other doorway 24 in (610 mm) before it.
    """
    lines = wall_lines(survey, room)
    openings = cast(tuple[Opening, ...], survey.things("openings", room))
    doors = [one for one in openings if one.what in ("door", "opening") and one.wall in lines]
    pieces = [one for one in _standing(survey, room, lines) if of is None or one.name in of]
    found = []
    for door in doors:
        (x0, y0), (x1, y1) = (
            lines[door.wall].point(door.from_left),
            lines[door.wall].point(door.from_left + door.width, door.width if door.opens == "in" else BEFORE_MM),
        )
        spot = (min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))
        found += [
            (min(door.name, one.name), max(door.name, one.name))
            for one in pieces
            if not (isinstance(one, Piece) and one.hangs) and _boxes_meet(footprint(one, lines).bounds, spot)
        ]
    return tuple(sorted(found))


def floor_lamps(survey: Survey, room: str) -> tuple[Light, ...]:
    """Lamps that stand on the floor, with a foot of known size."""
    lights = cast(tuple[Light, ...], survey.things("lights", room))
    return tuple(lamp for lamp in lights if lamp.what == "floor lamp" and lamp.width * lamp.depth > 0)


def _pieces(survey: Survey, room: str, lines: Lines) -> list[Piece]:
    furniture = cast(tuple[Piece, ...], survey.things("furniture", room))
    return [piece for piece in furniture if piece.wall in lines]


def _standing(survey: Survey, room: str, lines: Lines) -> list[Standing]:
    return [*_pieces(survey, room, lines), *(lamp for lamp in floor_lamps(survey, room) if lamp.wall in lines)]


def _boxes_meet(one: Box, other: Box) -> bool:
    across = min(one[2], other[2]) - max(one[0], other[0])
    return across > TOUCH_MM and min(one[3], other[3]) - max(one[1], other[1]) > TOUCH_MM


def _all(_: str) -> bool:
    return True


def overlaps(survey: Survey, room: str, of: frozenset[str] | None = None) -> tuple[tuple[str, str], ...]:
    """Pairs of names on one spot, sorted; a piece that leaves the room is paired with "outside".

    `of`: only pairs with one of these things in them.
    """
    lines = wall_lines(survey, room)
    pieces = _pieces(survey, room, lines)
    standing = _standing(survey, room, lines)
    hung = [one for one in cast(tuple[Hung, ...], survey.things("pictures", room)) if one.wall in lines]
    spots = [(one, footprint(one, lines)) for one in standing]
    among = _all if of is None else of.__contains__
    found = [
        (one.name, other.name)
        for (one, mine), (other, theirs) in combinations(spots, 2)
        if (among(one.name) or among(other.name))
        and _boxes_meet(mine.bounds, theirs.bounds)
        and not _floor_apart(one, other)
        and _share(mine, theirs)
    ]
    found += [
        (one.name, other.name)
        for one, other in combinations(hung, 2)
        if (among(one.name) or among(other.name)) and hung_overlap(one, other)
    ]
    found += [
        (piece.name, one.name)
        for piece in pieces
        for one in hung
        if (among(piece.name) or among(one.name)) and hides(piece, one, lines)
    ]
    openings = cast(tuple[Opening, ...], survey.things("openings", room))
    found += [
        (opening.name, one.name)
        for opening in openings
        for one in hung
        if among(one.name) and covers_opening(opening, one)
    ]
    floor = outline(survey, room).buffer(TOUCH_MM)
    found += [(one.name, "outside") for one, spot in spots if among(one.name) and not floor.covers(spot)]
    return tuple(sorted((min(pair), max(pair)) for pair in found))
