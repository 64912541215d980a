"""A plan's workbook as a test reads it back: sheets, rows by heading, what a cell shows and what stands behind it."""

from __future__ import annotations

import io
import warnings
from functools import lru_cache

from openpyxl import Workbook, load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.exports.plan_book import plan_book
from budgetfix.outcome.book import PlanBook

HEAD = 4
"""Row of the headings, counted from 1."""


def opened(data: bytes, values: bool = True) -> Workbook:
    """A workbook from bytes; `values`: results instead of formulas."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return load_workbook(io.BytesIO(data), data_only=values)


def sheet(book: Workbook, name: str) -> Worksheet:
    """One sheet of an open workbook."""
    page = book[name]
    assert isinstance(page, Worksheet)
    return page


@lru_cache(maxsize=64)
def sheet_of(plan: PlanBook, name: str, values: bool = True) -> Worksheet:
    """One sheet of a plan's workbook, to be read only: the next test gets the same one."""
    return sheet(opened(plan_book(plan), values), name)


def headings(page: Worksheet) -> list[str]:
    """What stands in the row of headings, without the ids' own."""
    return [str(cell.value) for cell in page[HEAD][1:] if cell.value is not None]


def rows(page: Worksheet) -> list[dict[str, object]]:
    """The rows that have an id, by heading; the id under `id`."""
    names = [str(cell.value) for cell in page[HEAD]]
    lines = [line for line in page.iter_rows(min_row=HEAD + 1) if line[0].value is not None]
    return [{name: cell.value for name, cell in zip(names, line, strict=True)} for line in lines]


def values(page: Worksheet) -> dict[tuple[int, int], object]:
    """What every cell that holds something shows, by row and column."""
    cells = (cell for line in page.iter_rows() for cell in line)
    return {(cell.row or 0, cell.column or 0): cell.value for cell in cells if cell.value is not None}


def footer(page: Worksheet) -> tuple[str, str, str]:
    """The footer's left, middle and right."""
    parts = page.oddFooter
    assert parts is not None
    return str(parts.left.text), str(parts.center.text), str(parts.right.text)


def column_of(page: Worksheet, heading: str) -> int:
    """The column, counted from 1, of a heading."""
    return next(cell.column or 0 for cell in page[HEAD] if cell.value == heading)


def beside(page: Worksheet, label: str, heading: str) -> object:
    """The value under a heading in the row where some cell holds the label."""
    column = column_of(page, heading)
    for line in page.iter_rows(min_row=HEAD + 1):
        if line[0].value is None and any(cell.value == label for cell in line):
            return line[column - 1].value
    raise LookupError(label)


def under(page: Worksheet, label: str) -> object:
    """The value below the first cell that holds a label."""
    for line in page.iter_rows():
        for cell in line:
            if cell.value == label:
                return page.cell(cell.row + 1, cell.column).value
    raise LookupError(label)


def right_of(page: Worksheet, label: str) -> object:
    """The first value to the right of the first cell that holds a label."""
    for line in page.iter_rows():
        for place, cell in enumerate(line):
            if cell.value == label:
                return next(other.value for other in line[place + 1 :] if other.value is not None)
    raise LookupError(label)
