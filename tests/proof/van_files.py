"""Stock, hire, van and photographs of a job as plain figures, read from its files: what a stranger would do."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from datetime import date
from fractions import Fraction
from itertools import pairwise
from typing import Any

F = Fraction
Raw = dict[str, Any]


@dataclass(frozen=True)
class Session:
    """A session: when, whose minutes after `load`, and whether it is quiet. `day` counts from the order.

    `part`: it goes on from the session before. `whole`: the minutes before `load`, and before the van.
    """

    start: int
    end: int
    minutes: dict[str, int]
    quiet: bool
    day: int
    part: bool = False
    whole: dict[str, int] = field(default_factory=dict)
    load: Fraction = Fraction(1)


@dataclass(frozen=True)
class Van:
    """The slot out in minutes from the day of the order, who loads, and the least that any slot may carry."""

    begin: int
    end: int
    task: str | None
    most_kg: F | None


def as_day(value: object) -> date:
    """A date, typed as one or as text."""
    return value if isinstance(value, date) else date.fromisoformat(str(value))


def clock(value: object) -> int:
    """Minutes of `09:00`."""
    hours, minutes = str(value).split(":")
    return int(hours) * 60 + int(minutes)


def stay_of(brief: Raw) -> tuple[date, date] | None:
    """The days of the stay: as typed, else from the slot out to the slot back."""
    typed, vans = brief.get("stay"), brief.get("vans") or {}
    if typed:
        return as_day(typed["from"]), as_day(typed["until"])
    if "out" in vans and "back" in vans and as_day(vans["back"]["date"]) > as_day(vans["out"]["date"]):
        return as_day(vans["out"]["date"]), as_day(vans["back"]["date"])
    return None


def for_the_stay(product: Raw, brief: Raw) -> Raw:
    """A product with its price for the stay, and with none of it where it is not free on all days."""
    stay = stay_of(brief)
    made = dict(product)
    if product.get("term_days"):
        days = 1 if stay is None else (stay[1] - stay[0]).days
        days = max(days, int(product.get("least_days") or 1))
        made["price"] = F(str(product["price"])) * math.ceil(F(days, int(product["term_days"])))
    if stay is not None:
        late = product.get("free_from") is not None and as_day(product["free_from"]) > stay[0]
        gone = product.get("free_until") is not None and as_day(product["free_until"]) < stay[1]
        made |= {"stock": 0} if late or gone else {}
    return made


def van_of(brief: Raw) -> Van | None:
    """The van, where it brings anything."""
    slots = brief.get("vans") or {}
    if "out" not in slots:
        return None
    out, loads = slots["out"], [F(str(slot["load_kg"])) for slot in slots.values() if "load_kg" in slot]
    day = (as_day(out["date"]) - as_day(brief["ordered"])).days * 1440
    return Van(day + clock(out["from"]), day + clock(out["to"]), out.get("task"), min(loads, default=None))


def van_costs(brief: Raw) -> dict[str, F]:
    """What the slots cost, by the name of the line."""
    names = {"out": "Van out", "back": "Van back"}
    slots = brief.get("vans") or {}
    return {names[key]: F(str(slots[key]["cost"])) for key in ("out", "back") if slots.get(key, {}).get("cost")}


def cut(sessions: tuple[Session, ...], brief: Raw, van: Van | None, load: F) -> tuple[Session, ...]:
    """Sessions ended by the photographs, then split where the van's window ends, and begins if somebody loads."""
    hour = brief.get("photographs")
    found = list(sessions)
    if hour:
        end = (as_day(hour["date"]) - as_day(brief["ordered"])).days * 1440 + clock(hour["at"])
        found = [_ended(one, end, load) for one in found]
    return tuple(part for one in found for part in _split(one, van, load))


def _ended(one: Session, end: int, load: F) -> Session:
    if one.end <= end:
        return one
    left = max(0, end - one.start)
    minutes = {name: min(there, math.floor(left * load)) for name, there in one.minutes.items()}
    return replace(one, end=one.start + left, minutes=minutes)


def _split(one: Session, van: Van | None, load: F) -> list[Session]:
    if van is None or van.end // 1440 != one.day:
        return [one]
    marks = [van.begin, van.end] if van.task else [van.end]
    edges = [one.start, *(mark for mark in marks if one.start < mark < one.end), one.end]
    left, parts = dict(one.minutes), []
    for begin, end in pairwise(edges):
        most = math.floor((end - begin) * load)
        here = left if end == one.end else {name: min(there, most) for name, there in left.items()}
        left = {name: left[name] - here[name] for name in left}
        parts.append(replace(one, start=begin, end=end, minutes=here, part=begin > one.start))
    return parts


def wholes(sessions: tuple[Session, ...]) -> list[int]:
    """For each session the number of the one that it is a part of."""
    found: list[int] = []
    for one in sessions:
        found.append(found[-1] if one.part else (found[-1] + 1 if found else 0))
    return found
