"""Money that comes by date, in words: from when to buy, and how it stands from each day on."""

from __future__ import annotations

from datetime import date

from budgetfix.base.money import write_money
from budgetfix.exports.lettering import day, month_day
from budgetfix.outcome.book import MoneyLine, PlanBook

HEADS = ("From", "Comes", "There then", "Spent by then", "Left")


def from_words(on: date | None, session: int) -> str:
    """`1 July`, or `session 3` where there are no dates; empty for neither."""
    return month_day(on) if on is not None else f"session {session}" if session else ""


def buy_from(line: MoneyLine) -> str:
    """From when a line may be bought; empty where all money is there at once."""
    return from_words(line.buy_on, line.buy_session)


def money_day_rows(book: PlanBook) -> tuple[tuple[str, int, int, int, int], ...]:
    """(from when, comes, there then, spent by then, left) for each day on which money comes."""
    return tuple(
        (from_words(one.on, one.session), one.comes_minor, one.there_minor, one.spent_minor, one.left_minor)
        for one in book.purses
    )


def there_note(book: PlanBook) -> str:
    """What the column "There then" leaves out; empty for nothing."""
    return "There then: less what is held back of it." if book.held_back_minor else ""


def money_day_lines(book: PlanBook) -> list[str]:
    """A line a day for the screen."""
    lines = []
    for one in book.purses:
        when = day(one.on) if one.on is not None else f"session {one.session}"
        there, spent, left = (
            write_money(minor, book.currency) for minor in (one.there_minor, one.spent_minor, one.left_minor)
        )
        lines.append(f"from {when}: {there} there, {spent} spent, {left} left")
    return lines
