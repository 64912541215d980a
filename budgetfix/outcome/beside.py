"""Two plans side by side: what differs in means, in figures, in remedies, goods and faults. Money in minor units."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from budgetfix.outcome.book import FaultRow, PlanBook
from budgetfix.remedies.candidate import Candidate


@dataclass(frozen=True, slots=True)
class OnePlan:
    """One of the two: what it is called, its book, and what it chose. `catalog`: its catalogue's name."""

    name: str
    book: PlanBook
    chosen: tuple[Candidate, ...]
    catalog: str = ""


@dataclass(frozen=True, slots=True)
class Deed:
    """A remedy that one of the plans holds: its planned person-minutes, and what it costs alone."""

    id: str
    name: str
    minutes: int
    cost_minor: int


@dataclass(frozen=True, slots=True)
class Otherwise:
    """The same thing done in another way by each plan."""

    first: Deed
    second: Deed


@dataclass(frozen=True, slots=True)
class Good:
    """A product that the plans buy otherwise; packs are 0 where a plan buys none of it."""

    product: str
    name: str
    first_packs: int
    first_minor: int
    second_packs: int
    second_minor: int


@dataclass(frozen=True, slots=True)
class Ending:
    """A fault that ends otherwise: the points left by each plan; None where the plan's job has no such fault."""

    fault: str
    title: str
    subject: str
    safety: bool
    first: int | None
    second: int | None


@dataclass(frozen=True, slots=True)
class Beside:
    """Two plans and what differs."""

    first: OnePlan
    second: OnePlan
    only_first: tuple[Deed, ...]
    only_second: tuple[Deed, ...]
    otherwise: tuple[Otherwise, ...]
    both: tuple[str, ...]
    """Names of what both hold."""
    goods: tuple[Good, ...]
    faults: tuple[Ending, ...]

    @property
    def alike(self) -> bool:
        """True where both plans do and buy the same."""
        return not (self.only_first or self.only_second or self.otherwise or self.goods)


def beside(first: OnePlan, second: OnePlan) -> Beside:
    """What differs between two plans, each list in the order in which its plan works."""
    here, there = {one.id for one in first.chosen}, {one.id for one in second.chosen}
    ours = [one for one in _worked(first) if one.id not in there]
    theirs = [one for one in _worked(second) if one.id not in here]
    pairs = _paired(ours, theirs)
    mine, yours = {one.id for one, _ in pairs}, {other.id for _, other in pairs}
    return Beside(
        first,
        second,
        tuple(_deed(first, one) for one in ours if one.id not in mine),
        tuple(_deed(second, one) for one in theirs if one.id not in yours),
        tuple(Otherwise(_deed(first, one), _deed(second, other)) for one, other in pairs),
        tuple(one.name for one in _worked(first) if one.id in there),
        _goods(first.book, second.book),
        _faults(first.book, second.book),
    )


def _worked(plan: OnePlan) -> list[Candidate]:
    """What a plan chose, in the order of its tasks."""
    place = {task.candidate: at for at, task in reversed(list(enumerate(plan.book.tasks)))}
    return sorted(plan.chosen, key=lambda one: (place.get(one.id, len(place)), one.id))


def _paired(ours: Iterable[Candidate], theirs: Iterable[Candidate]) -> list[tuple[Candidate, Candidate]]:
    """Remedies that do the same thing in another size or with another product: of one key, each taken once."""
    free = list(theirs)
    pairs = []
    for one in ours:
        other = next((other for other in free if other.key and other.key == one.key), None)
        if other is not None:
            free.remove(other)
            pairs.append((one, other))
    return pairs


def _deed(plan: OnePlan, one: Candidate) -> Deed:
    tasks = [task for task in plan.book.tasks if task.candidate == one.id]
    return Deed(one.id, one.name, sum(task.person_minutes for task in tasks), sum(task.cost_minor for task in tasks))


def _goods(first: PlanBook, second: PlanBook) -> tuple[Good, ...]:
    """Products of which the plans buy other numbers, or for another sum, by name."""
    names: dict[str, str] = {}
    bought: tuple[dict[str, tuple[int, int]], ...] = ({}, {})
    for book, into in zip((first, second), bought, strict=True):
        for line in book.money:
            if line.product is not None:
                names.setdefault(line.product, line.name)
                packs, minor = into.get(line.product, (0, 0))
                into[line.product] = packs + (line.packs or 0), minor + line.line_minor
    rows = [(id, bought[0].get(id, (0, 0)), bought[1].get(id, (0, 0))) for id in names]
    found = [Good(id, names[id], *one, *other) for id, one, other in rows if one != other]
    return tuple(sorted(found, key=lambda good: (good.name, good.product)))


def _faults(first: PlanBook, second: PlanBook) -> tuple[Ending, ...]:
    """Faults that are left with other points, the widest apart first."""
    rows: tuple[dict[str, FaultRow], ...] = tuple({row.fault: row for row in book.faults} for book in (first, second))
    found = []
    for id in dict.fromkeys((*rows[0], *rows[1])):
        one, other = (table.get(id) for table in rows)
        row = one or other
        assert row is not None
        points = tuple(None if each is None else each.points_after for each in (one, other))
        if points[0] != points[1]:
            found.append(Ending(id, row.title, row.subject, row.safety, *points))
    return tuple(sorted(found, key=lambda end: (not end.safety, -abs((end.first or 0) - (end.second or 0)), end.fault)))
