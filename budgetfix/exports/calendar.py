"""The sessions as a calendar (RFC 5545): what to do, what to bring, what to mind.

A dated session with work is an event in floating time: nine o'clock is nine o'clock where the room is. What has no
day is a task without one, and so is a plan with nothing to do, since a calendar needs one component at least
(section 3.6). No alarms: people's calendars have their own.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, time, timedelta
from typing import TYPE_CHECKING

from budgetfix.exports.by_person import own, times, who_words, with_words, workers_of
from budgetfix.exports.calendar_buy import buy_entries
from budgetfix.exports.calendar_entry import clean, stamp
from budgetfix.exports.lettering import count, span
from budgetfix.outcome.book import MoneyLine, PlanBook, SessionRow, Spell, Task

if TYPE_CHECKING:
    from icalendar import Event, Todo

MAKER = "-//budgetfix//plan//EN"
GOODS = ("product", "tool", "hire")
"""Kinds of lines that somebody carries."""


@dataclass(frozen=True, slots=True)
class _Session:
    """What one entry tells: all of a session, or one person's part of it (`person`, empty for all)."""

    book: PlanBook
    row: SessionRow | None
    number: int | None
    tasks: tuple[tuple[int, Task], ...]
    person: str = ""

    def spells(self, task: Task) -> tuple[Spell, ...]:
        """When a task is done; for one person, their own part of it."""
        return own(task, self.person) if self.person else task.spells

    def bounds(self) -> tuple[int, int]:
        """First and last minute, from the session's start; setting up counts."""
        spells = [spell for _, task in self.tasks for spell in self.spells(task)]
        long = clock_minutes(self.row, self.person) if self.row is not None else 0
        if not spells:
            return 0, long
        worked = sum(spell.end - spell.begin for spell in spells)
        begin = min(spell.begin for spell in spells) - (max(0, long - worked) if self.person else 0)
        return (max(0, begin) if self.person else 0), max(spell.end for spell in spells)


def plan_ics(book: PlanBook) -> bytes:
    """One entry a session with work, in order, and one a day on which to buy; the same book gives the same bytes."""
    return _calendar([*_entries(book, ""), *buy_entries(book)])


def person_ics(book: PlanBook, person: str) -> bytes:
    """The same for one person: only their tasks, from their first to their last minute of each session."""
    return _calendar(_entries(book, person))


def _calendar(entries: list[Event | Todo]) -> bytes:
    from icalendar import Calendar

    made = Calendar()
    made.add("prodid", MAKER)
    made.add("version", "2.0")
    made.add("calscale", "GREGORIAN")
    for entry in entries:
        made.add_component(entry)
    data: bytes = made.to_ical()
    return data


def clock_minutes(row: SessionRow, person: str = "") -> int:
    """How long a session lasts: people work at once, so the busiest of them decides, or the one who is asked about."""
    return max((used for name, _, used in row.who if person in ("", name)), default=row.minutes_used)


def _entries(book: PlanBook, person: str) -> list[Event | Todo]:
    rows = {row.number: row for row in book.sessions or ()}
    sessions: dict[int | None, list[tuple[int, Task]]] = {}
    for number, task in enumerate(book.tasks, 1):
        if person in ("", *task.who):
            sessions.setdefault(task.session, []).append((number, task))
    if not sessions:
        return [_nothing(book)]
    ordered = sorted(sessions.items(), key=lambda pair: (pair[0] is None, pair[0] or 0))
    return [_entry(_Session(book, rows.get(number or 0), number, tuple(tasks), person)) for number, tasks in ordered]


