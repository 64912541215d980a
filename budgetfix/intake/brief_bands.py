"""Bands that the brief changes, priorities, and other wishes with an inside."""

from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction

from budgetfix.base.money import read_number
from budgetfix.base.tape import read_length
from budgetfix.brief.models import BandChange, Errand
from budgetfix.intake.raw_rows import close_to
from budgetfix.intake.reader import as_names, as_pairs, as_text, as_whole

WANTED_BANDS = "bands such as {rod-too-narrow: {sound: [200, null], glaring: 0}, screen-glare: off}"
WANTED_ERRANDS = "errands such as [{errand: shops, name: One round of shops, shops: [diy], hours: 2}]"


def read_bands(value: object, units: Mapping[str, str], unit: str) -> tuple[BandChange, ...]:
    """`units`: the unit of each rule by slug. Lengths are in the survey's `unit`. Errors: ValueError."""
    if not isinstance(value, dict):
        raise ValueError("")
    found = []
    for rule, change in value.items():
        if rule not in units:
            raise ValueError(f"'{rule}' is no rule. {close_to(str(rule), list(units))}".strip())
        found.append(_band(str(rule), change, units[rule] == "mm", unit))
    return tuple(sorted(found, key=lambda change: change.rule))


def _band(rule: str, change: object, lengths: bool, unit: str) -> BandChange:
    if isinstance(change, bool) or str(change) in ("on", "off"):
        return BandChange(rule=rule, switch=change is True or change == "on")
    if not isinstance(change, dict) or set(change) - {"sound", "glaring"} or not change:
        raise ValueError(f"{rule}: on, off, or {{sound: [low, high], glaring: limit}}")
    sound = _ends(rule, change["sound"], lengths, unit) if "sound" in change else None
    glaring = None
    if "glaring" in change:
        limit = change["glaring"]
        if isinstance(limit, list):
            glaring = _ends(rule, limit, lengths, unit)
        else:
            one = _figure(rule, limit, lengths, unit)
            low, high = sound or (None, None)
            glaring = (one if sound is None or low is not None else None, one if sound is None or high is not None else None)
    return BandChange(rule=rule, sound=sound, glaring=glaring)


def _ends(rule: str, value: object, lengths: bool, unit: str) -> tuple[float | None, float | None]:
    if not isinstance(value, list) or len(value) != 2:
        raise ValueError(f"{rule}: two ends such as [200, null]")
    low, high = (None if end is None else _figure(rule, end, lengths, unit) for end in value)
    if low is not None and high is not None and low > high:
        raise ValueError(f"{rule}: the lower end stands first")
    return low, high


def _figure(rule: str, value: object, lengths: bool, unit: str) -> float:
    try:
        return read_length(value, unit, negative=True) if lengths else float(read_number(value))
    except ValueError:
        raise ValueError(f"{rule}: '{value}' is no {'length' if lengths else 'number'}") from None


def read_priorities(value: object) -> tuple[tuple[str, Fraction], ...]:
    """From 0 to 3, by rule, family, thing or listed fault. Errors: ValueError."""
    found = as_pairs(value)
    for name, priority in found:
        if not 0 <= priority <= 3:
            raise ValueError(f"{name}: from 0 to 3")
    return found


def read_errands(value: object) -> tuple[Errand, ...]:
    """Errors: ValueError."""
    if not isinstance(value, list):
        raise ValueError("")
    found = []
    for number, item in enumerate(value, start=1):
        if not isinstance(item, dict) or set(item) - {"errand", "name", "shops", "hours", "minutes", "people"}:
            raise ValueError(f"errand {number}: errand, name, shops, hours, people")
        name = as_text(item.get("errand") or f"errand-{number}")
        hours = item.get("hours", 0)
        minutes = as_whole(item["minutes"]) if "minutes" in item else math.ceil(Fraction(read_number(hours)) * 60)
        shops = as_names(item.get("shops") or [])
        people = as_whole(item.get("people", 1))
        words = as_text(item.get("name") or name)
        found.append(Errand(errand=name, name=words, shops=shops, minutes=minutes, people=people))
    return tuple(found)


def read_finish(value: object) -> int:
    """A session number, counted from 1 (dates are turned into one by the caller). Errors: ValueError."""
    number = as_whole(value)
    if number < 1:
        raise ValueError("sessions count from 1")
    return number
