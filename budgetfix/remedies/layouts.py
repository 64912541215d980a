"""Whole layouts of the furniture that is there, found by search on the real geometry.

A layout carries the seating group to another wall, floats it, or brings single pieces to other walls or into one
another's places; what is displaced goes to the nearest place that is free. Every layout is put into the room and
inspected: it may leave nothing on one spot, nothing before a door, and no finding more than a quarter worse.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import chain, islice

from budgetfix.inspection.again import moved_between
from budgetfix.inspection.guard import too_much_worse
from budgetfix.inspection.inspect import Seen, look_again, look_at_all
from budgetfix.inspection.judging import blocks
from budgetfix.inspection.look import Look
from budgetfix.remedies.kind import Site
from budgetfix.remedies.units import AT_WALL_MM, Carry, Unit, bears_screen, carried, seating_unit, units
from budgetfix.room.items import Hung, Piece
from budgetfix.room.overlaps import in_doorways, overlaps
from budgetfix.room.places import WallLine, extent
from budgetfix.room.survey import Change, Survey

STEP_MM = 300.0
"""Between two places of the group that are tried."""
FLOATS_MM = (300.0, 600.0, 900.0, 1200.0)
"""How far the main seat is taken off its wall, with the table and rug before it."""
BEAM, DEPTH = 3, 3
"""The best layouts that are carried on, and how many pieces or groups are moved one after the other."""
MOST_PAIRS = 12
CLEAR_MM = 100.0
"""Between two pieces on one wall."""
WAYS = ("walkway-too-narrow", "door-cannot-open", "front-blocked", "chairs-boxed-in", "bed-side-tight", "exit-blocked")
SEATING = ("all-against-walls", "seats-too-far-apart", "screen-seen-sideways", "seat-turns-the-neck", "screen-glare")
TROUBLES = (*WAYS, *SEATING)
"""What another layout is meant to answer."""


@dataclass(frozen=True)
class Layout:
    """One layout: where everything goes, and what is then left. `trouble`: weights times severities of `TROUBLES`."""

    changes: tuple[Change, ...]
    hazards: int
    points: int
    trouble: Fraction
    ways: Fraction
    allowed: bool
    """False where something is left more than a quarter worse."""
    stands: tuple[tuple[str, str, bool], ...]
    """Of each lead that moved: its name, its wall, and whether it stands off it."""


@dataclass(frozen=True)
class Tried:
    """The layouts that are better than the room as it stands, best first, and how many were looked at."""

    layouts: tuple[Layout, ...]
    looked_at: int


def searched(site: Site, most: int = 5) -> Tried:
    """The layouts that leave less trouble and less in all, without making anything much worse; at most `most`."""
    bench = Bench(site)
    now = bench.judged(())
    seen: dict[frozenset[Change], Layout] = {}
    beam = [now]
    for depth in range(DEPTH):
        fresh: list[Layout] = []
        for start in beam:
            for changes in _layouts(site, start.changes, first=depth == 0):
                key = frozenset(changes)
                if key not in seen:
                    seen[key] = bench.judged(changes)
                    fresh.append(seen[key])
        beam = sorted(fresh, key=lambda one: (one.hazards + one.points, len(one.changes)))[:BEAM]
    better = [one for one in seen.values() if one.allowed and _better(one, now)]
    better.sort(key=lambda one: (one.hazards, one.points, len(one.stands), one.stands))
    return Tried(tuple(_differing(better, most)), len(seen))


def _better(one: Layout, now: Layout) -> bool:
    less = (one.hazards, one.points) < (now.hazards, now.points)
    return less and one.trouble < now.trouble and one.ways <= now.ways and bool(one.stands)


def _differing(layouts: Iterable[Layout], most: int) -> Iterator[Layout]:
    """Layouts that differ in what stands where, and move nothing for no gain."""
    kept: list[Layout] = []
    for layout in layouts:
        mine = frozenset(layout.stands)
        if any(frozenset(other.stands) <= mine for other in kept):
            continue
        kept.append(layout)
        yield layout
        if len(kept) == most:
            return


class Bench:
    """Inspects one room in many layouts."""

    def __init__(self, site: Site) -> None:
        self.site = site
        self.blocks = blocks((site.room,), tuple(site.judges[slug] for slug in sorted(site.judges)))
        self.before = look_at_all(self.blocks, site.survey, site.brief)

    def judged(self, changes: tuple[Change, ...]) -> Layout:
        """The layout with what is left of each block."""
        site = self.site
        after = site.survey.changed(changes)
        moved, room = moved_between(site.survey, after, site.room), Look(after, site.room)
        allowed, seen = True, []
        for block, before in zip(self.blocks, self.before, strict=True):
            now = look_again(block, after, site.brief, before, (), site.judges, moved, room)
            allowed = allowed and not too_much_worse(before, now, site.brief.may_worsen)
            seen.append(now)
        hazards, points = sum(one.hazards for one in seen), sum(one.points for one in seen)
        left = _left(seen, TROUBLES, site), _left(seen, WAYS, site)
        return Layout(changes, hazards, points, *left, allowed, _stands(site, after))


def _left(seen: Iterable[Seen], rules: Iterable[str], site: Site) -> Fraction:
    found = [finding for one in seen for finding in one.findings if finding.rule in rules]
    return sum((finding.severity * site.judges[finding.rule].weight for finding in found), Fraction(0))


def _stands(site: Site, after: Survey) -> tuple[tuple[str, str, bool], ...]:
    """Every piece that now stands at another wall, or off its own or back at it; not what belongs to another piece."""
    found = []
    for old in site.survey.furniture:
        new = after.named[old.name][1]
        if isinstance(new, Piece) and not old.at and old.room == site.room:
            off = (old.gap > AT_WALL_MM, new.gap > AT_WALL_MM)
            if old.wall != new.wall or off[0] != off[1]:
                found.append((old.name, new.wall, off[1]))
    return tuple(sorted(found))


def _layouts(site: Site, start: tuple[Change, ...], *, first: bool) -> Iterator[tuple[Change, ...]]:
    """One step on from a layout, as far as geometry lets it pass: the group carried or floated (at first), two pieces
    exchanged (at first), or one piece to another place.
    """
    here = replace(site, survey=site.survey.changed(start))
    seating = seating_unit(here)
    others = units(here, seating.names if seating is not None else ())
    steps: Iterator[tuple[Change, ...]]
    if first:
        steps = chain(_group_moved(here, seating, others), _exchanged(here, others), _single(here, others))
    else:
        steps = _single(here, others)
    for changes in steps:
        yield _together(site, (*start, *changes))


def _together(site: Site, changes: tuple[Change, ...]) -> tuple[Change, ...]:
    """One change a thing: what it is set to in the end, where that is not how it was."""
    after = site.survey.changed(changes)
    found = []
    for name in sorted({one.item for one in changes}):
        table, old = site.survey.named[name]
        fields = dict(after.named[name][1])
        fresh = tuple(sorted((field, value) for field, value in fields.items() if getattr(old, field) != value))
        if fresh:
            found.append(Change(table, name, fresh))
    return tuple(found)


def _group_moved(site: Site, seating: Unit | None, others: tuple[Unit, ...]) -> Iterator[tuple[Change, ...]]:
    if seating is None:
        return
    for carry in _ways_to_turn(site, seating):
        yield from _made(site, seating, carry, others)
    before = _before_the_seat(site, seating)
    for off in FLOATS_MM:
        if off > seating.lead.gap:
            yield from _made(site, before, _floated(site, before, off), others)


def _single(site: Site, others: tuple[Unit, ...]) -> Iterator[tuple[Change, ...]]:
    for unit in others:
        for carry in _other_places(site, unit):
            yield from _made(site, unit, carry, tuple(one for one in others if one is not unit))


def _made(site: Site, unit: Unit, carry: Carry, others: tuple[Unit, ...]) -> Iterator[tuple[Change, ...]]:
    """The unit carried, and what it displaces in the nearest free place; nothing where that cannot be."""
    changes = carried(site, unit, carry)
    if not changes or not _has_socket(site, changes):
        return
    for other in others:
        if not _struck(site, changes).isdisjoint(other.names):
            again = _nearest_free(site, other, changes)
            if again is None:
                return
            changes = again
    if not _struck(site, changes):
        yield changes


def _struck(site: Site, changes: tuple[Change, ...]) -> frozenset[str]:
    """Everything that would share a spot, or stand before a door or outside, and did not before."""
    after, names = site.survey.changed(changes), frozenset(one.item for one in changes)
    fresh = {*overlaps(after, site.room, names), *in_doorways(after, site.room, names)} - site.taken
    return frozenset(name for pair in fresh for name in pair)


def _nearest_free(site: Site, unit: Unit, changes: tuple[Change, ...]) -> tuple[Change, ...] | None:
    """The changes with the unit carried to the nearest place where it strikes nothing."""
    for carry in _places(site, unit, site.survey.changed(changes)):
        more = carried(site, unit, carry)
        if more is not None and unit.names.isdisjoint(_struck(site, (*changes, *more))):
            return (*changes, *more)
    return None


def _carry(site: Site, unit: Unit, wall: str, to_left: float, to_gap: float) -> Carry:
    start = site.lines[unit.lead.wall]
    left, gap = site.tape(to_left), site.tape(to_gap)
    return Carry(start, unit.lead.from_left, unit.lead.gap, site.lines[wall], left, gap)


def _ways_to_turn(site: Site, unit: Unit) -> Iterator[Carry]:
    """The group before each other wall: in its middle, and as far to the left and right as goes."""
    along, _ = extent(unit.lead, site.lines)
    for letter, line in sorted(site.lines.items()):
        if letter == unit.lead.wall or line.length < along:
            continue
        middle = (line.length - along) / 2
        steps = [middle + STEP_MM * count for count in range(-int(middle / STEP_MM), int(middle / STEP_MM) + 1)]
        for place in sorted(steps, key=lambda step: (abs(step - middle), step))[:5]:
            yield _carry(site, unit, letter, place, unit.lead.gap)


def _before_the_seat(site: Site, seating: Unit) -> Unit:
    """The main seat with the tables and the rug, but not the bench and the other seats."""
    stays = {item.name for item in seating.rest if isinstance(item, Piece) and bears_screen(site, item)}
    seats = {item.name for item in seating.rest if isinstance(item, Piece) and item.seat is not None}
    kept = [one for one in seating.rest if one.name not in stays | seats]
    return Unit(seating.lead, tuple(one for one in kept if not (isinstance(one, Hung) and one.on in stays)))


def _floated(site: Site, unit: Unit, off: float) -> Carry:
    return _carry(site, unit, unit.lead.wall, unit.lead.from_left, off)


def _other_places(site: Site, unit: Unit) -> Iterator[Carry]:
    """The nearest free places of a piece at each wall."""
    for letter in sorted(site.lines):
        yield from islice(_places(site, unit, site.survey, letter), 2)


def _exchanged(site: Site, others: tuple[Unit, ...]) -> Iterator[tuple[Change, ...]]:
    """Two pieces in one another's places, middle to middle."""
    standing = [unit for unit in others if unit.lead.gap <= CLEAR_MM]
    pairs = [(one, other) for place, one in enumerate(standing) for other in standing[place + 1 :]]
    for one, other in pairs[:MOST_PAIRS]:
        there, here = _into_place(site, one, other), _into_place(site, other, one)
        if there is None or here is None:
            continue
        first, second = carried(site, one, there), carried(site, other, here)
        if first and second and not _struck(site, (*first, *second)):
            yield (*first, *second)


