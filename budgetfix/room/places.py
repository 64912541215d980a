"""Where things stand: walls as lines, footprints as polygons. Coordinates in millimetres.

Origin: the right-hand corner of wall A. Facing A, x grows to your left and y away from A towards you,
so in a rectangle A is y = 0, B is x = 0, C is y = the length, D is x = the width.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from shapely.geometry import Polygon, box
from shapely.geometry.polygon import orient

from budgetfix.room.items import Hung, Light, OnWall, Piece, Rug
from budgetfix.room.survey import Survey, Wall


@dataclass(frozen=True, slots=True)
class WallLine:
    """A wall from its left end to its right end; `along` and `inward` are unit vectors."""

    letter: str
    start: tuple[float, float]
    length: float
    along: tuple[float, float]
    inward: tuple[float, float]

    def point(self, from_left: float, off: float = 0.0) -> tuple[float, float]:
        """The point `from_left` along the wall and `off` into the room."""
        return (
            self.start[0] + self.along[0] * from_left + self.inward[0] * off,
            self.start[1] + self.along[1] * from_left + self.inward[1] * off,
        )

    def local(self, x: float, y: float) -> tuple[float, float]:
        """(from_left, off the wall) of a point."""
        dx, dy = x - self.start[0], y - self.start[1]
        return (dx * self.along[0] + dy * self.along[1], dx * self.inward[0] + dy * self.inward[1])


def _snap(value: float) -> float:
    return round(value, 9) + 0.0


@lru_cache(maxsize=256)
def lines_of(walls: tuple[Wall, ...]) -> tuple[WallLine, ...]:
    """The walls as lines, turning right from A. Wall A runs towards -x; its right end is the origin."""
    angle, x, y = 180.0, walls[0].length if walls else 0.0, 0.0
    lines = []
    for wall in walls:
        ux, uy = _snap(math.cos(math.radians(angle))), _snap(math.sin(math.radians(angle)))
        lines.append(WallLine(wall.wall, (x, y), wall.length, (ux, uy), (uy, -ux)))
        x, y = x + ux * wall.length, y + uy * wall.length
        angle -= wall.turn
    return tuple(lines)


def wall_lines(survey: Survey, room: str) -> dict[str, WallLine]:
    """The wall lines of a room by letter."""
    return {line.letter: line for line in lines_of(survey.walls_of(room))}


@lru_cache(maxsize=256)
def _outline(walls: tuple[Wall, ...]) -> Polygon:
    return orient(Polygon([line.start for line in lines_of(walls)]))


def outline(survey: Survey, room: str) -> Polygon:
    """The floor as a polygon."""
    return _outline(survey.walls_of(room))


def closing_gap(walls: tuple[Wall, ...]) -> float:
    """How far the right end of the last wall is from where wall A starts; 0 for walls that close."""
    lines = lines_of(walls)
    if not lines:
        return 0.0
    end = lines[-1].point(lines[-1].length)
    return math.hypot(end[0] - lines[0].start[0], end[1] - lines[0].start[1])


def facing(piece: Piece, lines: dict[str, WallLine]) -> tuple[float, float]:
    """Unit vector of where a piece looks: towards the wall named by `faces`, else away from its own wall."""
    if piece.faces and piece.faces in lines and piece.faces != piece.wall:
        inward = lines[piece.faces].inward
        return (-inward[0], -inward[1])
    if piece.faces == piece.wall and piece.wall in lines:
        inward = lines[piece.wall].inward
        return (-inward[0], -inward[1])
    return lines[piece.wall].inward


def turned(piece: Piece, lines: dict[str, WallLine]) -> bool:
    """True where the piece looks along its wall, so that its depth runs along the wall."""
    look, inward = facing(piece, lines), lines[piece.wall].inward
    return abs(look[0] * inward[0] + look[1] * inward[1]) < 0.5


def extent(item: Piece | Rug | Light, lines: dict[str, WallLine]) -> tuple[float, float]:
    """(along its wall, off its wall) of a footprint."""
    if isinstance(item, Piece) and turned(item, lines):
        return (item.depth, item.width)
    return (item.width, item.depth)


def footprint(item: Piece | Rug | Light, lines: dict[str, WallLine]) -> Polygon:
    """The rectangle of floor that a thing covers (round things: the square around them)."""
    along, off = extent(item, lines)
    return footprint_of(lines[item.wall], item.from_left, item.gap, along, off)


@lru_cache(maxsize=4096)
def footprint_of(line: WallLine, from_left: float, gap: float, along: float, off: float) -> Polygon:
    """The rectangle `along` x `off` that starts `from_left` on a wall, `gap` before it; kept, as most things stay."""
    corners = [
        line.point(from_left, gap),
        line.point(from_left + along, gap),
        line.point(from_left + along, gap + off),
        line.point(from_left, gap + off),
    ]
    return Polygon(corners)


def middle(item: Piece | Rug | Light, lines: dict[str, WallLine]) -> tuple[float, float]:
    """The middle of a footprint."""
    along, off = extent(item, lines)
    return lines[item.wall].point(item.from_left + along / 2, item.gap + off / 2)


def bounds(item: object, lines: dict[str, WallLine]) -> tuple[float, float, float, float] | None:
    """(min x, min y, max x, max y) of anything with a place at a wall of this room; None without a place."""
    if isinstance(item, (Piece, Rug, Light)) and item.wall in lines:
        return footprint(item, lines).bounds
    if isinstance(item, OnWall) and item.wall in lines:
        line = lines[item.wall]
        depth = item.depth if isinstance(item, Hung) else 0.0
        (x0, y0), (x1, y1) = line.point(item.from_left), line.point(item.from_left + item.width, depth)
        return (min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))
    return None


def rectangle(low_x: float, low_y: float, high_x: float, high_y: float) -> Polygon:
    """An axis-parallel rectangle."""
    return box(low_x, low_y, high_x, high_y)
