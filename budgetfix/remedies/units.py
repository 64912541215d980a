"""What moves together: a piece with its chairs, what stands on it and hangs over it; the seating group. And where it
stands after it was carried to another wall. Millimetres.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from shapely.geometry import Polygon

from budgetfix.remedies.kind import Site
from budgetfix.room.items import HEATERS, TABLES_TO_REACH, Hung, Item, Light, Piece, Rug, Table
from budgetfix.room.places import WallLine, facing, footprint
from budgetfix.room.seating import group, main_seat
from budgetfix.room.survey import Change, Value, moved

Point = tuple[float, float]
Floor = Piece | Rug | Light
STAYS = (*HEATERS, "fireplace")
AT_WALL_MM = 100.0
"""A piece this near to its wall stands against it, also after a move."""
BESIDE_MM = 700.0
"""A floor lamp this near to a seat belongs to it."""
TABLE_OF: dict[type, Table] = {Piece: "furniture", Rug: "rugs", Light: "lights", Hung: "pictures"}


@dataclass(frozen=True)
class Unit:
    """A lead piece and what goes with it, in the order in which it is told."""

    lead: Piece
    rest: tuple[Item, ...]

    @property
    def names(self) -> frozenset[str]:
        return frozenset(item.name for item in (self.lead, *self.rest))


@dataclass(frozen=True)
class Carry:
    """From one wall, place and gap to another; everything with it is turned and moved as one."""

    start: WallLine
    from_left: float
    gap: float
    end: WallLine
    to_left: float
    to_gap: float

    def point(self, x: float, y: float) -> Point:
        """Where a point of the floor comes to lie."""
        along, off = self.start.local(x, y)
        return self.end.point(along - self.from_left + self.to_left, off - self.gap + self.to_gap)

    def way(self, direction: Point) -> Point:
        """Where a direction points afterwards."""
        along = direction[0] * self.start.along[0] + direction[1] * self.start.along[1]
        inward = direction[0] * self.start.inward[0] + direction[1] * self.start.inward[1]
        return (
            along * self.end.along[0] + inward * self.end.inward[0],
            along * self.end.along[1] + inward * self.end.inward[1],
        )


def movable(site: Site) -> tuple[Piece, ...]:
    """Pieces of the room that people can move: not heaters, not fixed, not hung; tucked chairs go with their table."""
    return tuple(
        piece
        for piece in site.survey.furniture
        if piece.room == site.room
        and piece.wall in site.lines
        and piece.what not in STAYS
        and not (piece.fixed or piece.hangs or piece.tucked)
    )


def seating_unit(site: Site) -> Unit | None:
    """The main seat with the seats, tables, rug and lamps around it and the screen on its bench; None without one."""
    pieces = movable(site)
    main = main_seat(pieces)
    if main is None:
        return None
    seats = group(pieces, site.lines, site.metric)
    near = [footprint(seat, site.lines) for seat in seats]
    tables = [piece for piece in pieces if piece.what in TABLES_TO_REACH and not piece.at]
    benches = [piece for piece in pieces if bears_screen(site, piece)]
    lamps = [light for light in _floor_lamps(site) if any(_within(site, light, seat) for seat in near)]
    rugs = [rug for rug in site.survey.rugs if rug.room == site.room and rug.wall in site.lines and not rug.under]
    others = [seat for seat in seats if seat.name != main.name]
    rest: list[Item] = [*others, *tables, *benches, *rugs, *lamps]
    rest += [item for piece in (main, *others, *tables, *benches) for item in _dependents(site, piece)]
    return Unit(main, tuple(dict.fromkeys(rest)))


def _within(site: Site, light: Light, seat: Polygon) -> bool:
    return bool(footprint(light, site.lines).distance(seat) <= BESIDE_MM)


def _floor_lamps(site: Site) -> Iterator[Light]:
    for light in site.survey.lights:
        if light.room == site.room and light.what == "floor lamp" and light.wall in site.lines:
            yield light


def bears_screen(site: Site, piece: Piece) -> bool:
    """True where a screen stands on the piece."""
    return any(one.on == piece.name and one.what == "screen" for one in site.survey.pictures)


def units(site: Site, but: Iterable[str] = ()) -> tuple[Unit, ...]:
    """Every other movable piece with what belongs to it, the largest first."""
    taken = set(but)
    pieces = [piece for piece in movable(site) if piece.name not in taken]
    owned = {piece.name for piece in pieces if piece.at and any(piece.at == other.name for other in pieces)}
    large = sorted(pieces, key=lambda piece: (-piece.width * piece.depth, piece.name))
    return tuple(Unit(piece, tuple(_dependents(site, piece))) for piece in large if piece.name not in owned)


def _dependents(site: Site, piece: Piece) -> Iterator[Item]:
    """Its chairs and nightstands, its rug, lamps and screens on it, pictures over it."""
    survey = site.survey
    for other in survey.furniture:
        if other.at == piece.name and other.wall in site.lines and other.room == site.room:
            yield other
            yield from (light for light in survey.lights if light.on == other.name and light.wall in site.lines)
    yield from (rug for rug in survey.rugs if rug.under == piece.name and rug.wall in site.lines)
    yield from (light for light in survey.lights if light.on == piece.name and light.wall in site.lines)
    for hung in survey.pictures:
        over = hung.over == piece.name and piece.gap <= AT_WALL_MM
        if hung.wall == piece.wall and (hung.on == piece.name or over):
            yield hung


def carried(site: Site, unit: Unit, carry: Carry) -> tuple[Change, ...] | None:
    """The changes that carry a unit; None where something of it finds no wall."""
    standing = [item for item in (unit.lead, *unit.rest) if isinstance(item, (Piece, Rug, Light))]
    placed = {item.name: _settled(site, item, carry) for item in standing}
    if any(fields is None for fields in placed.values()):
        return None
    after: dict[str, Item] = {item.name: moved(item, **(placed[item.name] or {})) for item in standing}
    for item in unit.rest:
        if isinstance(item, (Hung, Light)):
            _follow(item, after, unit)
    found: list[Change] = []
    for item in (unit.lead, *unit.rest):
        new = after.get(item.name, item)
        changed = tuple(sorted((name, value) for name, value in dict(new).items() if getattr(item, name) != value))
        if changed:
            found.append(Change(TABLE_OF[type(item)], item.name, changed))
    return tuple(found)


def _follow(item: Hung | Light, after: dict[str, Item], unit: Unit) -> None:
    """What stands on or hangs over a piece keeps its place along it; a picture stays when the piece leaves the wall."""
    bearer = next((one for one in (unit.lead, *unit.rest) if one.name in (item.on, item.over)), None)
    if not isinstance(bearer, Piece) or item.wall != bearer.wall:
        return
    new = after[bearer.name]
    assert isinstance(new, Piece)
    if isinstance(item, Light) or item.on or new.gap <= AT_WALL_MM:
        place: dict[str, Value] = {"wall": new.wall, "from_left": item.from_left - bearer.from_left + new.from_left}
        if isinstance(item, Light):
            place["gap"] = item.gap - bearer.gap + new.gap
        after[item.name] = moved(item, **place)


def _settled(site: Site, item: Floor, carry: Carry) -> dict[str, Value] | None:
    """Wall, place and gap of a thing on the floor after the carry. What stood against a wall does so again."""
    corners = [carry.point(x, y) for x, y in list(footprint(item, site.lines).exterior.coords)[:4]]
    inward = carry.way(site.lines[item.wall].inward)
    best: tuple[float, str, float] | None = None
    for letter, line in sorted(site.lines.items()):
        if not _alike(line.inward, inward):
            continue
        local = [line.local(x, y) for x, y in corners]
        gap, left = min(off for _, off in local), min(along for along, _ in local)
        inside = left >= -1 and max(along for along, _ in local) <= line.length + 1
        if inside and (best is None or abs(gap) < abs(best[0])):
            best = (gap, letter, left)
    if best is None:
        return None
    gap, letter, left = best
    against = item.gap <= AT_WALL_MM and not isinstance(item, Rug)
    fields: dict[str, Value] = {"wall": letter, "from_left": site.tape(max(0.0, left))}
    fields["gap"] = item.gap if against and not _let_go(item, carry) else site.tape(max(0.0, gap))
    if isinstance(item, Piece) and item.faces:
        fields["faces"] = _faced(site, letter, carry.way(facing(item, site.lines)))
    if isinstance(item, Light) and item.socket:
        fields["socket"] = ""
    return fields


def _let_go(item: Floor, carry: Carry) -> bool:
    """True where the carry itself takes the thing off its wall."""
    return item.wall == carry.start.letter and carry.to_gap > carry.gap + 1


def _faced(site: Site, wall: str, way: Point) -> str:
    """The wall that is looked at in this direction; empty where it is straight away from the own wall."""
    if _alike(site.lines[wall].inward, way):
        return ""
    return next((letter for letter, line in sorted(site.lines.items()) if _alike(line.inward, (-way[0], -way[1]))), "")


def _alike(one: Point, other: Point) -> bool:
    return one[0] * other[0] + one[1] * other[1] > 0.999
