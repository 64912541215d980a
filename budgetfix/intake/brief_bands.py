"""Bands that the brief changes, priorities, and other wishes with an inside."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from datetime import date
from fractions import Fraction

from budgetfix.base.limits import MOST_ERRANDS, MOST_MINUTES
from budgetfix.base.money import read_money, read_number
from budgetfix.base.numbers import half_up
from budgetfix.base.tape import read_length
from budgetfix.brief.models import BandChange, Errand, FixedCost
from budgetfix.intake.brief_hours import as_day
from budgetfix.intake.catalog_steps import as_three
from budgetfix.intake.inside import Gathered, Inside, Part, each
from budgetfix.intake.raw_rows import close_to
from budgetfix.intake.reader import as_hands, as_names, as_text, as_whole
from budgetfix.intake.yaml_lines import Key

Ends = tuple[float | None, float | None]
NO_ENDS: Ends = (None, None)

WANTED_BANDS = "bands such as {rod-too-narrow: {sound: [200, null], glaring: 0}, screen-glare: off}"
WANTED_ERRANDS = "errands such as [{errand: shops, name: One round of shops, shops: [diy], hours: 2}]"
WANTED_FIXED = "costs such as [{name: Van, cost: 180.00}, {name: Take back, people: 2, minutes: 120}]"


def read_bands(value: object, units: Mapping[str, str], unit: str) -> tuple[BandChange, ...]:
    """`units`: the unit of each rule by slug. Lengths are in the survey's `unit`. Errors: ValueError."""
    if not isinstance(value, dict):
        raise ValueError("")

    def how(key: Key, change: object) -> BandChange:
        rule = str(key)
        if rule not in units:
            near = close_to(rule, list(units))
            raise Inside(Part(rule, f"no rule is called that; {near}".removesuffix("; ")))
        return _band(rule, change, _lengths(unit) if units[rule] == "mm" else _figures)

    return tuple(sorted(each(value.items(), how), key=lambda change: change.rule))


def _lengths(unit: str) -> Callable[[object], float]:
    return lambda value: read_length(value, unit, negative=True)


def _figures(value: object) -> float:
    return float(read_number(value))


def _band(rule: str, change: object, figure: Callable[[object], float]) -> BandChange:
    if isinstance(change, bool) or str(change).lower() in ("on", "off"):
        return BandChange(rule=rule, switch=change is True or str(change).lower() == "on")
    if not isinstance(change, dict) or not change:
        raise ValueError("on, off, or {sound: [low, high], glaring: limit}")
    parts, none = Gathered(), NO_ENDS
    parts.only(change, ("sound", "glaring"))
    sound = parts.at("sound", change["sound"], none, lambda value: _ends(value, figure)) if "sound" in change else None
    glaring = (
        parts.at("glaring", change["glaring"], none, lambda value: _limit(value, sound, figure))
        if "glaring" in change
        else None
    )
    parts.end()
    return BandChange(rule=rule, sound=sound, glaring=glaring)


def _ends(value: object, figure: Callable[[object], float]) -> Ends:
    if not isinstance(value, list) or len(value) != 2:
        raise ValueError("two ends such as [200, null]")
    low, high = each(enumerate(value), lambda _, end: None if end is None else figure(end))
    if low is not None and high is not None and low > high:
        raise ValueError("the lower end stands first")
    return low, high


def _limit(value: object, sound: Ends | None, figure: Callable[[object], float]) -> Ends:
    """Two limits, or one that goes to each side where sound has an end."""
    if isinstance(value, list):
        low, high = _ends(value, figure)
    else:
        low = high = figure(value)
        if sound is not None:
            low, high = (None if sound[0] is None else low), (None if sound[1] is None else high)
    inside = [
        sound is not None and sound[0] is not None and low is not None and low > sound[0],
        sound is not None and sound[1] is not None and high is not None and high < sound[1],
    ]
    if any(inside):
        raise ValueError("glaring lies outside of sound")
    return low, high


def read_errands(value: object) -> tuple[Errand, ...]:
    """Errors: ValueError."""
    if not isinstance(value, list):
        raise ValueError("")
    if len(value) > MOST_ERRANDS:
        raise ValueError(f"{MOST_ERRANDS} errands at most, not {len(value):,}")
    found = tuple(each(enumerate(value), _errand))
    names = [errand.errand for errand in found]
    for index, name in enumerate(names):
        if name in names[:index]:
            raise Inside(Part(name, "each errand once", (index, "errand")))
    return found


def _errand(index: Key, item: object) -> Errand:
    if not isinstance(item, dict):
        raise ValueError("")
    parts = Gathered()
    parts.only(item, ("errand", "name", "shops", "hours", "minutes", "people"))
    own = f"errand-{int(index) + 1}"
    errand = parts.at("errand", item.get("errand") or own, own, as_text)
    timed = "minutes" if "minutes" in item else "hours"
    low, likely, high = parts.at(timed, item.get(timed, 0), (Fraction(0),) * 3, as_three)
    name = parts.at("name", item.get("name") or errand, errand, as_text)
    shops: tuple[str, ...] = parts.at("shops", item.get("shops") or [], (), as_names)
    people = parts.at("people", item.get("people", 1), 1, as_hands)
    parts.end()
    minutes = math.ceil((low + likely + high) / 3 * (1 if timed == "minutes" else 60))
    if minutes > MOST_MINUTES:
        raise ValueError(f"no errand takes more than {MOST_MINUTES:,} minutes")
    return Errand(errand=errand, name=name, shops=shops, minutes=minutes, people=people)


def read_fixed(value: object, currency: str, labour: int | None) -> tuple[FixedCost, ...]:
    """Money that is spent whatever is chosen; work is priced at the rate of `labour` an hour. Errors: ValueError."""
    if not isinstance(value, list):
        raise ValueError("")

    return tuple(each(enumerate(value), lambda _, item: _fixed(item, currency, labour)))


def _fixed(item: object, currency: str, labour: int | None) -> FixedCost:
    """A sum of money, or people and minutes at the rate of labour."""
    if not isinstance(item, dict):
        raise ValueError("")
    parts = Gathered()
    parts.only(item, ("name", "client", "cost", "people", "minutes"))
    name = parts.at("name", item.get("name") or "fixed cost", "", as_text)
    client = parts.at("client", item.get("client") or "", "", lambda typed: as_text(typed) if typed else "")
    if "minutes" not in item and "people" not in item:
        cost = parts.at("cost", item.get("cost"), 0, lambda typed: read_money(typed, currency))
        parts.end()
        return FixedCost(name=name, cost_minor=cost, client=client)
    if "cost" in item:
        parts.wrong.append(Part(item["cost"], "either a cost, or people and minutes", ("cost",)))
    people = parts.at("people", item.get("people", 1), 1, as_hands)
    minutes = parts.at("minutes", item.get("minutes"), 0, as_whole)
    parts.end()
    if labour is None:
        raise Inside(Part(minutes, "minutes are priced by `labour`, which the brief does not say", ("minutes",)))
    pay = half_up(Fraction(labour * people * minutes, 60))
    return FixedCost(name=name, cost_minor=pay, people=people, minutes=minutes, client=client)


def read_finish(value: object) -> int | date:
    """A date, or a session number, counted from 1. Errors: ValueError."""
    if isinstance(value, date) or "-" in str(value).strip()[1:]:
        return as_day(value)
    number = as_whole(value)
    if number < 1:
        raise ValueError("sessions count from 1")
    return number
