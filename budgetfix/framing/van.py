"""What the van means for the choice: nothing from stock before it is there, and what it may carry."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction
from math import lcm

from budgetfix.brief.models import Brief, Hours
from budgetfix.brief.van import Slot
from budgetfix.catalog.models import Catalog
from budgetfix.optimize.problem import Load, Option
from budgetfix.remedies.candidate import Candidate


def from_stock(candidate: Candidate, catalog: Catalog) -> bool:
    """True where it uses a piece from stock."""
    stock = {one.product for one in catalog.products if one.stock is not None}
    return any(product in stock for product, units in candidate.uses if units > 0)


def after_the_van(candidate: Candidate, catalog: Catalog, brief: Brief) -> int:
    """The first session (from 0) in which its goods are there: for pieces from stock, after the window out."""
    if brief.vans is None or brief.vans.out is None or brief.hours is None or not from_stock(candidate, catalog):
        return 0
    slot = brief.vans.out
    there = (slot.on, slot.end_minute)
    starts = [(_day(hours, brief), hours.start_minute) for hours in brief.hours]
    return next((place for place, start in enumerate(starts) if start >= there), len(starts))


def loading(id: str, brief: Brief) -> tuple[int, int | None]:
    """(first, last) session, from 0, for the remedy that loads and unloads: within the window out."""
    slot = None if brief.vans is None else brief.vans.out
    if slot is None or slot.task != id or brief.hours is None:
        return 0, None
    inside = [place for place, hours in enumerate(brief.hours) if _within(hours, brief, slot)]
    return (inside[0], inside[-1]) if inside else (len(brief.hours), None)


def _within(hours: Hours, brief: Brief, slot: Slot) -> bool:
    end = hours.start_minute + hours.length_minutes
    return _day(hours, brief) == slot.on and slot.start_minute <= hours.start_minute and end <= slot.end_minute


def _day(hours: Hours, brief: Brief) -> date:
    return hours.on or (brief.ordered or date.min) + timedelta(days=hours.day)


def photographed_by(brief: Brief, session: int, later_minutes: int = 0) -> bool:
    """True where the photographs' hour lies no later than so many minutes after the end of a session (from 0)."""
    if brief.photographs is None or brief.hours is None:
        return False
    hours = brief.hours[session]
    days = (brief.photographs.on - _day(hours, brief)).days
    return days * 1440 + brief.photographs.minute <= hours.start_minute + hours.length_minutes + later_minutes


def loads(catalog: Catalog, brief: Brief, used: Mapping[str, int]) -> tuple[Load, ...]:
    """What the van may carry on each way; weights scaled so that all are whole. `used`: products in the problem."""
    heavy = weights(catalog)
    slots = [(name, slot.load_kg) for name, slot in (brief.vans.slots if brief.vans is not None else ())]
    limits = [(name, most) for name, most in slots if most is not None]
    by = lcm(*(one.denominator for one in heavy.values()), *(most.denominator for _, most in limits))
    scaled = tuple((id, int(each * by)) for id, each in sorted(heavy.items()) if id in used)
    return tuple(Load(name, int(most * by), scaled) for name, most in limits)


def weights(catalog: Catalog) -> dict[str, Fraction]:
    """Kilograms of a pack of each piece from stock, as far as known."""
    known = [one for one in catalog.products if one.stock is not None and one.weight_kg is not None]
    return {one.product: one.weight_kg for one in known if one.weight_kg is not None}


def within_windows(option: Option, brief: Brief) -> Option:
    """The option, kept to the van's window where it is the loading."""
    first, last = loading(option.id, brief)
    if (first, last) == (0, None):
        return option
    return replace(option, first_session=max(option.first_session, first), last_session=last)
