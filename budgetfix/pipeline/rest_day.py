"""The day as of which the rest of a job is planned, where none is named."""

from __future__ import annotations

from datetime import date

from budgetfix.brief.models import Brief
from budgetfix.outcome.so_far import SoFar


def standing_day(brief: Brief, so_far: SoFar, today: date) -> date:
    """Today. Where by today all sessions of a brief that fixes its own day are over, the day on which the job stands.

    That is the day of its last ticked session, else the day of its plan: a plan tried out long after its dates is
    planned on as it was left, not thrown away.
    """
    days = [one.on for one in brief.hours or ()]
    dated = [on for on in days if on is not None]
    fixed = brief.ordered is not None and brief.ordered < today
    if not fixed or not dated or len(dated) < len(days) or max(dated) >= today:
        return today
    ticked = [one.planned.on for one in so_far.done if one.planned.on is not None]
    made = so_far.remembered.ordered or brief.ordered
    return max((day for day in (made, *ticked) if day is not None), default=today)
