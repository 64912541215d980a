"""How far the size of a thing may differ from the planned one: found by inspection of the room as the plan leaves it.

A remedy kind says itself what would do as well. Where a remedy of the user's sets sizes, each size is made larger and
smaller, the middle of the thing staying where it is, until hazard points or points are left that the plan does not
leave, the guard forbids it, or two things stand on one spot. Steps are 5 mm or 1/4 in: doubled outwards, halved at the
edge, and a few sizes between are looked at as well, since more of a size may do harm in the middle of a range.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from itertools import product as every

from budgetfix.base.tape import write_length
from budgetfix.catalog.models import Product
from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.measured import changed_by
from budgetfix.inspection.again import moved_between
from budgetfix.optimize.problem import Plan
from budgetfix.outcome.set_by import SIZES, sized_by
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.items import Item, Table
from budgetfix.room.overlaps import overlaps
from budgetfix.room.survey import Change, Survey, Value

STEP_MM = {"in": 6.35}
METRIC_STEP_MM = 5.0
FARTHEST = 0.25
"""Sizes are tried up to this share above and below the planned one."""
BETWEEN = 4
"""Sizes looked at between the planned one and each edge."""
MOST_LOOKS = 400
"""Inspections for one plan, at most."""
WORDS = {"rod_width": "set to", "panel_width": "one panel"}
AT = {"width": "from_left", "rod_width": "rod_from_left"}
"""The field that keeps the middle where it is."""
STANDS_ON: tuple[Table, ...] = ("pictures", "lights")


@dataclass(frozen=True, slots=True)
class Alike:
    """Things of one size that one product becomes: their names, and the sizes that are set."""

    table: Table
    things: tuple[str, ...]
    planned: tuple[tuple[str, float], ...]
    round: bool = False
    """As wide as deep and round: one size."""


@dataclass
class Trying:
    """The room as a plan leaves it, with a thing made larger or smaller. `enough`: the time is up."""

    base: Ground
    room: Survey
    enough: Callable[[], bool]
    looks: int = 0
    _known: dict[tuple[object, ...], bool] = field(default_factory=dict)
    _left: dict[str, tuple[int, int]] = field(default_factory=dict)

    @property
    def over(self) -> bool:
        """True where nothing more is looked at."""
        return self.looks >= MOST_LOOKS or self.enough()

    def fits(self, alike: Alike, sizes: Mapping[str, float]) -> bool:
        """True where nothing is worse with these sizes than with the planned ones."""
        key = (alike, *sorted(sizes.items()))
        if key not in self._known:
            self.looks += 1
            things = [self.room.named[name][1] for name in alike.things]
            changes = [change for thing in things for change in _sized(self.room, alike.table, thing, sizes)]
            changed = self.room.changed(changes)
            self._known[key] = all(self._as_good(changed, room) for room in sorted({one.room for one in things}))
        return self._known[key]

    def _as_good(self, changed: Survey, room: str) -> bool:
        if not set(overlaps(changed, room)) <= set(overlaps(self.room, room)):
            return False
        if room not in self._left:
            self._left[room] = self._judged(self.room, room) or (0, 0)
        left = self._judged(changed, room)
        return left is not None and left[0] <= self._left[room][0] and left[1] <= self._left[room][1]

    def _judged(self, changed: Survey, room: str) -> tuple[int, int] | None:
        """(hazard points, points) left in a room; None where the guard forbids it."""
        base = self.base
        assert base.origin is not None
        moved = moved_between(base.origin, changed, room)
        hazards = points = 0
        for at, block in enumerate(base.blocks):
            if block.room == room:
                seen = base.again(at, changed, moved)
                if base.too_much_worse(at, seen):
                    return None
                hazards, points = hazards + seen.hazards, points + seen.points
        return hazards, points


def _sized(room: Survey, table: Table, thing: Item, sizes: Mapping[str, float]) -> list[Change]:
    """A thing with other sizes, its middle kept, and what stands on it as much higher or lower."""
    fields: dict[str, Value] = dict(sizes)
    for name, value in sizes.items():
        if name in AT:
            fields[AT[name]] = getattr(thing, AT[name]) - (value - getattr(thing, name)) / 2
    changes = [Change(table, thing.name, tuple(sorted(fields.items())))]
    if table == "furniture" and "height" in sizes:
        up = sizes["height"] - getattr(thing, "height", 0.0)
        changes += [
            Change(other, one.name, (("bottom", getattr(one, "bottom", 0.0) + up),))
            for other in STANDS_ON
            for one in room.table(other)
            if getattr(one, "on", "") == thing.name
        ]
    return changes


def accepted(base: Ground, framed: Framed, plan: Plan, enough: Callable[[], bool]) -> dict[str, str]:
    """By product, the range of sizes in words, for the chosen remedies of the user's that set sizes.

    What is not clearly the thing that is set, and what there was no time for, is not there.
    """
    if base.survey is None:
        return {}
    chosen = [framed.candidates[id] for id in plan.chosen if id in framed.candidates]
    trying = Trying(base, changed_by(base.survey, framed.candidates, [one.id for one in chosen]), enough)
    users: dict[str, int] = {}
    for one in chosen:
        for product, _ in one.uses:
            users[product] = users.get(product, 0) + 1
    found: dict[str, str] = {}
    for one in chosen:
        if not one.own and not one.accepts:
            for product, words in _of(trying, one):
                if users[product] == 1 and product not in found:
                    found[product] = words
    return found


def _of(trying: Trying, one: Candidate) -> list[tuple[str, str]]:
    """(product, range in words) of each thing that one remedy sets."""
    products = {product.product: product for product in trying.base.catalog.products}
    used: list[Product] = [products[id] for id, units in one.uses if units > 0]
    found: dict[str, list[Alike]] = {}
    for change in one.changes:
        if change.item not in trying.room.named or change.remove:
            continue
        thing = trying.room.named[change.item][1]
        said = dict(change.set) if change.add is None else dict(change.add)
        for names in SIZES.get(change.table, ()):
            sizes = tuple((name, value) for name in names if isinstance(value := said.get(name), float))
            product = sized_by(used, change.table, dict(sizes), trying.room.household.unit)
            if product is not None:
                found.setdefault(product.product, []).append(
                    Alike(change.table, (thing.name,), sizes, len(sizes) > 1 and _across(thing))
                )
    joined = {id: _joined(ones) for id, ones in found.items()}
    ranges = {id: _range(trying, alike) for id, alike in joined.items() if alike is not None and not trying.over}
    return [(id, words) for id, words in ranges.items() if words]


def _joined(ones: list[Alike]) -> Alike | None:
    """All things that a product becomes, made larger together; None where they are not of one size."""
    if len({(one.table, one.planned, one.round) for one in ones}) > 1:
        return None
    return replace(ones[0], things=tuple(name for one in ones for name in one.things))


def _range(trying: Trying, alike: Alike) -> str:
    """The ranges of a thing's sizes in words; empty where the time ran out."""
    unit = trying.room.household.unit
    step = STEP_MM.get(unit, METRIC_STEP_MM)
    sizes = dict(alike.planned)
    fields: list[tuple[str, ...]] = [("width", "depth")] if alike.round else []
    fields += [(name,) for name in sizes if not (alike.round and name in ("width", "depth"))]
    ends: list[tuple[tuple[str, ...], float, float]] = []
    for group in fields:
        low, high = (_edge(trying, alike, group, sizes[group[0]], way * step) for way in (-1, 1))
        ends.append((group, low, high))
    together = all(trying.fits(alike, corner) for corner in _corners(ends))
    if trying.over:
        return ""
    words = [f"{_word(group)} {_between(low, high, unit)}" for group, low, high in ends]
    return ", ".join(words) if together else f"{' or '.join(words)}, the rest as planned"


