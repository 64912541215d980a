"""Money that comes by date, as a brief names it: a list of days and amounts, or so much a month."""

from __future__ import annotations

from calendar import monthrange
from collections.abc import Callable, Mapping
from datetime import date
from itertools import pairwise

from budgetfix.base.money import read_money
from budgetfix.brief.incomes import Income, capped, total_minor
from budgetfix.brief.models import Hours
from budgetfix.intake.brief_hours import as_day
from budgetfix.intake.brief_van import first_part
from budgetfix.intake.inside import Gathered, Inside, Part, each, only
from budgetfix.intake.reader import Record, as_whole

WANTED_INCOMES = "money such as [{date: 2026-06-01, amount: 150}], or {from: 2026-06-01, monthly: 150, months: 4}"
MONTHLY = ("from", "monthly", "months")
MOST_MONTHS = 120
OPTION = "--budget"


def read_incomes(value: object, currency: str) -> tuple[Income, ...]:
    """Incomes, each later than the one before it. Errors: ValueError."""
    if isinstance(value, dict):
        return _monthly(value, currency)
    if not isinstance(value, list) or not value:
        raise ValueError("")
    if len(value) > MOST_MONTHS:
        raise ValueError(f"{MOST_MONTHS} incomes at most")
    found = tuple(each(enumerate(value), lambda _, item: _income(item, currency)))
    for index, (earlier, later) in enumerate(pairwise(found), start=1):
        if (earlier.on is None) != (later.on is None):
            raise Inside(Part(_when(later), "dates for all of them, or sessions for all of them", (index,)))
        if _order(later) <= _order(earlier):
            raise Inside(Part(_when(later), "each income later than the one before it", (index,)))
    return found


def _when(one: Income) -> str:
    return str(one.on if one.on is not None else f"session {one.session}")


def _order(one: Income) -> tuple[date, int]:
    return one.on or date.min, one.session or 0


def _income(item: object, currency: str) -> Income:
    if not isinstance(item, dict):
        raise ValueError("an income such as {date: 2026-06-01, amount: 150}")
    parts = Gathered()
    parts.only(item, ("date", "session", "amount"))
    amount = parts.at("amount", item.get("amount"), 0, lambda value: _amount(value, currency))
    day = parts.at("date", item["date"], date.min, as_day) if "date" in item else None
    session = parts.at("session", item["session"], 1, _from_one) if "session" in item else None
    parts.end()
    if (day is None) == (session is None):
        raise ValueError("either a date or a session")
    return Income(amount, day, session)


def _amount(value: object, currency: str) -> int:
    try:
        amount = read_money(value, currency)
    except ValueError as advice:
        raise ValueError(str(advice) or "an amount such as 150") from None
    if amount == 0:
        raise ValueError("an amount above 0")
    return amount


def _from_one(value: object) -> int:
    number = _whole(value)
    if number < 1:
        raise ValueError("sessions count from 1")
    return number


def _whole(value: object) -> int:
    try:
        return as_whole(value)
    except ValueError:
        raise ValueError("a whole number") from None


def _monthly(given: Mapping[str, object], currency: str) -> tuple[Income, ...]:
    """The same day of each month, or its last one where a month is shorter."""
    only(given, MONTHLY)
    lacking = [name for name in MONTHLY if given.get(name) is None]
    if lacking:
        raise ValueError(f"{', '.join(lacking)} as well")
    parts = Gathered()
    first = parts.at("from", given["from"], date.min, as_day)
    amount = parts.at("monthly", given["monthly"], 0, lambda value: _amount(value, currency))
    months = parts.at("months", given["months"], 0, _months)
    parts.end()
    return tuple(Income(amount, _month_later(first, count)) for count in range(months))


def _months(value: object) -> int:
    number = _whole(value)
    if not 1 <= number <= MOST_MONTHS:
        raise ValueError(f"from 1 to {MOST_MONTHS} months")
    return number


def _month_later(first: date, count: int) -> date:
    years, month = divmod(first.month - 1 + count, 12)
    year, month = first.year + years, month + 1
    return date(year, month, min(first.day, monthrange(year, month)[1]))


def money_of(record: Record, currency: str, hours: tuple[Hours, ...] | None) -> tuple[int | None, tuple[Income, ...]]:
    """(budget, incomes) of a brief. The budget is the sum of the incomes, where there are any.

    `--budget` is the sum in all: what is less comes off the last days, what is more comes on the last one, so that no
    day has more than the brief says before all of it has come.
    """
    budget = record.money("budget", currency)
    none: tuple[Income, ...] = ()
    unread = hours is None and record.has("hours")
    how = (lambda value: read_incomes(value, currency)) if unread else _checked(currency, hours)
    incomes = record.read("money", none, how, WANTED_INCOMES)
    if not incomes:
        return budget, ()
    if budget is None:
        return total_minor(incomes), incomes
    if record.place("budget").file == OPTION:
        incomes = capped(incomes, budget)
        return budget, incomes
    if budget != total_minor(incomes):
        record.problem("budget", "the sum of `money`", "leave `budget` out: it is the sum of what comes")
    return budget, incomes


def _checked(currency: str, hours: tuple[Hours, ...] | None) -> Callable[[object], tuple[Income, ...]]:
    """Reads incomes and holds them against the list of hours."""

    def how(value: object) -> tuple[Income, ...]:
        incomes = read_incomes(value, currency)
        short = isinstance(value, dict)
        wrong = [
            Part(_when(one), advice, ("from",) if short else (index,))
            for index, one in enumerate(incomes)
            if (advice := _beside(one, hours)) and not (short and index)
        ]
        if wrong:
            raise Inside(*wrong)
        return tuple(_counted(one, hours) for one in incomes)

    return how


def _beside(one: Income, hours: tuple[Hours, ...] | None) -> str:
    """What is wrong with an income beside the hours, in words; empty when nothing is."""
    if one.session is not None:
        count = sum(not session.continues for session in hours or ())
        there = "there is 1 session" if count == 1 else f"there are {count} sessions"
        return "" if one.session <= count else there if hours else "there is no list of hours"
    undated = bool(hours) and any(session.on is None for session in hours or ())
    return "a session, such as {session: 2, amount: 150}: the hours have no dates" if undated else ""


def _counted(one: Income, hours: tuple[Hours, ...] | None) -> Income:
    """The same income; its session counted as the chooser counts, where the van cuts sessions in parts."""
    if one.session is None or hours is None:
        return one
    return Income(one.amount_minor, session=first_part(hours, one.session))
