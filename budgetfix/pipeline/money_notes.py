"""What a reader must know where money comes by date: what was left out because of it."""

from __future__ import annotations

from budgetfix.base.money import write_money
from budgetfix.framing.purses import purses
from budgetfix.intake.job import Job

NO_HOURS = "There is no list of hours, so the days on which the money comes are not planned for: the whole sum counts."
ALL_THERE = "All the money is there from the start, so its days are no matter."
LEFT_OUT = (
    "Money by date: nothing is spent before it is there. The plans for other sums spend less of the same money; what "
    "more of it would buy, and how dear goods may get, is not worked out."
)

NO_USE = "it is of no use to this plan"


def money_notes(job: Job) -> list[str]:
    """What to know where money comes by date; a second line where some of it comes after the last session."""
    brief = job.brief
    if not brief.incomes:
        return []
    if not brief.hours:
        return [NO_HOURS]
    there = purses(brief)
    late = sum(one.comes_minor for one in there if one.first_session >= len(brief.hours))
    words = f"{write_money(late, brief.currency)} {brief.currency} of the money comes after the last session: {NO_USE}."
    return [LEFT_OUT if there else ALL_THERE, *([words] if late else [])]
