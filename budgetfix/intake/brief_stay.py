"""The days in a brief on which pieces from stock stand in the house."""

from __future__ import annotations

from budgetfix.brief.stay import Stay
from budgetfix.intake.brief_hours import as_day
from budgetfix.intake.inside import Inside, Part, at, only

WANTED_STAY = "days such as {from: 2026-06-04, until: 2026-07-04}"


def read_stay(value: object) -> Stay:
    """Both days, the second one later. Errors: ValueError."""
    if not isinstance(value, dict):
        raise ValueError("")
    only(value, ("from", "until", "turnaround"))
    first, until = (at(key, value.get(key), as_day) for key in ("from", "until"))
    if until <= first:
        raise Inside(Part(value["until"], "later than `from`", ("until",)))
    turnaround = at("turnaround", value["turnaround"], _days) if "turnaround" in value else 0
    return Stay(first=first, until=until, turnaround_days=turnaround)


def _days(value: object) -> int:
    """A whole number of days. Errors: ValueError."""
    if isinstance(value, bool) or not isinstance(value, int) or value < 0:
        raise ValueError("whole days such as 1")
    return value
