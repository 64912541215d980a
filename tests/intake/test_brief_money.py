"""Money that comes by date, as a brief says it: read, and every slip told with its line."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from budgetfix.brief.incomes import Income
from budgetfix.intake.brief_money import WANTED_INCOMES, read_incomes
from budgetfix.intake.brief_over import Over
from tests.intake.test_brief import read, sound

DATED = "hours: [{date: 2026-06-06, hours: 3}, {date: 2026-07-04, hours: 3}]\n"
WANTED = "wanted money such as [{date: 2026-06-01, amount: 150}], or {from: 2026-06-01, monthly: 150, months: 4}"


def test_a_list_of_days(tmp_path: Path) -> None:
    """Days with amounts; their sum is the budget."""
    text = DATED + "money: [{date: 2026-06-01, amount: 150}, {date: 2026-07-01, amount: 99.50}]\n"
    brief = sound(tmp_path, text)
    assert brief.incomes == (Income(15000, date(2026, 6, 1)), Income(9950, date(2026, 7, 1)))
    assert brief.budget_minor == 24950


def test_currencies_without_cents() -> None:
    """Whole yen; the first month's day again a month later, written as text as JSON has it."""
    found = read_incomes({"from": "2026-06-01", "monthly": 15000, "months": 2}, "JPY")
    assert found == (Income(15000, date(2026, 6, 1)), Income(15000, date(2026, 7, 1)))
    assert f"wanted {WANTED_INCOMES}" == WANTED


def test_so_much_a_month(tmp_path: Path) -> None:
    """The same day of each month, over the end of the year, and the last day of a month that has no 31st."""
    brief = sound(tmp_path, DATED + "money: {from: 2026-10-31, monthly: 150, months: 5}\n")
    days = [date(2026, 10, 31), date(2026, 11, 30), date(2026, 12, 31), date(2027, 1, 31), date(2027, 2, 28)]
    assert brief.incomes == tuple(Income(15000, day) for day in days)
    assert brief.budget_minor == 75000


def test_by_session_where_there_are_no_dates(tmp_path: Path) -> None:
    """Sessions by number."""
    brief = sound(tmp_path, "hours: [3, 3, 3]\nmoney: [{session: 1, amount: 80}, {session: 3, amount: 70}]\n")
    assert brief.incomes == (Income(8000, session=1), Income(7000, session=3))


def test_a_session_cut_by_the_van_counts_from_its_first_part(tmp_path: Path) -> None:
    """The van's window cuts the first session in two: the second one that the brief lists is the third part."""
    text = (
        "hours: [{date: 2026-06-04, start: '09:00', hours: 6}, {date: 2026-06-05, start: '09:00', hours: 2}]\n"
        "vans: {out: {date: 2026-06-04, from: '09:00', to: '11:00'}}\n"
        "money: [{session: 1, amount: 80}, {session: 2, amount: 70}]\n"
    )
    brief = sound(tmp_path, text)
    assert brief.incomes == (Income(8000, session=1), Income(7000, session=3))


def test_the_same_sum_twice_is_no_slip(tmp_path: Path) -> None:
    """A budget that is the sum of what comes may stand beside it."""
    assert sound(tmp_path, DATED + "budget: 150\nmoney: [{date: 2026-06-01, amount: 150}]\n").budget_minor == 15000