def _into_place(site: Site, unit: Unit, other: Unit) -> Carry | None:
    """A unit with its middle where another's is, as far as the wall goes."""
    wide, theirs = extent(unit.lead, site.lines)[0], extent(other.lead, site.lines)[0]
    line = site.lines[other.lead.wall]
    if wide > line.length:
        return None
    place = other.lead.from_left + (theirs - wide) / 2
    return _carry(site, unit, line.letter, min(max(place, 0.0), line.length - wide), unit.lead.gap)


def _places(site: Site, unit: Unit, room: Survey, wall: str | None = None) -> Iterator[Carry]:
    """Places against a wall (of all, or of this one) where it is free, the nearest first."""
    wide = extent(unit.lead, site.lines)[0]
    here = site.lines[unit.lead.wall].point(unit.lead.from_left + wide / 2)
    found: list[tuple[float, str, float]] = []
    for letter, line in sorted(site.lines.items()):
        if wall in (None, letter):
            for low, high in _free(site, room, line, unit):
                spots = (
                    {low, high - wide, (low + high - wide) / 2, unit.lead.from_left} if high - low >= wide else set()
                )
                for spot in sorted(spot for spot in spots if low <= spot <= high - wide):
                    x, y = line.point(spot + wide / 2)
                    found.append(((x - here[0]) ** 2 + (y - here[1]) ** 2, letter, spot))
    for _, letter, spot in sorted(found):
        yield _carry(site, unit, letter, spot, min(unit.lead.gap, CLEAR_MM))


