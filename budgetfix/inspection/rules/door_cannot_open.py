"""A door whose leaf meets something before it is open.

How to measure. Open the door until it touches, and measure the angle; or
measure from the hinge to the thing, along the wall and away from it, and the
leaf's width. Bags and racks on the floor count.

Why: a door that stops early is met every day, with both hands full.

Basis: common practice. Published rows judge the width of an unhindered leaf,
32 in clear at 90 degrees (2010 ADA Standards 404.2.3 and UFAS 4.13.5,
published value C3; Fair Housing Accessibility Guidelines, 24 CFR ch. I,
Requirement 3, C4). Our band leaves them on purpose: nobody in a rented room
can change the leaf, so we judge the angle. The clear opening, leaf x (1 - cos
of the angle), is shown beside it.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import Opening
from budgetfix.room.places import WallLine
from budgetfix.room.sides import Point, ring

SILL = Twin(1)
"""What is no higher than this passes under the leaf."""


def _hinge(door: Opening) -> tuple[float, float]:
    """(from the left end of the wall to the hinge, +1 where the closed leaf lies to its right, else -1)."""
    return (door.from_left, 1.0) if door.hinge == "left" else (door.from_left + door.width, -1.0)


def meets_at(corners: tuple[Point, ...], leaf: float) -> float:
    """The angle (degrees) at which a leaf hinged at (0, 0), closed along +x, meets a shape; 90 where it does not."""
    found = [point for point in corners if math.hypot(*point) <= leaf]
    for (ax, ay), (bx, by) in zip(corners, (*corners[1:], corners[0]), strict=True):
        dx, dy = bx - ax, by - ay
        a, b, c = dx * dx + dy * dy, 2 * (ax * dx + ay * dy), ax * ax + ay * ay - leaf * leaf
        root = b * b - 4 * a * c
        if a > 0 and root >= 0:
            shares = [(-b + sign * math.sqrt(root)) / (2 * a) for sign in (-1, 1)]
            found += [(ax + dx * share, ay + dy * share) for share in shares if 0 <= share <= 1]
        if ay * by < 0 or (ay == 0) != (by == 0):
            crossing = ax + dx * (ay / (ay - by))
            found += [(crossing, 0.0)] if 0 <= crossing <= leaf else []
    angles = [math.degrees(math.atan2(max(y, 0.0), x)) for x, y in found if y > -0.1]
    return min([90.0, *angles])


def _box(line: WallLine, door: Opening) -> tuple[float, float, float, float]:
    (x0, y0), (x1, y1) = line.point(door.from_left), line.point(door.from_left + door.width, door.width)
    return (min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(door.name for door in look.openings(whats=("door",)) if door.opens == "in" and door.wall in look.lines)


def _measure(look: Look, subject: str) -> Measured | None:
    door = look.opening(subject)
    if door is None or door.opens != "in":
        return None
    line = look.lines[door.wall]
    hinge, sense = _hinge(door)
    angle, name = 90.0, ""
    for piece in look.pieces(box=_box(line, door)):
        if piece.height <= look.mm(SILL):
            continue
        local = (line.local(x, y) for x, y in ring(piece, look.lines))
        met = meets_at(tuple(((along - hinge) * sense, off) for along, off in local), door.width)
        if met < angle - 1e-9:
            angle, name = met, piece.name
    clear = door.width * (1 - math.cos(math.radians(angle)))
    note = f"clear opening {clear:.0f} mm" + (f", stopped by {name}" if name else "")
    return Measured(angle, give=1.0 if name else 0.0, note=note, uncertain=look.guessed(subject, "width", "hinge"))


RULE = Rule(
    slug="door-cannot-open",
    title="Door cannot open fully",
    measures="the angle at which a door's leaf meets something that stands in the room",
    unit="degree",
    band=Band(low=80.0, bad_low=40.0, aim=(90.0, 90.0)),
    weight=Fraction(4),
    subjects=_subjects,
    measure=_measure,
    basis="common practice; compare C3, C4",
    safety=True,
    lifting_helps=True,
)
