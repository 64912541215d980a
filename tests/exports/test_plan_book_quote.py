"""The sheets for a client's job: the quote with live sums, the costing behind it."""

from __future__ import annotations

import io
from dataclasses import replace

from openpyxl import Workbook, load_workbook

from budgetfix.exports.plan_book import plan_book
from budgetfix.exports.plan_book_costing import NOTE, costing_sheet
from budgetfix.exports.plan_book_quote import quote_sheet
from budgetfix.outcome.quote import CostRow
from tests.exports.sample_book import BOOK
from tests.exports.sample_quote import COSTING, QUOTED, ROWS


def opened(values: bool) -> Workbook:
    """The workbook of a quoted plan, as values or as formulas."""
    return load_workbook(io.BytesIO(plan_book(QUOTED)), data_only=values)


def column(book: Workbook, sheet: str, letter: str) -> list[object]:
    """The filled cells of one column, from the headings down."""
    return [cell.value for cell in book[sheet][letter][3:] if cell.value is not None]


def test_the_quote_adds_up_live() -> None:
    """Rooms sum their lines, the last row sums the rooms; stored values and formulas agree."""
    assert column(opened(True), "Quote", "C") == ["A Essential", 60, 60, "–", 0, "–", 40, 20, 20, 100]
    assert column(opened(True), "Quote", "D") == ["B Recommended", 59.9, 59.9, 0, 45.6, 45.6, 40, 20, 20, 145.5]
    formulas = column(opened(False), "Quote", "D")
    assert formulas[1] == "=SUM(D6:D7)"
    assert formulas[-1] == "=D5+D8+D10"


def test_the_quote_says_what_the_page_says() -> None:
    """Dates, what is included, what is agreed to stand below the table."""
    words = [str(value) for value in column(opened(True), "Quote", "B")]
    assert "Photographs: Friday 5 June at 10:00; all is ready before." in words
    assert "The keys stay with us." in words


def test_the_costing_shows_everything() -> None:
    """By sort: shelf price and mark-up, place and kilograms, minutes, what we pay, and what is left."""
    rows = [[cell.value for cell in row][1:] for row in opened(True)["Costing"].iter_rows(min_row=5, max_row=13)]
    assert rows[:4] == [
        ["Bought: shelf price and mark-up", None, None, None, None, None, None, 20, None, 23, 20, 3],
        ["Bulbs", "Lamps", "Harrow Tools", None, 2, None, None, 20, "15 %", 23, 20, 3],
        ["From our stock: the fee for 30 days", None, None, None, None, 14.5, None, 60, None, 60, 0, 60],
        ["Rug", "Rug", "our stock", "bay 2", 1, 14.5, None, 60, None, 60, 0, 60],
    ]
    assert rows[4][0] == "Work, $45.00 an hour a person"
    assert rows[8] == ["In all", None, None, None, None, 14.5, 57, 80, None, 145.5, 82.5, 63]
    words = column(opened(True), "Costing", "B")
    assert "Option B, Recommended: the client pays $145.50, margin $63.00." in words
    assert words[-1] == "Van out: Thursday 4 June, 09:00 to 11:00, 14.5 kg of 400 kg."


def test_the_costing_says_whose_minutes() -> None:
    """Work that is no remedy is among the minutes, so the note names it; fees stand in the column of the prices."""
    assert opened(True)["Costing"]["B2"].value == NOTE
    back = CostRow("fixed:4", "fixed", "Take back", "", "", None, None, "", 0, 0, minutes=240)
    plan = replace(QUOTED, costing=replace(COSTING, rows=(*ROWS, back)))
    page = load_workbook(io.BytesIO(plan_book(plan)), data_only=True)["Costing"]
    assert page["B2"].value == f"{NOTE} Minutes include the fixed work too: Take back."
    assert page["I4"].value == "Price or fee"


def test_other_jobs_have_neither() -> None:
    """Where nobody is paid there is nothing to quote."""
    names = load_workbook(io.BytesIO(plan_book(BOOK))).sheetnames
    assert not {"Quote", "Costing"} & set(names)
    assert {"Quote", "Costing"} <= set(opened(True).sheetnames)
    assert quote_sheet.__doc__
    assert costing_sheet.__doc__
