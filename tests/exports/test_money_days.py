"""Money by date in words, in the workbook and in the calendar."""

from __future__ import annotations

import io
from dataclasses import replace
from datetime import date
from typing import Any

from icalendar import Calendar, Todo
from openpyxl import load_workbook

from budgetfix.exports.calendar import plan_ics
from budgetfix.exports.calendar_buy import buy_entries
from budgetfix.exports.calendar_entry import clean
from budgetfix.exports.money_days import buy_from, from_words, money_day_lines, money_day_rows, there_note
from budgetfix.exports.page.rows import buy_row
from budgetfix.exports.plan_book import plan_book
from budgetfix.outcome.book import MoneyDay, PlanBook
from tests.exports.sample_book import BOOK

JUNE, JULY = date(2026, 6, 1), date(2026, 7, 1)
LATER = ("panels",)
LINES = tuple(
    replace(line, phase=1, buy_on=JULY)
    if line.product in LATER or line.kind == "delivery"
    else replace(line, buy_on=JUNE)
    for line in BOOK.money
)
DATED = replace(
    BOOK,
    money=LINES,
    purses=(MoneyDay(JUNE, 0, 10000, 9000, 7982), MoneyDay(JULY, 0, 8000, 16200, 14172)),
)
UNDATED = replace(
    DATED,
    money=tuple(replace(line, buy_on=None, buy_session=1 + line.phase) for line in LINES),
    purses=(MoneyDay(None, 1, 10000, 9000, 7982), MoneyDay(None, 2, 8000, 16200, 14172)),
)


def test_words() -> None:
    """A day by its name, a session by its number, nothing where all money is there at once."""
    assert [from_words(JULY, 0), from_words(None, 3), from_words(None, 0)] == ["1 July", "session 3", ""]
    assert [buy_from(BOOK.money[3]), buy_from(LINES[3]), buy_from(UNDATED.money[3])] == ["", "1 July", "session 2"]
    assert money_day_rows(DATED)[1] == ("1 July", 8000, 16200, 14172, 2028)
    assert money_day_lines(DATED) == [
        "from Mon 1 Jun: 90.00 there, 79.82 spent, 10.18 left",
        "from Wed 1 Jul: 162.00 there, 141.72 spent, 20.28 left",
    ]
    assert money_day_lines(UNDATED)[1] == "from session 2: 162.00 there, 141.72 spent, 20.28 left"
    assert there_note(replace(DATED, held_back_minor=100)) == "There then: less what is held back of it."
    assert there_note(replace(DATED, held_back_minor=0)) == ""


def cells(book: PlanBook, name: str) -> list[list[Any]]:
    """What a sheet says, row by row."""
    sheet = load_workbook(io.BytesIO(plan_book(book)))[name]
    return [[cell.value for cell in row] for row in sheet.iter_rows()]


def test_the_sheet_buy_has_a_column_only_where_money_comes_by_date() -> None:
    """From when each line may be bought, as far as there are days."""
    heads, *rows = cells(DATED, "Buy")[3:]
    at = heads.index("Buy from")
    assert [row[at] for row in rows[: len(LINES)]] == ["1 June"] * 3 + ["1 July", "1 June", "1 July", "1 June"]
    assert "Buy from" not in cells(BOOK, "Buy")[3]


def test_the_summary_tells_how_the_money_stands() -> None:
    """A row for each day: comes, there, spent by then, left."""
    rows = [[value for value in row if value is not None] for row in cells(DATED, "Summary")]
    at = rows.index(["Money as it comes"])
    assert rows[at + 1] == ["From", "Comes", "There then", "Spent by then", "Left"]
    assert rows[at + 2] == ["1 June", 100, 90, 79.82, 10.18]
    assert rows[at + 3] == ["1 July", 80, 162, 141.72, 20.28]
    assert ["Money as it comes"] not in [[value for value in row if value] for row in cells(BOOK, "Summary")]


def test_the_calendar_has_an_entry_for_each_day_of_buying() -> None:
    """All-day entries of their own name; tasks without a day where sessions have none; none without dates."""
    events = [one for one in Calendar.from_ical(plan_ics(DATED)).walk("VEVENT") if ": buy " in str(one["summary"])]
    assert [(one.decoded("dtstart"), str(one["summary"])) for one in events] == [
        (JUNE, f"{BOOK.title}: buy 4 things"),
        (JULY, f"{BOOK.title}: buy 1 thing"),
    ]
    assert str(events[1]["description"]) == (
        "From 1 July on the money for this is there: 61.90 EUR in all.\n\n"
        "- 2 × Curtain panels 42 x 96 in, pair, Mill Lane Home: 56.00\n"
        "- Delivery, Mill Lane Home: 5.90"
    )
    assert len({str(one["uid"]) for one in events}) == 2
    everything = Calendar.from_ical(plan_ics(UNDATED)).subcomponents
    todos = [one for one in everything if isinstance(one, Todo) and ": buy " in str(one["summary"])]
    assert ["dtstart" in one for one in todos] == [False, False]
    assert buy_entries(BOOK) == []
    assert clean("a\tb\x07\nc") == "a b\nc"


def test_the_page_says_it_first() -> None:
    """Beside each thing to buy, before its size."""
    first = buy_row(DATED, LINES[3], "t").details[0]
    assert (first.label, first.text) == ("Buy from", "1 July")
    assert buy_row(BOOK, BOOK.money[3], "t").details[0].label != "Buy from"
