"""What a reader must know where money comes by date: what was left out because of it."""

from __future__ import annotations

from budgetfix.framing.purses import purses
from budgetfix.intake.job import Job

NO_HOURS = "There is no list of hours, so the days on which the money comes are not planned for: the whole sum counts."
ALL_THERE = "All the money is there from the start, so its days are no matter."
LEFT_OUT = (
    "Money by date: nothing is spent before it is there. The plans for other sums spend less of the same money; what "
    "more of it would buy, and how dear goods may get, is not worked out."
)


def money_notes(job: Job) -> list[str]:
    """One line where money comes by date."""
    if not job.brief.incomes:
        return []
    if not job.brief.hours:
        return [NO_HOURS]
    return [LEFT_OUT] if purses(job.brief) else [ALL_THERE]
