"""The ways of a room, seen through a look: between doors, and from the doors to the seats and beds.

One pinch is charged once. Between doors only as many ways are judged as it takes to join them all, the
soundest first; to a seat or a bed only the best way, whichever door it comes from: another door's way is
either as sound, or its pinch lies on the way between the doors and is charged there. This keeps the sum of
all ways from growing when a piece is taken away, which lazy rows need.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations

from shapely.geometry import Polygon

from budgetfix.inspection.grouping import main_of
from budgetfix.inspection.look import Look
from budgetfix.room.items import Opening, Piece
from budgetfix.room.routes import Floor, Passing, Way, floor_of, passes, widest_way
from budgetfix.room.sides import ring
from budgetfix.room.zones import Zone, inside_door, near_piece

BEDS = ("bed",)
CHAIRS = ("dining chair", "chair")


@dataclass(frozen=True, slots=True)
class Route:
    """One way: from a door to another door, or (`to_piece`) to the main seat or a bed."""

    name: str
    start: str
    end: str
    to_piece: bool


def doors(look: Look) -> tuple[Opening, ...]:
    """Doors and openings, the home's own door first, then wall by wall from the left."""
    return look.once("doors", _doors)


def _doors(look: Look) -> tuple[Opening, ...]:
    found = (door for door in look.openings(whats=("door", "opening")) if door.wall in look.lines)
    return tuple(sorted(found, key=lambda door: (not door.entry, door.wall, door.from_left, door.name)))


def door_routes(look: Look) -> tuple[Route, ...]:
    """The ways between each two doors."""
    pairs = combinations([door.name for door in doors(look)], 2)
    return tuple(Route(f"{one} to {two}", one, two, False) for one, two in pairs)


def targets(look: Look) -> tuple[tuple[str, Piece], ...]:
    """What ways lead to beside doors: the main seat, called seats, and every bed."""
    return look.once("targets", _targets)


def _targets(look: Look) -> tuple[tuple[str, Piece], ...]:
    main = main_of(look)
    beds = sorted(look.pieces(whats=BEDS), key=lambda bed: bed.name)
    seats = () if main is None else (("seats", main),)
    return (*seats, *((bed.name, bed) for bed in beds if bed.wall in look.lines))


def piece_routes(look: Look) -> tuple[Route, ...]:
    """The ways from the doors to each target, called after the first door."""
    entries = doors(look)
    if not entries:
        return ()
    return tuple(Route(f"{entries[0].name} to {name}", entries[0].name, name, True) for name, _ in targets(look))


@dataclass(frozen=True)
class Ways:
    """The free floor of a room and where its ways start and end."""

    floor: Floor
    zones: dict[str, Zone]
    pieces: dict[str, Piece]
    look: Look

    def between(self, one: str, two: str) -> Way:
        return widest_way(self.floor, self.zones[one], self._end(one, two))

    def passes(self, one: str, two: str, rule: Passing) -> bool:
        return passes(self.floor, self.zones[one], self._end(one, two), rule)

    def _end(self, one: str, two: str) -> Zone:
        if two in self.pieces:
            return near_piece(ring(self.pieces[two], self.look.lines), self.zones[one])
        return self.zones[two]


def ways(look: Look) -> Ways:
    """Asks for everything that stands on the floor: furniture, heaters and tucked chairs block, rugs do not.

    A dining chair that was surveyed pulled out is pushed in for this (trade page), so it blocks nothing where it is.
    """
    return look.once("ways", _ways)


def _ways(look: Look) -> Ways:
    lines = look.lines
    blocks = tuple(sorted(ring(piece, lines) for piece in look.pieces() if piece.wall in lines and _blocks(piece)))
    walls = tuple((float(x), float(y)) for x, y in Polygon(look.outline).exterior.coords[:-1])
    zones = {door.name: inside_door(lines[door.wall], door.from_left, door.width) for door in doors(look)}
    return Ways(floor_of(walls, blocks), zones, dict(targets(look)), look)


def _blocks(piece: Piece) -> bool:
    return not piece.hangs and not (piece.what in CHAIRS and piece.at and not piece.tucked)
