"""The sheet `Landlord`: the note as a table with room for yes and no, to print and sign."""

from __future__ import annotations

from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.landlord_text import AGREED, ASKED, TOLD, WAITING, closing, stays_lines
from budgetfix.exports.plan_book_page import Col, Page, Styles, Table
from budgetfix.outcome.book import PlanBook

COLUMNS = (
    Col("What", 30, "strong"),
    Col("Where", 26),
    Col("Holes", 22),
    Col("With", 30, "quiet"),
    Col("At the end", 38),
    Col("Yes", 6, "mark", yours=True),
    Col("No", 6, "mark", yours=True),
)
SIGN = "Date, tenant: ____________________     Date, landlord: ____________________"


def landlord_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> None:
    """Lay out the sheet; nothing where nothing needs leave."""
    note = plan.landlord
    if note is None:
        return
    page = Page(book, styles, "Landlord", "To my landlord", f"The lease and your answer decide. {WAITING}", plan.title)
    table = Table(page, COLUMNS)
    for heading, works in ((ASKED, note.asked), (AGREED, note.agreed), (TOLD, note.told)):
        if works:
            _heading(table, heading)
        for work in works:
            answer = "" if works is note.asked else "–"
            values = (work.what, work.where, work.holes, work.using, work.made_good, answer, answer)
            table.row("", values, look=None if works is note.asked else _plain)
    table.next_row += 1
    for text in (*stays_lines(note), closing(note), "", SIGN):
        page.put(table.next_row, 1, text, styles())
        table.next_row += 1


def _plain(heading: str) -> dict[str, object]:
    """Nothing to fill in where nothing is asked."""
    return {"bg_color": palette.WHITE} if heading in ("Yes", "No") else {}


def _heading(table: Table, words: str) -> None:
    table.page.put(table.next_row, 1, words, table.page.styles(bold=True, font_color=palette.TEAL))
    table.next_row += 1