def _free(site: Site, room: Survey, line: WallLine, unit: Unit) -> Iterator[tuple[float, float]]:
    """Stretches of a wall before which nothing stands, between doors, and windows that the piece would cover."""
    taken = [
        (opening.from_left, opening.from_left + opening.width)
        for opening in room.openings
        if opening.wall == line.letter and opening.room == site.room and opening.bottom < unit.lead.height
    ]
    taken += [
        (piece.from_left - CLEAR_MM, piece.from_left + extent(piece, site.lines)[0] + CLEAR_MM)
        for piece in room.furniture
        if piece.wall == line.letter and piece.room == site.room and piece.gap < unit.lead.depth
        and piece.name not in unit.names
    ]  # fmt: skip
    at = 0.0
    for start, end in sorted(taken):
        if start > at:
            yield at, start
        at = max(at, end)
    if line.length > at:
        yield at, line.length


def _has_socket(site: Site, changes: tuple[Change, ...]) -> bool:
    """A screen that moves needs a socket within its lead of 1.5 m (5 ft) along its new wall (common practice)."""
    sockets = [one for one in site.survey.sockets if one.room == site.room]
    if not sockets:
        return True
    after = site.survey.changed(changes)
    for change in changes:
        one = after.named[change.item][1]
        if isinstance(one, Hung) and one.what == "screen":
            near = [socket for socket in sockets if socket.wall == one.wall]
            reach = site.mm(60, 1500)
            if not any(
                one.from_left - reach <= socket.from_left <= one.from_left + one.width + reach for socket in near
            ):
                return False
    return True
