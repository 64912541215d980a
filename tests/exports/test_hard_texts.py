"""Texts that break layouts, through everything that a person takes away: screen, lists, calendar, workbook, page."""

from __future__ import annotations

import csv
import io
from dataclasses import replace

import icalendar
import pytest

from budgetfix.base.money import write_money, write_money_long
from budgetfix.exports.calendar import plan_ics
from budgetfix.exports.lettering import columns_of
from budgetfix.exports.page.page import plan_page
from budgetfix.exports.plan_csv import RISKY, buy_csv, do_csv
from budgetfix.exports.plan_screen import plan_text
from budgetfix.outcome.book import PlanBook
from tests.exports.page.page_tree import tree_of
from tests.exports.plan_sheets import rows, sheet_of
from tests.exports.sample_book import ACCENTS, BOOK, FORMULA, LONG, NOTHING, RTL, SESSIONS, TASKS, many

HEBREW = "\u05d5\u05d9\u05dc\u05d5\u05df \u05d0\u05e8\u05d5\u05da"
TWELVE = replace(
    BOOK, tasks=tuple(replace(TASKS[at % len(TASKS)], candidate=f"c{at:02d}", step=1, steps=1, session=1,
                              name=f"{at + 1}th thing") for at in range(12)),
    sessions=(replace(SESSIONS[0], minutes_used=600, minutes_available=700), SESSIONS[1]),
)  # fmt: skip
NAMES = (LONG, RTL, ACCENTS, HEBREW, FORMULA, LONG, RTL)
NAMED = replace(
    BOOK,
    money=tuple(replace(line, name=name) for line, name in zip(BOOK.money, NAMES, strict=True)),
    tasks=tuple(replace(task, name=name) for task, name in zip(TASKS, NAMES, strict=True)),
)
HARD: dict[str, PlanBook] = {
    "twelve tasks in a session": TWELVE,
    "hard names": NAMED,
    "nothing to buy": NOTHING,
    "a hundred products": many(100),
    "a hundred in yen": many(100, "JPY"),
    "a hundred in dollars": many(100, "USD"),
}
EACH = pytest.mark.parametrize("book", HARD.values(), ids=HARD)


@EACH
def test_the_screen_keeps_to_its_columns(book: PlanBook) -> None:
    """No line is wider than 79 columns, counted as a terminal shows them; in ASCII as well."""
    for unicode in (True, False):
        text = plan_text(book, ("job/plan.xlsx",), unicode=unicode)
        assert max(columns_of(line) for line in text.splitlines()) <= 79
        assert unicode or text.isascii()


@EACH
def test_the_lists_hold_every_name_and_no_formula(book: PlanBook) -> None:
    """Each product and task is a row of its own; nothing starts as a formula (RFC 4180; OWASP, CSV injection)."""
    buy = list(csv.reader(io.StringIO(buy_csv(book).decode(), newline="")))
    do = list(csv.reader(io.StringIO(do_csv(book).decode(), newline="")))
    assert len(buy) == len(book.money) + 2
    assert len(do) == len(book.tasks) + 1
    assert not [cell for row in (*buy, *do) for cell in row if cell.startswith(RISKY)]
    names = {cell.removeprefix("'") for row in buy for cell in row}
    assert {line.name for line in book.money} <= names
    assert buy[-1][buy[0].index("line")] == write_money(book.spent_minor, book.currency)


@EACH
def test_the_calendar_is_read_back(book: PlanBook) -> None:
    """Every task of a dated session is in its entry, whatever its name (RFC 5545, 3.1 and 3.3.11)."""
    read = icalendar.Calendar.from_ical(plan_ics(book))
    told = " ".join(str(one.get("DESCRIPTION", "")) for one in read.walk())
    used = {task.session for task in book.tasks}
    assert len(read.walk("VEVENT")) == len([row for row in book.sessions or () if row.number in used])
    for task in book.tasks:
        assert task.name in told
    assert all(len(line) <= 75 for line in plan_ics(book).split(b"\r\n"))


@EACH
def test_the_workbook_holds_every_name_as_text(book: PlanBook) -> None:
    """Names come back as they were, in rows of their own; sums are the plan's."""
    buy, do = rows(sheet_of(book, "Buy")), rows(sheet_of(book, "Do"))
    assert [str(row["Product"]).removesuffix(" (example price)") for row in buy if row["Product"]] == [
        line.name for line in sorted(book.money, key=lambda line: line.kind in ("delivery", "tax"))
    ]
    assert len(do) == len(book.tasks)
    assert [row["No."] for row in do] == list(range(1, len(do) + 1))


@EACH
def test_the_page_shows_every_name_and_the_money_of_the_country(book: PlanBook) -> None:
    """Each name is text of the page, its direction left to the reader; sums wear a sign (CLDR, by babel)."""
    page = tree_of(plan_page(book))
    shown = page.text()
    for name in {" ".join(line.name.split()) for line in book.money} | {task.name for task in book.tasks}:
        assert name in shown
    assert write_money_long(book.spent_minor, book.currency) in shown
    sign = {"EUR": "\u20ac", "JPY": "\u00a5", "USD": "$"}[book.currency]
    assert sign in shown
