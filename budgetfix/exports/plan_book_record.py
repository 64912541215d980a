"""The hidden sheet `Record`: what the plan was, so that the workbook can be read back whatever else is lost."""

from __future__ import annotations

from xlsxwriter.workbook import Workbook
from xlsxwriter.worksheet import Worksheet

from budgetfix.exports.plan_book_page import Styles
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.record_text import VERSION, as_texts

RECORD = "Record"
LETTERS = 32_000
"""Characters of one cell; a cell takes 32,767 (Excel specifications and limits)."""
NOTE = "What this plan was, for reading the workbook back. It is not to be changed."


def record_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> None:
    """Row 1: version and note. Below, a row each: what it is, then its text, in as many cells as it takes."""
    if plan.remembered is None:
        return
    sheet = book.add_worksheet(RECORD)
    sheet.hide()
    _put(sheet, styles, 0, 0, "version")
    _put(sheet, styles, 0, 1, VERSION)
    _put(sheet, styles, 0, 2, NOTE)
    for row, one in enumerate(as_texts(plan.remembered), start=1):
        _put(sheet, styles, row, 0, one.kind)
        for place in range(-(-len(one.text) // LETTERS)):
            _put(sheet, styles, row, place + 1, one.text[place * LETTERS : (place + 1) * LETTERS])


def _put(sheet: Worksheet, styles: Styles, row: int, column: int, value: str | int) -> None:
    if isinstance(value, str):
        sheet.write_string(row, column, value)
    else:
        sheet.write_number(row, column, value)
    styles.typed.append((RECORD, value))
