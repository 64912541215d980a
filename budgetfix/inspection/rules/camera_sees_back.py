"""A sofa's back, or anything tall, close before the camera in the door (listing
only).

How to measure. Stand in the door, at each jamb, with the camera 48 to 54 in
(1220 to 1370 mm) up. Within 5 ft (1520 mm) there may be no sofa that turns its
back, and nothing higher than 36 in (910 mm) except along the door's own wall.

Why: what is near the lens fills the picture and hides the floor.

Basis: common practice of home stagers.
"""

from __future__ import annotations

import math
from fractions import Fraction

from shapely.geometry import LineString

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import SEATS, Opening, Piece
from budgetfix.room.places import footprint
from budgetfix.room.sides import along, middle_of, sides

NEAR = Twin(60)
TALL = Twin(36)


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(door.name for door in look.openings(whats=("door", "opening")) if door.wall in look.lines)


def _bad(look: Look, door: Opening, piece: Piece) -> bool:
    line = look.lines[door.wall]
    jambs = LineString([line.point(door.from_left), line.point(door.from_left + door.width)])
    if footprint(piece, look.lines).distance(jambs) >= look.mm(NEAR) - 0.1:
        return False
    if piece.what in SEATS:
        its = sides(piece, look.lines)
        camera = line.point(door.from_left + door.width / 2)
        back = middle_of(its.back)
        turned = along((camera[0] - back[0], camera[1] - back[1]), its.look)
        if turned < -math.dist(camera, back) / 2:
            return True
    return piece.height > look.mm(TALL) + 0.1 and piece.wall != door.wall


def _measure(look: Look, subject: str) -> Measured | None:
    door = look.opening(subject)
    if door is None:
        return None
    line, near = look.lines[door.wall], look.mm(NEAR)
    (x0, y0), (x1, y1) = line.point(door.from_left - near), line.point(door.from_left + door.width + near, near)
    box = (min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))
    seen = sorted(piece.name for piece in look.pieces(box=box) if _bad(look, door, piece))
    severity = Fraction(1) if seen else Fraction(0)
    return Measured(float(len(seen)), severity=severity, note=", ".join(seen) or "free view")


RULE = Rule(
    slug="camera-sees-back",
    title="Something close before the camera",
    measures="sofa backs and tall things within 5 ft (1520 mm) of a door",
    unit="count",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(4),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    profiles={"living": Fraction(0), "handing-back": Fraction(0)},
    sound_words="nothing",
    bad_words="anything",
)