def _entry(one: _Session) -> Event | Todo:
    """An event where the day is known, else a task."""
    from icalendar import Event, Todo

    book, row, number = one.book, one.row, one.number
    entry: Event | Todo = Todo() if row is None or row.on is None else Event()
    stamp(entry, book, f"session {number}" + (f"\n{one.person}" if one.person else ""))
    session = "" if number is None or len(book.sessions or ()) < 2 else f", session {number}"
    who = f", {one.person}" if one.person else ""
    entry.add("summary", clean(f"{book.title}{session}{who}: {count(len(one.tasks), 'task')}"))
    if row is not None and row.on is not None:
        begin, end = one.bounds()
        start = datetime.combine(row.on, time()) + timedelta(minutes=row.start_minute)
        entry.add("dtstart", start + timedelta(minutes=begin))
        if end > begin:
            entry.add("dtend", start + timedelta(minutes=end))
    entry.add("description", clean("\n".join(_words(one))))
    return entry


def _nothing(book: PlanBook) -> Todo:
    from icalendar import Todo

    entry = Todo()
    stamp(entry, book, "nothing")
    entry.add("summary", clean(f"{book.title}: nothing to do"))
    entry.add("status", "COMPLETED")
    return entry


def _words(one: _Session) -> list[str]:
    tasks = [task for _, task in one.tasks]
    lines = _hours(one.row, one.person)
    many = len(workers_of(one.book)) > 1
    for number, task in one.tasks:
        lines += _task(number, task, times(one.row, one.spells(task), many), one.person)
    lines += _list("Bring", _goods(one.book.money, tasks))
    lines += _list("Tools", sorted({tool for task in tasks for tool in task.tools}))
    lines += _list("Mind", list(dict.fromkeys(care for task in tasks for care in task.cares)))
    return lines


def _hours(row: SessionRow | None, person: str) -> list[str]:
    """How long, and who; empty without a list of hours."""
    if row is None:
        return []
    if person:
        mine = next(((there, used) for name, there, used in row.who if name == person), None)
        return [] if mine is None else [f"Planned: {span(mine[1])} of {span(mine[0])}.", ""]
    busy = [(name, there, used) for name, there, used in row.who if used]
    longest = max((there for _, there, _ in row.who), default=row.minutes_available)
    lines = [f"Planned: {span(clock_minutes(row))} of {span(longest)}."]
    if len(row.who) > 1:
        lines.append("; ".join(f"{name} {span(used)} of {span(there)}" for name, there, used in busy) + ".")
    working = any(used for _, _, used in row.who) or row.minutes_used
    return [*lines, ""] if working else []


def _task(number: int, task: Task, when: str, person: str) -> list[str]:
    """The task's number is the one of the sheet Do."""
    part = f" ({task.step} of {task.steps})" if task.steps > 1 else ""
    mine = task.help_minutes if person and person == task.helper else task.minutes
    minutes = [when] if when else []
    minutes += [span(mine)] if mine else []
    if task.high > task.minutes and mine == task.minutes:
        minutes.append(f"{span(task.high)} if it goes badly")
    if task.people > 1 and not person:
        minutes.append(count(task.people, "person", "people"))
    if person and len(task.who) > 1:
        minutes.append(f"with {with_words(task, person)}")
    elif task.who and not person:
        minutes.append(who_words(task))
    lines = [f"{number}. {task.name}{part}" + (f": {'; '.join(minutes)}" if minutes else "")]
    if task.text and task.text != task.name:
        lines.append(f"   {task.text}")
    if task.done_when:
        lines.append(f"   Done when {task.done_when}")
    return lines


def _goods(money: tuple[MoneyLine, ...], tasks: list[Task]) -> list[str]:
    """What is bought or hired for these tasks; for each of several sessions where a task has steps in both."""
    names = {task.name for task in tasks}
    lines = []
    for line in money:
        if line.kind in GOODS and names & set(line.tasks):
            packs = f"{line.packs} × " if (line.packs or 1) > 1 and line.kind == "product" else ""
            bag = f" (bag {line.bag})" if line.bag else ""
            lines.append(f"{packs}{line.name}{bag}")
    return list(dict.fromkeys(lines))


def _list(head: str, lines: list[str]) -> list[str]:
    return ["", head, *(f"- {line}" for line in lines)] if lines else []
