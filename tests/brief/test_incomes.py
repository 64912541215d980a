"""Money that comes on several days: sums, other sums, and what is left of it later on."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as some

from budgetfix.brief.incomes import Income, capped, has_come, left_after, running_minor, total_minor, with_held

JUNE, JULY, AUGUST = date(2026, 6, 1), date(2026, 7, 1), date(2026, 8, 1)
MONTHS = (Income(15000, JUNE), Income(15000, JULY), Income(15000, AUGUST))
SESSIONS = (Income(100, session=1), Income(200, session=3))


def test_sums() -> None:
    """Three times 150 is 450, and 150, 300, 450 as it comes."""
    assert total_minor(MONTHS) == 45000
    assert running_minor(MONTHS) == (15000, 30000, 45000)


@pytest.mark.parametrize(
    ("budget_minor", "amounts"),
    [
        (45000, (15000, 15000, 15000)),
        (20000, (15000, 5000)),
        (15000, (15000,)),
        (50000, (15000, 15000, 20000)),
        (0, ()),
    ],
)
def test_another_sum_in_all(budget_minor: int, amounts: tuple[int, ...]) -> None:
    """Less comes off the last days, more comes on the last one."""
    found = capped(MONTHS, budget_minor)
    assert tuple(one.amount_minor for one in found) == amounts
    assert [one.on for one in found] == [JUNE, JULY, AUGUST][: len(amounts)]


def test_what_has_come() -> None:
    """On its own day money is there; a date tells nothing of sessions."""
    assert has_come(MONTHS[1], JULY)
    assert not has_come(MONTHS[1], JULY - timedelta(days=1))
    assert has_come(SESSIONS[1], 3)
    assert not has_come(SESSIONS[1], 2)
    assert not has_come(SESSIONS[0], AUGUST)
    assert not has_come(MONTHS[0], 7)


@pytest.mark.parametrize(
    ("day", "spent", "left"),
    [
        (date(2026, 7, 10), 12000, ((18000, date(2026, 7, 10)), (15000, AUGUST))),
        (JUNE, 0, ((15000, JUNE), (15000, JULY), (15000, AUGUST))),
        (date(2026, 6, 7), 15000, ((15000, JULY), (15000, AUGUST))),
        (date(2026, 6, 7), 17000, ((13000, JULY), (15000, AUGUST))),
        (date(2026, 6, 7), 31000, ((14000, AUGUST),)),
        (date(2026, 6, 7), 60000, ()),
        (date(2026, 5, 1), 0, ((15000, JUNE), (15000, JULY), (15000, AUGUST))),
        (date(2027, 1, 1), -500, ((45500, date(2027, 1, 1)),)),
    ],
)
def test_left_on_a_day(day: date, spent: int, left: tuple[tuple[int, date], ...]) -> None:
    """What has come is one income of that day, less what was spent; what was spent above it comes off the next."""
    assert left_after(MONTHS, day, spent) == tuple(Income(amount, on) for amount, on in left)


def test_left_in_a_session() -> None:
    """Without dates the sessions count."""
    assert left_after(SESSIONS, 2, 40) == (Income(60, session=2), Income(200, session=3))
    assert left_after(SESSIONS, 3, 40) == (Income(260, session=3),)


@given(some.lists(some.integers(1, 900), max_size=6), some.integers(0, 6), some.integers(0, 3000))
def test_nothing_gets_lost(amounts: list[int], months: int, spent: int) -> None:
    """What is left is what comes less what was spent, never below nothing, on rising days, none of them gone by."""
    incomes = tuple(Income(amount, JUNE + timedelta(days=31 * place)) for place, amount in enumerate(amounts))
    day = JUNE + timedelta(days=31 * months)
    found = left_after(incomes, day, spent)
    assert total_minor(found) == max(0, sum(amounts) - spent)
    days = [one.on for one in found if one.on is not None]
    assert days == sorted(set(days))
    assert all(on >= day for on in days)
    assert all(one.amount_minor > 0 for one in found)


def test_each_income_says_what_is_held_back_of_all_by_then() -> None:
    """20.00 are left of June's 50.00, of which 5.00 were held back; with July's it is 10.00; before June nothing."""
    june, july = date(2026, 6, 1), date(2026, 7, 1)
    whole = (Income(5000, june), Income(5000, july))
    left = (Income(100, date(2026, 5, 31)), Income(2000, date(2026, 6, 8)), Income(5000, july))
    assert [one.held_minor for one in with_held(left, whole, (500, 1000))] == [0, 500, 1000]
    assert [one.held_minor for one in with_held((Income(9, session=2),), (Income(9, session=1),), (3,))] == [3]
