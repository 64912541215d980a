"""The days in a brief on which pieces from stock stand in the house."""

from __future__ import annotations

from datetime import date

from budgetfix.brief.stay import Stay
from budgetfix.intake.brief_hours import as_day
from budgetfix.intake.inside import Gathered, Inside, Part

WANTED_STAY = "days such as {from: 2026-06-04, until: 2026-07-04}"


def read_stay(value: object) -> Stay:
    """Both days, the second one later. Errors: ValueError."""
    if not isinstance(value, dict):
        raise ValueError("")
    parts = Gathered()
    parts.only(value, ("from", "until", "turnaround"))
    first, until = (parts.at(key, value.get(key), date.min, as_day) for key in ("from", "until"))
    turnaround = parts.at("turnaround", value["turnaround"], 0, _days) if "turnaround" in value else 0
    parts.end()
    if until <= first:
        raise Inside(Part(value["until"], "later than `from`", ("until",)))
    return Stay(first=first, until=until, turnaround_days=turnaround)


def _days(value: object) -> int:
    """A whole number of days. Errors: ValueError."""
    if isinstance(value, bool) or not isinstance(value, int) or value < 0:
        raise ValueError("whole days such as 1")
    return value
