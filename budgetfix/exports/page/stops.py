"""The slider's stops as data: which rows each plan lists, under which headings, and its figures in words."""

from __future__ import annotations

from dataclasses import asdict, dataclass, field

from budgetfix.exports.by_person import times, workers
from budgetfix.exports.carried import carried
from budgetfix.exports.lettering import span
from budgetfix.exports.page.rows import (
    BuyRow,
    Distinct,
    DoRow,
    FaultNow,
    FaultSeen,
    buy_row,
    buy_ticks,
    do_row,
    fault_now,
    fault_seen,
)
from budgetfix.exports.page.words import change_words, fixed_of, left_words, money_words, session_words, stop_words
from budgetfix.outcome.book import FaultRow, MoneyLine, PlanBook, SessionRow, Stop, Task

FREE = "Nothing. Everything in this plan is free."
NO_WORK = "Nothing to do."
NO_SHOP = "Hire, pay and what else has no shop"
IN_ORDER, NO_TIME = "In this order", "Takes no time of its own"


@dataclass(frozen=True, slots=True)
class Group:
    """Rows (by number) below a heading; `note` stands beside it. `times`: when each is done, empty where unknown."""

    heading: str
    note: str
    rows: tuple[int, ...]
    times: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class StopView:
    """One plan as the page shows it. `tiles` are money, faults, hazards, time, points; `now` goes with `faults`."""

    money: str
    said: str
    tiles: tuple[str, ...]
    improvement: int
    buy: tuple[Group, ...]
    no_buy: str
    total: str
    do: tuple[Group, ...]
    no_do: str
    faults: tuple[int, ...]
    now: tuple[int, ...]
    change: str


@dataclass
class Lists:
    """Every distinct row of all stops."""

    buy: Distinct[BuyRow] = field(default_factory=Distinct)
    do: Distinct[DoRow] = field(default_factory=Distinct)
    faults: Distinct[FaultSeen] = field(default_factory=Distinct)
    now: Distinct[FaultNow] = field(default_factory=Distinct)


def all_stops(book: PlanBook) -> tuple[Stop, ...]:
    """The stops by rising spend; the book's own lists stand at its own stop, so that page and workbook agree."""
    own = Stop(
        book.best, book.hazard_points_after, book.money, book.tasks, book.sessions, book.faults, this_one=True
    )  # fmt: skip
    stops = tuple(own if stop.this_one else stop for stop in book.stops)
    if own in stops:
        return stops
    return tuple(sorted((*stops, own), key=lambda stop: (stop.sums.spent_minor, stop.sums.improvement)))


def stop_view(book: PlanBook, stop: Stop, lists: Lists) -> StopView:
    """A stop in words, against the book's own plan, and numbers of rows; new rows are put into the lists."""
    sums = stop.sums
    rooms = len({row.room for row in stop.faults if row.room}) > 1
    return StopView(
        money_words(book, sums.spent_minor),
        stop_words(book, sums, stop.faults),
        _tiles(book, stop),
        sums.improvement,
        _buy(book, stop.money, lists),
        "" if stop.money else FREE,
        _total(book, sums.spent_minor),
        _do(book, stop.tasks, stop.sessions, lists),
        "" if stop.tasks else NO_WORK,
        tuple(lists.faults.place(fault_seen(row, rooms)) for row in _sorted(stop.faults)),
        tuple(lists.now.place(fault_now(row)) for row in _sorted(stop.faults)),
        change_words(book.tasks, stop.tasks),
    )


def _sorted(faults: tuple[FaultRow, ...]) -> list[FaultRow]:
    return sorted(faults, key=lambda row: not row.safety)


def _tiles(book: PlanBook, stop: Stop) -> tuple[str, ...]:
    fixed, of = fixed_of(stop.faults)
    left, before = stop.sums.hazards_after, book.hazards_before
    return (
        money_words(book, stop.sums.spent_minor),
        f"{fixed} of {of}",
        f"{left} of {before}" if before else f"{left}",
        span(stop.sums.minutes),
        f"{stop.sums.improvement:,}",
    )


def _total(book: PlanBook, spent_minor: int) -> str:
    left = left_words(book, spent_minor)
    return f"{money_words(book, spent_minor)} in all" + (f"; {left}" if left else "")


def _buy(book: PlanBook, money: tuple[MoneyLine, ...], lists: Lists) -> tuple[Group, ...]:
    """Shop by shop in the book's order, what has no shop last."""
    shops: dict[str, list[tuple[MoneyLine, str]]] = {}
    for line, tick in zip(money, buy_ticks(money, carried(book).ids), strict=True):
        shops.setdefault(line.shop_name, []).append((line, tick))
    names = sorted(shops, key=lambda name: not name)
    return tuple(
        Group(
            name or (NO_SHOP if len(names) > 1 else ""),
            money_words(book, sum(line.line_minor for line, _ in shops[name])),
            tuple(lists.buy.place(buy_row(book, line, tick)) for line, tick in shops[name]),
        )
        for name in names
    )


def _do(
    book: PlanBook, tasks: tuple[Task, ...], sessions: tuple[SessionRow, ...] | None, lists: Lists
) -> tuple[Group, ...]:
    """Session by session; without hours all in one, and last what takes no time."""
    known = {row.number: row for row in sessions or ()}
    groups: dict[tuple[str, str], list[Task]] = {}
    many = len(workers(tasks, sessions)) > 1
    for task in tasks:
        row = known.get(task.session or 0)
        heading = session_words(row) if row else (IN_ORDER if task.step else NO_TIME, "")
        groups.setdefault(heading, []).append(task)
    people = len(book.people)
    return tuple(
        Group(*heading, tuple(lists.do.place(do_row(task, people)) for task in group), _times(known, group, many))
        for heading, group in groups.items()
    )


def _times(known: dict[int, SessionRow], tasks: list[Task], many: bool) -> tuple[str, ...]:
    """When each is done; kept apart from the rows, so that plans with other times share them."""
    found = tuple(times(known.get(task.session or 0), task.spells, many) for task in tasks)
    return found if any(found) else ()


def as_data(view: StopView) -> dict[str, object]:
    """What the page's script reads of a stop; short, since there are up to seventy of them."""
    made = asdict(view)
    for name in ("buy", "do"):
        made[name] = [
            [group.heading, group.note, list(group.rows), *([list(group.times)] if group.times else [])]
            for group in getattr(view, name)
        ]
    del made["improvement"]
    return made
