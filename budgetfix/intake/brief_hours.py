"""The list of hours and the people of a brief."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from itertools import pairwise

from budgetfix.base.limits import FIRST_YEAR, LAST_YEAR, MOST_MINUTES, MOST_PEOPLE, MOST_SESSIONS
from budgetfix.base.money import read_number
from budgetfix.brief.models import Hours, Person
from budgetfix.intake.inside import Gathered, Inside, Part, at, each
from budgetfix.intake.reader import as_names, as_pairs, as_text, as_whole, as_yes
from budgetfix.intake.yaml_lines import Key

WANTED_HOURS = "hours such as [4, 3], or [{date: 2026-06-06, start: '09:00', people: {ann: 3}}], or null"
WANTED_PEOPLE = "a number of people, or {ben: {not: [ladder]}}"
LATER = "those that are far off can be planned when some are over"
NINE = 9 * 60
_CLOCK = re.compile(r"(\d{1,2}):(\d{2})")


def read_people(value: object) -> tuple[Person, ...]:
    """`2`, or a mapping of names. Errors: ValueError."""
    if isinstance(value, dict):
        if not value:
            raise ValueError("there must be somebody")
        _few(len(value))
        return _two_or_none(tuple(each(value.items(), _person)))
    count = as_whole(value)
    if count < 1:
        raise ValueError("there must be somebody")
    _few(count)
    return tuple(Person(name=str(number)) for number in range(1, count + 1))


def _few(count: int) -> None:
    if count > MOST_PEOPLE:
        raise ValueError(f"{MOST_PEOPLE} people at most; put two who always work together down as one")


def _person(name: Key, facts: object) -> Person:
    if facts is not None and not isinstance(facts, dict):
        raise ValueError("`not` and `priorities` are known, such as {not: [ladder], priorities: {light: 2}}")
    given, parts = facts or {}, Gathered()
    parts.only(given, ("not", "priorities"))
    words: tuple[str, ...] = parts.at("not", given.get("not") or [], (), as_names)
    voice: tuple[tuple[str, Fraction], ...] | None = None
    if "priorities" in given:
        voice = parts.at("priorities", given["priorities"], voice, read_priorities)
    parts.end()
    return Person(name=str(name), refuses=words, priorities=voice)


def _two_or_none(people: tuple[Person, ...]) -> tuple[Person, ...]:
    """Errors: ValueError where one person has priorities of their own, or three: the fair choice is between two."""
    voices = sum(person.priorities is not None for person in people)
    if voices not in (0, 2):
        raise ValueError(f"`priorities` for two people, not {voices}; write `priorities: {{}}` for who has none")
    return people


def read_priorities(value: object) -> tuple[tuple[str, Fraction], ...]:
    """From 0 to 3, by rule, family, thing or listed fault. Errors: ValueError."""
    return as_pairs(value, Fraction(0), Fraction(3))


def named_people(people: tuple[Person, ...] | None, hours: object) -> tuple[Person, ...]:
    """The people of the brief and everybody named in the hours; one person when nobody is named.

    Where every session names its people, a mere number of people adds nobody.
    """
    found = {person.name: person for person in people or ()}
    sessions = hours if isinstance(hours, list) else []
    named = [item["people"] for item in sessions if isinstance(item, dict) and isinstance(item.get("people"), dict)]
    if named and len(named) == len(sessions):
        found = {name: person for name, person in found.items() if not name.isdigit()}
    for people_of_session in named:
        for name in people_of_session:
            found.setdefault(str(name), Person(name=str(name)))
    return tuple(found.values()) or (Person(name="1"),)


def as_day(value: object) -> date:
    """A date, or text such as 2026-06-01 (JSON has no dates). Errors: ValueError."""
    try:
        day = value if isinstance(value, date) else date.fromisoformat(as_text(value))
    except ValueError:
        raise ValueError("a date such as 2026-06-06") from None
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise ValueError(f"{day.isoformat()} is not in the years {FIRST_YEAR} to {LAST_YEAR}")
    return day


def read_hours(value: object, people: tuple[Person, ...], load: Fraction, ordered: date | None) -> tuple[Hours, ...]:
    """Every session; minutes rounded down after `load`. Errors: ValueError."""
    if isinstance(value, str):
        value = [part for part in value.split(";" if ";" in value else ",") if part.strip()]
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        value = [value]
    if not isinstance(value, list):
        raise ValueError("")
    if len(value) > MOST_SESSIONS:
        raise ValueError(f"{MOST_SESSIONS} sessions at most, not {len(value):,}; {LATER}")
    items = [item if isinstance(item, dict) else {"hours": item} for item in value]
    parts = Gathered()
    dates = [parts.at(index, item, None, _date) for index, item in enumerate(items)]
    day_zero = min((day for day in (ordered, *dates) if day is not None), default=None)
    days = [(on - day_zero).days if on and day_zero else index for index, on in enumerate(dates)]
    read = _Sessions(tuple(person.name for person in people), load)
    for index, item in enumerate(items):
        parts.at(index, item, None, lambda item: read.session(item, None, 0))
    parts.end()
    found = [read.session(item, dates[index], days[index]) for index, item in enumerate(items)]
    for index, (earlier, later) in enumerate(pairwise(found), start=1):
        if (later.day, later.start_minute) < (earlier.day, earlier.start_minute):
            raise Inside(Part(str(later.on or value[index]), "sessions go forwards in time", (index,)))
    return tuple(found)


def _date(item: object) -> date | None:
    """The date of a session; None for an undated one."""
    typed = item.get("date") if isinstance(item, dict) else None
    return None if typed is None else at("date", typed, as_day)


@dataclass(frozen=True)
class _Sessions:
    """Reads sessions for these people."""

    people: tuple[str, ...]
    load: Fraction

    def session(self, item: object, on: date | None, day: int) -> Hours:
        """One session. Errors: ValueError."""
        if not isinstance(item, dict):
            raise ValueError("")
        parts = Gathered()
        parts.only(item, ("date", "start", "people", "quiet", "hours"))
        given = self._each(item, parts)
        usual = NINE if on else 0
        start = usual if item.get("start") is None else parts.at("start", item["start"], usual, as_clock)
        quiet = parts.at("quiet", item.get("quiet", False), False, as_yes)
        parts.end()
        return Hours(
            minutes=self._minutes(given, self.load),
            day=day,
            start_minute=start,
            length_minutes=max((math.ceil(hours * 60) for hours in given.values()), default=0),
            on=on,
            quiet=quiet,
            before_load=()
            if self.load == 1
            else tuple(math.floor(given.get(name, Fraction(0)) * 60) for name in self.people),
        )

    def _minutes(self, given: Mapping[str, Fraction], load: Fraction) -> tuple[int, ...]:
        """Whole minutes a person of so many hours, rounded down."""
        return tuple(math.floor(given.get(name, Fraction(0)) * 60 * load) for name in self.people)

    def _each(self, item: Mapping[str, object], parts: Gathered) -> dict[str, Fraction]:
        """Hours by person."""
        none: dict[str, Fraction] = {}
        if item.get("people") is not None:
            return parts.at("people", item["people"], none, as_hours_of)
        return dict.fromkeys(self.people, parts.at("hours", item.get("hours"), Fraction(0), as_hours))


def as_hours_of(value: object) -> dict[str, Fraction]:
    """Hours by person. Errors: ValueError."""
    if not isinstance(value, dict):
        raise ValueError("people such as {ann: 3, ben: 1.5}")
    return dict(each(value.items(), lambda name, hours: (str(name), as_hours(hours))))


def as_hours(value: object) -> Fraction:
    """Hours, exactly. Errors: ValueError."""
    try:
        hours = Fraction(read_number(value))
    except ValueError as advice:
        raise ValueError(str(advice) or "hours are a number such as 3.5") from None
    if hours < 0:
        raise ValueError("hours cannot be below 0")
    if hours * 60 > MOST_MINUTES:
        raise ValueError(f"{MOST_MINUTES // 60:,} hours at most")
    return hours


def as_clock(value: object) -> int:
    """Minutes since midnight of `09:00`. Errors: ValueError."""
    found = _CLOCK.fullmatch(as_text(value))
    if not found or int(found[1]) > 23 or int(found[2]) > 59:
        raise ValueError("a time in quotes such as '09:00'")
    return int(found[1]) * 60 + int(found[2])
