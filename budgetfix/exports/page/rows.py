"""Rows of the page's lists: each distinct row once, so that seventy plans take little more room than one."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Generic, TypeVar

from budgetfix.exports.by_person import who_words
from budgetfix.exports.lettering import SIGNS, count, long_day
from budgetfix.exports.money_days import buy_from
from budgetfix.exports.page.words import listed, money_words
from budgetfix.outcome.book import FaultRow, MoneyLine, PlanBook, Task
from budgetfix.outcome.money_lines import NOT_BOUGHT, ON_TOP, line_ids

Row = TypeVar("Row")


@dataclass(frozen=True, slots=True)
class Detail:
    """A label and what a person or a shop called it; `label` may be empty."""

    label: str
    text: str


@dataclass(frozen=True, slots=True)
class BuyRow:
    """A line to buy; `tick` names its box, empty where there is nothing to tick."""

    tick: str
    packs: str
    name: str
    total: str
    details: tuple[Detail, ...]


@dataclass(frozen=True, slots=True)
class DoRow:
    """A step to do. `lines` are its parts, one thing to do each."""

    tick: str
    name: str
    part: str
    minutes: str
    lines: tuple[str, ...]
    done: str
    details: tuple[Detail, ...]
    cares: tuple[str, ...]
    who: tuple[str, ...] = ()
    """Whose list it is on, where there are several people."""


@dataclass(frozen=True, slots=True)
class FaultSeen:
    """A fault as it was found, whatever a plan makes of it."""

    title: str
    subject: str
    sort: str
    before: str
    sound: str
    points: str
    rule: str


@dataclass(frozen=True, slots=True)
class FaultNow:
    """What a plan makes of a fault; `look` is a class name."""

    after: str
    points: str
    state: str
    look: str


@dataclass
class Distinct(Generic[Row]):
    """Rows by their first coming."""

    places: dict[Row, int] = field(default_factory=dict)

    def place(self, row: Row) -> int:
        """The number of a row, from 0; a new one gets the next."""
        return self.places.setdefault(row, len(self.places))


def buy_row(book: PlanBook, line: MoneyLine, tick: str) -> BuyRow:
    """A line of money in words; what is empty is left out."""
    most = "" if line.most_minor is None else f"{money_words(book, line.most_minor)} in all"
    each = line.unit_price_minor if (line.packs or 0) > 1 else None
    details = (
        ("Buy from", buy_from(line)),
        ("Label", line.label),
        ("Takes", line.accepts),
        ("Each", "" if each is None else money_words(book, each)),
        ("Pay at most", most),
        ("Second choice", line.second_choice),
        ("Take along", line.take_along),
        ("Give back by", "" if line.return_by is None else long_day(line.return_by)),
        ("Stands at", line.place),
        ("Stays", f"{count(line.days, 'day')}, as priced" if line.days else ""),
        ("Comes", f"{count(line.lead_days, 'day')} after the order" if line.lead_days else ""),
        ("Bag", line.bag),
        ("For", "" if line.kind in ON_TOP else "; ".join(line.tasks)),
        ("", "example price" if line.example else ""),
    )
    return BuyRow(
        "" if line.kind in NOT_BOUGHT else tick,
        f"{line.packs} ×" if (line.packs or 0) > 1 else "",
        line.name,
        money_words(book, line.line_minor),
        tuple(Detail(label, text) for label, text in details if text),
    )


def do_row(task: Task, people: int) -> DoRow:
    """A step in words; who does it is told where there is more than one person to choose from."""
    badly = f"{task.high} min if it goes badly" if task.high > task.minutes else ""
    hands = f"{task.people} people" if task.people > 1 else ""
    who = (who_words(task) if task.helper else listed(task.who)) if people > 1 else ""
    details = (
        ("Who", who or hands),
        ("", badly),
        ("Tools", ", ".join(task.tools)),
        ("Bag", task.bag),
        ("Leaves in the wall", task.leaves),
    )
    text = task.text if task.text != task.name else ""
    return DoRow(
        f"do {task.candidate}#{task.step}",
        task.name,
        f"part {task.step} of {task.steps}" if task.steps > 1 else "",
        f"{task.minutes} min" if task.minutes else "",
        tuple(part for part in text.replace("\n", "; ").split("; ") if part),
        task.done_when,
        tuple(Detail(label, said) for label, said in details if said),
        task.cares,
        task.who if people > 1 else (),
    )


def fault_seen(row: FaultRow, rooms: bool) -> FaultSeen:
    """A fault as found; its room is told where there are several."""
    on = f"{row.subject}, {row.room}" if rooms and row.room else row.subject
    before = row.before if row.certain else f"{row.before} ~"
    sort = "safety" if row.safety else "listed" if row.listed else ""
    return FaultSeen(row.title, on, sort, before, row.sound, f"{row.points_before:,}", row.rule or "")


def fault_now(row: FaultRow) -> FaultNow:
    """What became of it, with a sign beside the colour."""
    return FaultNow(row.after, f"{row.points_after:,}", f"{SIGNS[row.state]} {row.state}", row.state.replace(" ", "-"))


@dataclass(frozen=True, slots=True)
class HazardRow:
    """A hazard and what became of it; `by` names the steps that cure it. `look` is a class name."""

    state: str
    look: str
    title: str
    subject: str
    words: str
    by: str


def hazard_row(book: PlanBook, row: FaultRow) -> HazardRow:
    """A hazard of the book's own plan: gone and by which steps, or left and what would be sound."""
    title = row.title[:1].upper() + row.title[1:]
    if row.state == "fixed":
        was = "on your list" if row.listed else row.before
        return HazardRow(f"{SIGNS['fixed']} Gone", "gone", title, row.subject, was, _cured_by(book, row.fault))
    state = {"better": "Better, not gone", "new": "New"}.get(row.state, "Still there")
    found = row.after or row.before
    found = "on your list" if row.listed else found
    words = f"{found}; sound is {row.sound}" if row.sound else found
    return HazardRow(f"! {state}", "left", title, row.subject, words, "")


def _cured_by(book: PlanBook, fault: str) -> str:
    """`Step 3 cures it: Fix the bookcase to the wall`; a remedy of several steps cures with its last."""
    cures = {row.id: row.name for row in book.chosen if fault in row.answers}
    last = {task.candidate: number for number, task in enumerate(book.tasks, 1) if task.candidate in cures}
    steps = sorted((number, cures[id]) for id, number in last.items())
    parts = [f"Step {number} cures it: {name}" for number, name in steps]
    return "; ".join(parts)


def buy_ticks(money: tuple[MoneyLine, ...], taken: tuple[str, ...] = ()) -> list[str]:
    """Names of the boxes, one a line: the workbook's own ids of rows. `taken`: those of lines carried on."""
    return [f"buy {id}" for id in line_ids(money, taken)]