@pytest.mark.parametrize(("typed", "amounts"), [("200", (15000, 5000)), ("400", (15000, 25000)), ("150", (15000,))])
def test_another_budget_on_the_command_line(tmp_path: Path, typed: str, amounts: tuple[int, ...]) -> None:
    """`--budget` is the sum in all: less comes off the last days, more comes on the last one."""
    text = DATED + "money: [{date: 2026-06-01, amount: 150}, {date: 2026-07-01, amount: 150}]\n"
    brief, problems = read(tmp_path, text, over=Over(budget=typed))
    assert problems == []
    assert tuple(one.amount_minor for one in brief.incomes) == amounts
    assert brief.budget_minor == sum(amounts)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("money: 150", f"brief.yaml [line 1] found 150, {WANTED}"),
        ("money: []", f"brief.yaml [line 1] found a list, {WANTED}"),
        (
            "money: [150]",
            f"brief.yaml [line 1] found 150, {WANTED}; an income such as {{date: 2026-06-01, amount: 150}}",
        ),
        ("money: [{amount: 150}]", f"brief.yaml [line 1] found a block of keys, {WANTED}; either a date or a session"),
        ("money: [{date: 2026-06-01}]", f"brief.yaml [line 1] found nothing, {WANTED}; an amount such as 150"),
        (
            "money:\n- {date: 2026-06-01, amount: 0}",
            f"brief.yaml [line 2] found 0, {WANTED}; an amount above 0",
        ),
        (
            "money:\n- {date: 2026-06-01, amount: -5}",
            f"brief.yaml [line 2] found -5, {WANTED}; money cannot be below 0",
        ),
        (
            "money:\n- {date: 2026-06-01, amount: 1.234}",
            f"brief.yaml [line 2] found 1.234, {WANTED}; USD has 2 digits after the point",
        ),
        (
            "money:\n- {date: June, amount: 150}",
            f"brief.yaml [line 2] found 'June', {WANTED}; a date such as 2026-06-06",
        ),
        (
            "money:\n- {date: 2026-06-01, amount: 150}\n- {date: 2026-06-01, amount: 150}",
            f"brief.yaml [line 3] found '2026-06-01', {WANTED}; each income later than the one before it",
        ),
        (
            "hours: [{date: 2026-06-01, hours: 3}]\nmoney:\n- {date: 2026-06-01, amount: 9}\n- {session: 1, amount: 9}",
            f"brief.yaml [line 4] found 'session 1', {WANTED}; dates for all of them, or sessions for all of them",
        ),
        (
            "hours: [3, 3]\nmoney:\n- {session: 1, amount: 150}\n- {session: 3, amount: 150}",
            f"brief.yaml [line 4] found 'session 3', {WANTED}; there are 2 sessions",
        ),
        (
            "hours: [3]\nmoney:\n- {session: 0, amount: 150}",
            f"brief.yaml [line 3] found 0, {WANTED}; sessions count from 1",
        ),
        (
            "hours: [3]\nmoney:\n- {session: x, amount: 150}",
            f"brief.yaml [line 3] found 'x', {WANTED}; a whole number",
        ),
        (
            "hours: [3]\nmoney:\n- {session: 2, amount: 150}",
            f"brief.yaml [line 3] found 'session 2', {WANTED}; there is 1 session",
        ),
        (
            "money:\n- {session: 1, amount: 150}",
            f"brief.yaml [line 2] found 'session 1', {WANTED}; there is no list of hours",
        ),
        (
            "hours: [3, 3]\nmoney:\n- {date: 2026-06-01, amount: 150}",
            f"brief.yaml [line 3] found '2026-06-01', {WANTED}; "
            "a session, such as {session: 2, amount: 150}: the hours have no dates",
        ),
        (
            "hours: [3, 3]\nmoney:\n  from: 2026-06-01\n  monthly: 150\n  months: 2",
            f"brief.yaml [line 3] found '2026-06-01', {WANTED}; "
            "a session, such as {session: 2, amount: 150}: the hours have no dates",
        ),
        (
            "money: {from: 2026-06-01, monthly: 150}",
            f"brief.yaml [line 1] found a block of keys, {WANTED}; months as well",
        ),
        (
            "money:\n  from: 2026-06-01\n  monthly: 150\n  months: 0",
            f"brief.yaml [line 4] found 0, {WANTED}; from 1 to 120 months",
        ),
        (
            "money:\n  from: 2026-06-01\n  monthly: 150\n  months: 2\n  mont: 3",
            f"brief.yaml [line 5] found 'mont', {WANTED}; did you mean months?",
        ),
        (
            "budget: 100\nmoney:\n- {date: 2026-06-01, amount: 150}",
            "brief.yaml [line 1] found 100, wanted the sum of `money`; leave `budget` out: it is the sum of what comes",
        ),
    ],
)
def test_slips(tmp_path: Path, text: str, said: str) -> None:
    """Each slip is told word for word, at its line."""
    assert read(tmp_path, text + "\n")[1] == [said]


def test_hours_that_cannot_be_read_are_told_once(tmp_path: Path) -> None:
    """A slip in the hours says nothing of the money."""
    problems = read(tmp_path, "hours: x\nmoney: [{session: 4, amount: 150}]\n")[1]
    assert len(problems) == 1
    assert "hours" in problems[0]
