"""A plan's workbook as a user works on it: cells by sheet, row id and heading; read back from bytes."""

from __future__ import annotations

import io
import warnings

from openpyxl import Workbook, load_workbook
from openpyxl.cell.cell import Cell
from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.exports.plan_book import plan_book
from budgetfix.intake.plan_back import back_from
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.so_far import SoFar
from tests.exports.remembered_book import KEPT

HEAD = 4
"""Row of the headings in a fresh book, counted from 1."""


class Desk:
    """An open workbook with somebody at work on it."""

    def __init__(self, plan: PlanBook = KEPT, data: bytes | None = None) -> None:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            self.book: Workbook = load_workbook(io.BytesIO(plan_book(plan) if data is None else data))
        self.currency = plan.currency

    def page(self, title: str) -> Worksheet:
        """One sheet."""
        page = self.book[title]
        assert isinstance(page, Worksheet)
        return page

    def cell(self, title: str, id: str, heading: str) -> Cell:
        """The cell of a row under a heading, in a book whose headings nobody moved."""
        page = self.page(title)
        row = next(cell.row for cell in page["A"] if cell.value == id)
        column = next(cell.column for cell in page[HEAD] if cell.value == heading)
        cell = page.cell(row or 0, column or 0)
        assert isinstance(cell, Cell)
        return cell

    def type(self, title: str, id: str, heading: str, value: object) -> str:
        """Type into a cell; gives its address."""
        cell = self.cell(title, id, heading)
        cell.value = value  # type: ignore[assignment]
        return f"{title}!{cell.coordinate}"

    def saved(self) -> bytes:
        """The bytes of the workbook as it is now."""
        data = io.BytesIO()
        self.book.save(data)
        return data.getvalue()

    def back(self) -> SoFar:
        """What is read back, of a book that has nothing wrong."""
        found, problems = back_from(self.saved(), "plan.xlsx", self.currency)
        assert problems == ()
        assert found is not None
        return found

    def problems(self) -> list[str]:
        """What is wrong, as people read it."""
        found, problems = back_from(self.saved(), "plan.xlsx", self.currency)
        assert (found is None) == bool(problems)
        return [str(problem) for problem in problems]


def said(back: SoFar) -> dict[str, tuple[object, object]]:
    """What was typed, by row: state and sum of lines, tick and minutes of steps."""
    lines = {one.planned.id: (one.state, one.paid_minor) for one in back.told}
    steps = {
        one.planned.id: (one.done, one.real_minutes) for one in back.steps if one.done or one.real_minutes is not None
    }
    return {**lines, **steps}
