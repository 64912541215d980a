"""The van's slots and the photographs' hour in a brief, and the sessions that they cut."""

from __future__ import annotations

import math
from datetime import date, timedelta
from fractions import Fraction

from budgetfix.base.money import read_money, read_number
from budgetfix.brief.models import FixedCost, Hours
from budgetfix.brief.stay import Stay
from budgetfix.brief.van import VAN_COSTS, Photographs, Slot, Vans
from budgetfix.intake.brief_hours import as_clock, as_day
from budgetfix.intake.inside import Gathered, Inside, Part
from budgetfix.intake.reader import as_text

WANTED_VANS = (
    "slots such as {out: {date: 2026-06-04, from: '09:00', to: '11:00', load_kg: 400, cost: 180.00}, "
    "back: {date: 2026-07-04, from: '09:00', to: '11:00', cost: 180.00}}"
)
WANTED_PHOTOGRAPHS = "an hour such as {date: 2026-06-05, at: '10:00'}"
VAN_LINES = {"out": (VAN_COSTS["out"], "Van to your home"), "back": (VAN_COSTS["back"], "Van to fetch everything")}
"""Each slot's line, by its own name and as a client reads it."""


def read_vans(value: object, currency: str) -> Vans:
    """Either slot, or both. Errors: ValueError."""
    if not isinstance(value, dict) or not value:
        raise ValueError("")
    parts = Gathered()
    parts.only(value, ("out", "back"))
    none: Slot | None = None
    there = [key for key in ("out", "back") if key in value]
    slots = {key: parts.at(key, value[key], none, lambda slot: _slot(slot, currency)) for key in there}
    parts.end()
    found = Vans(**slots)
    if found.out is not None and found.back is not None and found.back.on < found.out.on:
        raise Inside(Part(value["back"]["date"], "no earlier than the slot out", ("back", "date")))
    return found


def _slot(value: object, currency: str) -> Slot:
    if not isinstance(value, dict):
        raise ValueError("")
    parts = Gathered()
    parts.only(value, ("date", "from", "to", "load_kg", "cost", "task", "van"))
    start, end = (parts.at(key, value.get(key), 0, as_clock) for key in ("from", "to"))
    day = parts.at("date", value.get("date"), date.min, as_day)
    load = parts.at("load_kg", value["load_kg"], Fraction(0), _kilograms) if "load_kg" in value else None
    cost = parts.at("cost", value.get("cost", 0), 0, lambda cost: read_money(cost, currency))
    task = parts.at("task", value["task"], "", as_text) if "task" in value else None
    van = parts.at("van", value["van"], "", as_text) if "van" in value else ""
    parts.end()
    if end <= start:
        raise Inside(Part(value["to"], "later than `from`", ("to",)))
    return Slot(on=day, start_minute=start, end_minute=end, load_kg=load, cost_minor=cost, task=task, van=van)


def _kilograms(value: object) -> Fraction:
    try:
        load = Fraction(read_number(value))
    except ValueError as advice:
        raise ValueError(str(advice) or "kilograms are a number such as 400") from None
    if load < 0:
        raise ValueError("kilograms cannot be below 0")
    return load


def read_photographs(value: object) -> Photographs:
    """Errors: ValueError."""
    if not isinstance(value, dict):
        raise ValueError("")
    parts = Gathered()
    parts.only(value, ("date", "at"))
    day, minute = parts.at("date", value.get("date"), date.min, as_day), parts.at("at", value.get("at"), 0, as_clock)
    parts.end()
    return Photographs(on=day, minute=minute)


def van_costs(vans: Vans | None) -> tuple[FixedCost, ...]:
    """The price of each slot, as money that is spent whatever is chosen."""
    slots = () if vans is None else vans.slots
    paid = ((*VAN_LINES[slot], one.cost_minor) for slot, one in slots if one.cost_minor)
    return tuple(FixedCost(name=name, cost_minor=cost, client=client) for name, client, cost in paid)


def stay_of(vans: Vans | None) -> Stay | None:
    """From the slot out to the slot back, where the brief names no days of its own."""
    if vans is None or vans.out is None or vans.back is None or vans.back.on <= vans.out.on:
        return None
    return Stay(first=vans.out.on, until=vans.back.on)


def cut_sessions(
    hours: tuple[Hours, ...] | None, vans: Vans | None, photographs: Photographs | None, load: Fraction, ordered: date
) -> tuple[Hours, ...] | None:
    """Sessions cut short at the photographs, and split where the van's window out ends within them.

    Where the slot names who loads (`task`), they are split where it begins as well: loading stands in the window.
    Each person's minutes are shared out by the clock: whoever is there from the start works in the first part first.
    """
    if hours is None:
        return None
    found = [_until(one, photographs, load, ordered) for one in hours]
    if vans is None or vans.out is None:
        return tuple(found)
    return tuple(part for one in found for part in _split(one, vans.out, load, ordered))


def day_of(hours: Hours, ordered: date) -> date:
    """The date of a session; undated ones follow the day of the order."""
    return hours.on or ordered + timedelta(days=hours.day)


def _until(hours: Hours, photographs: Photographs | None, load: Fraction, ordered: date) -> Hours:
    if photographs is None:
        return hours
    days = (photographs.on - day_of(hours, ordered)).days
    left = max(0, days * 1440 + photographs.minute - hours.start_minute)
    if left >= hours.length_minutes:
        return hours
    minutes = tuple(min(there, math.floor(left * load)) for there in hours.minutes)
    typed = tuple(min(there, left) for there in hours.before_load)
    return Hours(**{**dict(hours), "minutes": minutes, "before_load": typed, "length_minutes": left})


def _split(hours: Hours, slot: Slot, load: Fraction, ordered: date) -> tuple[Hours, ...]:
    """The parts of a session: cut at the window's end, and at its start where somebody loads within it."""
    if day_of(hours, ordered) != slot.on:
        return (hours,)
    parts = [hours]
    for minute in (slot.end_minute,) if slot.task is None else (slot.start_minute, slot.end_minute):
        parts[-1:] = _cut(parts[-1], minute, load)
    return tuple(parts)


def _cut(hours: Hours, minute: int, load: Fraction) -> tuple[Hours, ...]:
    first = minute - hours.start_minute
    if not 0 < first < hours.length_minutes:
        return (hours,)
    before = tuple(min(there, math.floor(first * load)) for there in hours.minutes)
    after = tuple(there - part for there, part in zip(hours.minutes, before, strict=True))
    typed = tuple(min(there, first) for there in hours.before_load)
    later = tuple(there - part for there, part in zip(hours.before_load, typed, strict=True))
    rest = {"minutes": after, "start_minute": minute, "length_minutes": hours.length_minutes - first, "continues": True}
    return (
        Hours(**{**dict(hours), "minutes": before, "length_minutes": first, "before_load": typed}),
        Hours(**{**dict(hours), **rest, "before_load": later}),
    )


def last_part(hours: tuple[Hours, ...], number: int) -> int:
    """The number, from 1, of the last part of the session that the brief lists as `number`."""
    whole, found = 0, 0
    for place, one in enumerate(hours, start=1):
        whole += 0 if one.continues else 1
        found = place if whole <= number else found
    return found + max(0, number - whole)


def first_part(hours: tuple[Hours, ...], number: int) -> int:
    """The number, from 1, of the first part of the session that the brief lists as `number`."""
    firsts = [place for place, one in enumerate(hours, start=1) if not one.continues]
    return firsts[number - 1] if number <= len(firsts) else len(hours) + number - len(firsts)