def _corners(ends: list[tuple[tuple[str, ...], float, float]]) -> list[dict[str, float]]:
    """All sizes at once at one of their ends."""
    return [
        {name: value for (group, _, _), value in zip(ends, values, strict=True) for name in group}
        for values in every(*(dict.fromkeys((low, high)) for _, low, high in ends))
    ]


def _across(thing: Item) -> bool:
    """True for what is as wide as deep and round: it has one size."""
    width, depth = getattr(thing, "width", 0.0), getattr(thing, "depth", 1.0)
    return bool(getattr(thing, "round", False)) and abs(width - depth) < 1.0


def _word(group: tuple[str, ...]) -> str:
    return "across" if len(group) > 1 else WORDS.get(group[0], group[0])


def _between(low: float, high: float, unit: str) -> str:
    """`155 to 170 cm`; the unit once."""
    first, last = write_length(low, unit), write_length(high, unit)
    if first == last:
        return f"{first} only"
    return f"{first.removesuffix(unit).strip()} to {last}"


def _edge(trying: Trying, alike: Alike, group: tuple[str, ...], planned: float, step: float) -> float:
    """The size farthest from the planned one, in the direction of `step`, up to which all that was looked at fits."""

    def fits(count: int) -> bool:
        return not trying.over and trying.fits(alike, dict.fromkeys(group, planned + count * step))

    most, good, stride = int(planned * FARTHEST / abs(step)), 0, 1
    while good < most:
        farther = min(good + stride, most)
        if fits(farther):
            good, stride = farther, stride * 2
            continue
        good = _halved(fits, good, farther)
        break
    last = 0
    for count in sorted({good * part // (BETWEEN + 1) for part in range(1, BETWEEN + 1)} - {0}):
        if not fits(count):
            return planned + last * step
        last = count
    return planned + good * step


def _halved(fits: Callable[[int], bool], good: int, bad: int) -> int:
    """The last count that fits between one that does and one that does not."""
    while bad - good > 1:
        middle = (good + bad) // 2
        good, bad = (middle, bad) if fits(middle) else (good, middle)
    return good
