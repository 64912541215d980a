"""The four sides of a piece as it looks, and the free floor straight ahead of a side. Millimetres, on plan."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import combinations

import shapely
from shapely.geometry import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from budgetfix.room.items import Light, Opening, Piece, Rug
from budgetfix.room.places import WallLine, extent, facing, footprint

Point = tuple[float, float]
Side = tuple[Point, Point]
Lines = dict[str, WallLine]

INSIDE_MM = 700.0
"""Where a door's way begins: this far inside its middle."""


@dataclass(frozen=True, slots=True)
class Sides:
    """Front, back, left and right side of a piece (as someone sitting in it has them), and where it looks."""

    front: Side
    back: Side
    left: Side
    right: Side
    look: Point


def sides(piece: Piece, lines: Lines) -> Sides:
    """The sides of a piece that stands at one of these walls."""
    look = facing(piece, lines)
    left = (look[1], -look[0])
    corners = [(float(x), float(y)) for x, y in footprint(piece, lines).exterior.coords]

    def corner(ahead: float, aside: float) -> Point:
        return max(corners, key=lambda point: ahead * along(point, look) + aside * along(point, left))

    front_left, front_right = corner(1, 1), corner(1, -1)
    back_left, back_right = corner(-1, 1), corner(-1, -1)
    return Sides(
        (front_left, front_right), (back_left, back_right), (front_left, back_left), (front_right, back_right), look
    )


def along(point: Point, direction: Point) -> float:
    """How far a point lies in a direction."""
    return point[0] * direction[0] + point[1] * direction[1]


def span(shape: BaseGeometry, direction: Point) -> tuple[float, float]:
    """From where to where a shape reaches in a direction."""
    found = [along((float(x), float(y)), direction) for x, y in shapely.get_coordinates(shape)]
    return (min(found), max(found))


def length(side: Side) -> float:
    """How long a side is."""
    return math.dist(side[0], side[1])


def middle_of(side: Side) -> Point:
    """The middle of a side."""
    return ((side[0][0] + side[1][0]) / 2, (side[0][1] + side[1][1]) / 2)


def strip(side: Side, outward: Point, reach_mm: float, share: float = 1.0) -> Polygon:
    """The floor ahead of a side: its middle `share`, `reach_mm` deep."""
    (ax, ay), (bx, by), (mx, my) = side[0], side[1], middle_of(side)
    one = (mx + (ax - mx) * share, my + (ay - my) * share)
    two = (mx + (bx - mx) * share, my + (by - my) * share)
    deep = (outward[0] * reach_mm, outward[1] * reach_mm)
    return Polygon([one, two, (two[0] + deep[0], two[1] + deep[1]), (one[0] + deep[0], one[1] + deep[1])])


def free_ahead(
    side: Side, outward: Point, room: Polygon, blocks: Iterable[Polygon], reach_mm: float, share: float = 1.0
) -> float:
    """Free floor straight ahead of a side, up to the first block or wall; at most `reach_mm`."""
    floor, start = strip(side, outward, reach_mm, share), along(side[0], outward)
    nearest = reach_mm
    for hit in (*(floor.intersection(block) for block in blocks), floor.difference(room)):
        if hit.area > 1.0:
            nearest = min(nearest, max(0.0, span(hit, outward)[0] - start))
    return nearest


def straight_ways(doors: Iterable[Opening], lines: Lines) -> tuple[LineString, ...]:
    """Straight lines between each two doors, from 700 mm inside their middles."""
    placed = sorted((door for door in doors if door.wall in lines), key=lambda door: door.name)
    starts = [lines[door.wall].point(door.from_left + door.width / 2, INSIDE_MM) for door in placed]
    return tuple(LineString(pair) for pair in combinations(starts, 2))


def ring(item: Piece | Rug | Light, lines: Lines) -> tuple[Point, ...]:
    """The corners of a footprint, rounded to a micrometre."""
    line, (wide, off) = lines[item.wall], extent(item, lines)
    start, end = item.from_left, item.from_left + wide
    spots = ((start, item.gap), (end, item.gap), (end, item.gap + off), (start, item.gap + off))
    corners = (line.point(at, away) for at, away in spots)
    return tuple((round(x, 3), round(y, 3)) for x, y in corners)
