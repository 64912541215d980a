"""What a catalog says of its own stock and of hire: how many there are, where, how heavy, when, and for how long."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from budgetfix.base.limits import MOST_DAYS
from budgetfix.intake.brief_hours import as_day
from budgetfix.intake.reader import Record, as_whole, no_more

WANTED_DAY = "a date such as 2026-06-04"
WANTED_DAYS = "a number of days, 1 or more"


def stock_fields(record: Record) -> dict[str, Any]:
    """The fields of one product; what is not filled in is None."""
    first, until = (record.read(field, None, as_day, WANTED_DAY) for field in ("free_from", "free_until"))
    if first is not None and until is not None and until < first:
        record.problem("free_until", "a date no earlier than free_from")
    term, least = (record.read(field, None, _days, WANTED_DAYS) for field in ("term_days", "least_days"))
    if least is not None and term is None and record.sound:
        record.problem("least_days", "`term_days` beside it: the days that the price is for")
    return {
        "stock": record.whole("stock", 0) if record.has("stock") else None,
        "place": record.text("place"),
        "weight_kg": record.number("weight_kg", Fraction(0)) if record.has("weight_kg") else None,
        "free_from": first,
        "free_until": until,
        "term_days": term,
        "least_days": least,
    }


def _days(value: object) -> int:
    """Errors: ValueError."""
    days = int(no_more(as_whole(value), MOST_DAYS))
    if days < 1:
        raise ValueError("")
    return days
