"""Ticks typed on the sheet of a person, where those of Do are only shown: they would be lost without a word."""

from __future__ import annotations

from collections.abc import Iterable

from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.base.problems import FileProblem
from budgetfix.intake.plan_cells import read_tick
from budgetfix.intake.plan_rows import ID_HEAD, LAST_ROW, columns_of, key
from budgetfix.intake.plan_ticks import HEADS_WITHIN, USERS
from budgetfix.intake.survey_xlsx import Book
from budgetfix.outcome.so_far import StepBack

FOUND = "a tick that the sheet 'Do' does not have"
WANTED = "ticks on Do: they show here by themselves"


def astray(book: Book, steps: Iterable[StepBack]) -> list[FileProblem]:
    """A problem for each step that is ticked on a person's sheet and not on Do."""
    ticked = {key(one.planned.id): one.done for one in steps}
    pages = [sheet for sheet in book.shown.worksheets if sheet.title not in USERS]
    return [problem for sheet in pages for problem in _on(book, sheet, ticked)]


def _on(book: Book, sheet: Worksheet, ticked: dict[str, bool]) -> list[FileProblem]:
    head, ids, done = _headings(sheet)
    rows = range(head + 1, min(sheet.max_row, LAST_ROW) + 1) if head else range(0)
    found = []
    for row in rows:
        id, cell = key(sheet.cell(row, ids).value), book.typed[sheet.title].cell(row, done)
        if ticked.get(id) is False and cell.data_type != "f" and _is_tick(cell.value):
            found.append(FileProblem(book.place(sheet, row, done), FOUND, WANTED, f"tick '{id}' there"))
    return found


def _headings(sheet: Worksheet) -> tuple[int, int, int]:
    """Row of the headings, columns of ids and ticks; zeros where it is no person's sheet (a copy of Do is none)."""
    for row in range(1, min(sheet.max_row, HEADS_WITHIN) + 1):
        ids, done, real = (columns_of(sheet, row, heading) for heading in (ID_HEAD, *USERS["Do"]))
        if ids and done and not real:
            return row, ids[0], done[0]
    return 0, 0, 0


def _is_tick(value: object) -> bool:
    try:
        return read_tick(value)
    except ValueError:
        return False
