"""A corner of a large room left empty (listing only).

How to measure. In each corner: along both walls to the first thing, and the
largest square of floor there that holds no furniture and no door, and that the
straight ways between doors do not cross. Rooms of 180 sq ft (16.7 m2) or less
are silent.

Why: an empty corner makes a large room look unfinished.

Basis: common practice of home stagers.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.places import WallLine
from budgetfix.room.sides import Point, ring, straight_ways

LARGE_MM2 = 180 * 304.8**2


def _subjects(look: Look) -> tuple[str, ...]:
    return ("room",) if look.walls and look.outline.area > LARGE_MM2 else ()


def _square(line: WallLine, before: WallLine, things: list[tuple[Point, ...]]) -> float:
    """Side of the largest free square in the corner at a wall's left end."""
    largest = min(line.length, before.length)
    for thing in things:
        spots = [line.local(x, y) for x, y in thing]
        if max(u for u, _ in spots) > 0 and max(v for _, v in spots) > 0:
            largest = min(largest, max(min(u for u, _ in spots), min(v for _, v in spots), 0.0))
    return largest


def _reached(line: WallLine, way: tuple[Point, ...]) -> float:
    """Side of the square in that corner that a straight way just touches; no limit where it stays outside."""
    (u, v), (x, y) = (line.local(*end) for end in way)
    shares = [0.0, 1.0]
    if abs((x - u) - (y - v)) > 1e-9:
        shares.append(min(1.0, max(0.0, (v - u) / ((x - u) - (y - v)))))
    spots = [(u + (x - u) * share, v + (y - v) * share) for share in shares]
    return min((max(spot) for spot in spots if min(spot) > 0), default=math.inf)


def _measure(look: Look, _subject: str) -> Measured | None:
    lines = look.lines
    things = [ring(piece, lines) for piece in look.pieces() if piece.wall in lines]
    doors = look.openings(whats=("door", "opening"))
    ways = [tuple((float(x), float(y)) for x, y in way.coords) for way in straight_ways(doors, lines)]
    for door in doors:
        if door.wall in lines:
            line, end = lines[door.wall], door.from_left + door.width
            things.append(tuple(line.point(at, off) for at in (door.from_left, end) for off in (0.0, door.width)))
    walls = [lines[wall.wall] for wall in look.walls]
    found = 0.0
    for before, line in zip([walls[-1], *walls[:-1]], walls, strict=True):
        square_corner = math.isclose(before.along[0] * line.along[0] + before.along[1] * line.along[1], 0, abs_tol=1e-6)
        turns_right = before.along[0] * line.inward[0] + before.along[1] * line.inward[1] < 0
        if square_corner and turns_right:
            found = max(found, min([_square(line, before, things), *(_reached(line, way) for way in ways)]))
    return Measured(found, give=tape_give(found))


RULE = Rule(
    slug="floor-left-empty",
    title="Corner left empty",
    measures="side of the largest free square of floor in a corner",
    unit="mm",
    band=Band(high=Twin(48, 1220), bad_high=Twin(84)),
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="free floor",
    family_by_room=True,
    profiles={"living": Fraction(0), "handing-back": Fraction(0)},
)
