"""The sessions as a calendar (RFC 5545): what to do, what to bring, what to mind.

A dated session with work is an event in floating time: nine o'clock is nine o'clock where the room is. What has no
day is a task without one, and so is a plan with nothing to do, since a calendar needs one component at least
(section 3.6). No alarms: people's calendars have their own.
"""

from __future__ import annotations

import hashlib
import unicodedata
from datetime import UTC, datetime, time, timedelta
from typing import TYPE_CHECKING

from budgetfix.exports.files import LONG_AGO
from budgetfix.exports.lettering import count, span
from budgetfix.outcome.book import MoneyLine, PlanBook, SessionRow, Task

if TYPE_CHECKING:
    from icalendar import Event, Todo

MAKER = "-//budgetfix//plan//EN"
GOODS = ("product", "tool", "hire")
"""Kinds of lines that somebody carries."""


def plan_ics(book: PlanBook) -> bytes:
    """One entry a session with work, in order; the same book gives the same bytes."""
    from icalendar import Calendar

    made = Calendar()
    made.add("prodid", MAKER)
    made.add("version", "2.0")
    made.add("calscale", "GREGORIAN")
    for entry in _entries(book):
        made.add_component(entry)
    data: bytes = made.to_ical()
    return data


def clock_minutes(row: SessionRow) -> int:
    """How long a session lasts by the clock: people work at once, so the busiest of them decides."""
    return max((used for _, _, used in row.who), default=row.minutes_used)


def _entries(book: PlanBook) -> list[Event | Todo]:
    rows = {row.number: row for row in book.sessions or ()}
    sessions: dict[int | None, list[tuple[int, Task]]] = {}
    for number, task in enumerate(book.tasks, 1):
        sessions.setdefault(task.session, []).append((number, task))
    if not sessions:
        return [_nothing(book)]
    ordered = sorted(sessions.items(), key=lambda pair: (pair[0] is None, pair[0] or 0))
    return [_entry(book, rows.get(number or 0), number, tasks) for number, tasks in ordered]


def _entry(book: PlanBook, row: SessionRow | None, number: int | None, tasks: list[tuple[int, Task]]) -> Event | Todo:
    """An event where the day is known, else a task."""
    from icalendar import Event, Todo

    entry: Event | Todo = Todo() if row is None or row.on is None else Event()
    _stamp(entry, book, f"session {number}")
    session = "" if number is None or len(book.sessions or ()) < 2 else f", session {number}"
    entry.add("summary", _clean(f"{book.title}{session}: {count(len(tasks), 'task')}"))
    if row is not None and row.on is not None:
        begin = datetime.combine(row.on, time()) + timedelta(minutes=row.start_minute)
        entry.add("dtstart", begin)
        if clock_minutes(row):
            entry.add("dtend", begin + timedelta(minutes=clock_minutes(row)))
    entry.add("description", _clean("\n".join(_words(book, row, tasks))))
    return entry


def _stamp(entry: Event | Todo, book: PlanBook, what: str) -> None:
    """A session keeps its UID when the plan is made anew, so that a calendar replaces the entry."""
    name = f"{book.title}\n{book.room_words}\n{what}"
    entry.add("uid", f"{hashlib.sha256(name.encode('utf-8', 'replace')).hexdigest()[:32]}@budgetfix")
    entry.add("dtstamp", datetime.combine(book.ordered or LONG_AGO, time(), UTC))


def _nothing(book: PlanBook) -> Todo:
    from icalendar import Todo

    entry = Todo()
    _stamp(entry, book, "nothing")
    entry.add("summary", _clean(f"{book.title}: nothing to do"))
    entry.add("status", "COMPLETED")
    return entry


def _words(book: PlanBook, row: SessionRow | None, tasks: list[tuple[int, Task]]) -> list[str]:
    lines = _hours(row)
    for number, task in tasks:
        lines += _task(number, task)
    lines += _list("Bring", _goods(book.money, [task for _, task in tasks]))
    lines += _list("Tools", sorted({tool for _, task in tasks for tool in task.tools}))
    lines += _list("Mind", list(dict.fromkeys(care for _, task in tasks for care in task.cares)))
    return lines


def _hours(row: SessionRow | None) -> list[str]:
    """How long, and who; empty without a list of hours."""
    if row is None:
        return []
    busy = [(name, there, used) for name, there, used in row.who if used]
    longest = max((there for _, there, _ in row.who), default=row.minutes_available)
    lines = [f"Planned: {span(clock_minutes(row))} of {span(longest)}."]
    if len(row.who) > 1:
        lines.append("; ".join(f"{name} {span(used)} of {span(there)}" for name, there, used in busy) + ".")
    working = any(used for _, _, used in row.who) or row.minutes_used
    return [*lines, ""] if working else []


def _task(number: int, task: Task) -> list[str]:
    """The task's number is the one of the sheet Do."""
    part = f" ({task.step} of {task.steps})" if task.steps > 1 else ""
    minutes = [span(task.minutes)] if task.minutes else []
    if task.high > task.minutes:
        minutes.append(f"{span(task.high)} if it goes badly")
    if task.people > 1:
        minutes.append(count(task.people, "person", "people"))
    if task.who:
        minutes.append(", ".join(task.who))
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


def _clean(text: str) -> str:
    """Section 3.3.11: text holds no control letters but the line break."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").replace("\t", " ")
    return "".join(letter for letter in lines if letter == "\n" or unicodedata.category(letter) not in ("Cc", "Cs"))
