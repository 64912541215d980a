"""The list of hours and the people of a brief."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from datetime import date
from fractions import Fraction

from budgetfix.base.money import read_number
from budgetfix.brief.models import Hours, Person
from budgetfix.intake.reader import as_names, as_text, as_whole, as_yes

WANTED_HOURS = "hours such as [4, 3], or [{date: 2026-06-06, start: '09:00', people: {ann: 3}}], or null"
WANTED_PEOPLE = "a number of people, or {ben: {not: [ladder]}}"
NINE = 9 * 60
DAY = 1440
_CLOCK = re.compile(r"(\d{1,2}):(\d{2})")


def read_people(value: object) -> tuple[Person, ...]:
    """`2`, or a mapping of names. Errors: ValueError."""
    if isinstance(value, dict):
        found = []
        for name, facts in value.items():
            facts = facts or {}
            if not isinstance(facts, dict) or set(facts) - {"not"}:
                raise ValueError(f"{name}: only `not` is known, such as {{not: [ladder]}}")
            found.append(Person(name=str(name), refuses=as_names(facts.get("not") or [])))
        if not found:
            raise ValueError("")
        return tuple(found)
    count = as_whole(value)
    if count < 1:
        raise ValueError("there must be somebody")
    return tuple(Person(name=str(number)) for number in range(1, count + 1))


def named_people(people: tuple[Person, ...] | None, hours: object) -> tuple[Person, ...]:
    """The people of the brief and everybody named in the hours; one person when nobody is named."""
    found = {person.name: person for person in people or ()}
    if isinstance(hours, list):
        for item in hours:
            if isinstance(item, dict) and isinstance(item.get("people"), dict):
                for name in item["people"]:
                    found.setdefault(str(name), Person(name=str(name)))
    return tuple(found.values()) or (Person(name="1"),)


def read_hours(
    value: object, people: tuple[Person, ...], load: Fraction, ordered: date | None
) -> tuple[Hours, ...]:
    """Every session; minutes rounded down after `load`. Errors: ValueError."""
    if isinstance(value, str):
        value = [part for part in re.split(r"[;,]", value) if part.strip()]
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        value = [value]
    if not isinstance(value, list):
        raise ValueError("")
    first = next((item["date"] for item in value if isinstance(item, dict) and isinstance(item.get("date"), date)), None)
    day_zero = min(ordered, first) if ordered and first else (ordered or first)
    found = [_session(index, item, people, load, day_zero) for index, item in enumerate(value)]
    for earlier, later in zip(found, found[1:], strict=False):
        if (later.day, later.start_minute) < (earlier.day, earlier.start_minute):
            raise ValueError("sessions go forwards in time")
    return tuple(found)


def _session(
    index: int, item: object, people: tuple[Person, ...], load: Fraction, day_zero: date | None
) -> Hours:
    if not isinstance(item, dict):
        item = {"people": {person.name: item for person in people}}
    unknown = set(item) - {"date", "start", "people", "quiet", "hours"}
    if unknown:
        raise ValueError(f"session {index + 1}: '{sorted(unknown)[0]}' is not known")
    given = _each(index, item, people)
    on = item.get("date")
    if on is not None and not isinstance(on, date):
        raise ValueError(f"session {index + 1}: a date such as 2026-06-06")
    minutes = tuple(math.floor(given.get(person.name, Fraction(0)) * 60 * load) for person in people)
    return Hours(
        minutes=minutes,
        day=(on - day_zero).days if on is not None and day_zero is not None else index,
        start_minute=_clock(item["start"], index) if item.get("start") is not None else (NINE if on else 0),
        length_minutes=max((math.ceil(hours * 60) for hours in given.values()), default=0),
        on=on,
        quiet=as_yes(item.get("quiet", False)),
    )


def _each(index: int, item: Mapping[str, object], people: tuple[Person, ...]) -> dict[str, Fraction]:
    given = item.get("people")
    if given is None:
        given = {person.name: item.get("hours") for person in people}
    if not isinstance(given, dict):
        raise ValueError(f"session {index + 1}: people such as {{ann: 3, ben: 1.5}}")
    found = {}
    for name, hours in given.items():
        try:
            found[str(name)] = Fraction(read_number(hours.strip() if isinstance(hours, str) else hours))
        except ValueError as advice:
            raise ValueError(f"session {index + 1}: {str(advice) or 'hours are a number such as 3.5'}") from None
        if found[str(name)] < 0:
            raise ValueError(f"session {index + 1}: hours cannot be below 0")
    return found


def _clock(value: object, index: int) -> int:
    found = _CLOCK.fullmatch(as_text(value))
    if not found or int(found[1]) > 23 or int(found[2]) > 59:
        raise ValueError(f"session {index + 1}: start is a time in quotes such as '09:00'")
    return int(found[1]) * 60 + int(found[2])
