"""A plan with money by date, checked by days: what is spent too early, or begun too early, fails the run."""

from __future__ import annotations

import time
from dataclasses import replace
from datetime import date

import pytest

from budgetfix.brief.incomes import Income
from budgetfix.brief.models import Brief, Errand, Hours
from budgetfix.framing.frame import frame
from budgetfix.framing.options import ERRAND
from budgetfix.optimize import solve
from budgetfix.optimize.problem import Answer, Plan
from budgetfix.outcome.by_date import broken_dates, dated_bill, dated_lines, money_days
from budgetfix.outcome.check import ClaimFails, checked
from budgetfix.outcome.make import money
from budgetfix.remedies.fit import candidates
from tests.framing.small_jobs import listed_ground

JUNE, JULY = date(2026, 6, 1), date(2026, 7, 1)
HOURS = tuple(
    Hours(minutes=(120,), day=(on - JUNE).days, length_minutes=120, on=on)
    for on in (date(2026, 6, 6), date(2026, 7, 4))
)
BASE = listed_ground(
    Brief(
        budget_minor=7000,
        incomes=(Income(3000, JUNE), Income(4000, JULY)),
        hours=HOURS,
        ordered=JUNE,
        errands=(Errand(errand="mill", name="To the mill", shops=("mill",), minutes=15),),
    )
)
FRAMED = frame(BASE, candidates(None, BASE.catalog, BASE.brief, ()), ())


def answered() -> Plan:
    """The best plan of the small job with 30.00 in June and 40.00 in July."""
    answer = solve(FRAMED.problem, seconds=30, clock=time.monotonic)
    assert isinstance(answer, Answer)
    return answer.plan


PLAN = answered()
CHOSEN = tuple(FRAMED.candidates[id] for id in PLAN.chosen if not id.startswith(ERRAND))


def test_the_small_job_by_hand() -> None:
    """Paint takes 27.00 with its delivery in June; the shelf's 20.00 and its saw's 15.00 wait for July."""
    assert PLAN.buys == (("paint", 0), ("shelf", 1))
    lines = dated_bill(BASE, PLAN, CHOSEN)
    assert [(line.phase, line.kind, line.line_minor) for line in lines] == [
        (0, "product", 2200),
        (0, "delivery", 500),
        (1, "tool", 1500),
        (1, "remedy", 2000),
    ]
    days = [
        (one.on, one.comes_minor, one.there_minor, one.spent_minor, one.left_minor) for one in money_days(BASE, lines)
    ]
    assert days == [(JUNE, 3000, 3000, 2700, 300), (JULY, 4000, 7000, 6200, 800)]
    named = dated_lines(BASE, PLAN, CHOSEN, lines, money(BASE, lines, CHOSEN))
    assert [(line.buy_on, line.tasks) for line in named] == [
        (JUNE, ("paint",)), (JUNE, ()), (JULY, ("shelf",)), (JULY, ("shelf",)),
    ]  # fmt: skip
    assert broken_dates(BASE, FRAMED, PLAN, lines) == []


@pytest.mark.parametrize(
    ("buys", "words"),
    [
        ((("paint", 0), ("shelf", 0)), "6200 is spent by 2026-06-01, 3000 has come"),
        ((("paint", 1), ("shelf", 1)), "paint begins before its goods can be there; paint begins before errand:mill@2"),
    ],
)
def test_too_early_fails_the_run(buys: tuple[tuple[str, int], ...], words: str) -> None:
    """The shelf is paid before July; the paint is used before it is paid, and before July's round."""
    lie = replace(PLAN, buys=buys)
    assert "; ".join(broken_dates(BASE, FRAMED, lie, dated_bill(BASE, lie, CHOSEN))) == words
    with pytest.raises(ClaimFails, match=r"begins before|is spent by"):
        checked(BASE, FRAMED, lie)
