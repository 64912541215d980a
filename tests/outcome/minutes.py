"""An outside look at a timeline: every minute of a session is laid out, and whoever is in it twice is found."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from budgetfix.outcome.book import PlanBook


@dataclass(frozen=True)
class Laid:
    """Somebody's work, minute by minute from `begin` to before `end`; `after`: what must be over when it begins."""

    name: str
    people: tuple[str, ...]
    begin: int
    end: int
    after: tuple[str, ...] = ()


def troubles(work: Iterable[Laid], there: Mapping[str, int], setup: int = 0) -> list[str]:
    """Whatever cannot be: two places in one minute, work while setting up or gone, a step before what it follows."""
    laid = list(work)
    ends = {one.name: one.end for one in laid}
    busy: dict[tuple[str, int], str] = {}
    found = []
    for one in laid:
        found += [f"{one.name} begins before {name} is over" for name in one.after if ends[name] > one.begin]
        for person in one.people:
            for minute in range(one.begin, one.end):
                other = busy.setdefault((person, minute), one.name)
                found += [f"{person} is at {other} and {one.name} in minute {minute}"] if other != one.name else []
                found += [f"{person} is not there in minute {minute}"] if not setup <= minute < there[person] else []
    return found


def of_session(book: PlanBook, number: int) -> tuple[list[Laid], dict[str, int]]:
    """The work of one session of a book, and the minutes that each person has."""
    row = next(row for row in book.sessions or () if row.number == number)
    alone = "the only person"
    laid = [
        Laid(f"{task.candidate} {task.step} {place}", spell.who or (alone,), spell.begin, spell.end)
        for task in book.tasks
        if task.session == number
        for place, spell in enumerate(task.spells)
    ]
    there = {name: minutes for name, minutes, _ in row.who}
    return laid, there | {alone: row.minutes_available}
