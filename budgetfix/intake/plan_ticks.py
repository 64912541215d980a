"""Has somebody ticked or typed into an earlier plan? Then it is not written over."""

from __future__ import annotations

from pathlib import Path

from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.base.fingerprint import PROPERTY, fingerprint
from budgetfix.intake.door import book_bytes

USERS = {"Buy": ("bought", "paid in all"), "Do": ("done", "real minutes")}
"""The user's own columns, by sheet."""
HEADS_WITHIN = 12
ID = 1
"""The hidden column of ids: sums below the lists have none."""


def touched(plan_xlsx: Path) -> bool:
    """True where one of the user's cells holds something, or any cell is not as we wrote it.

    Also where sheets or headings of ours are gone, and for a file that is no workbook. A book whose fingerprint was
    dropped by another program is judged by the user's cells alone.
    """
    book = _book(plan_xlsx)
    if book is None:
        return True
    sheets = [sheet for sheet in book.worksheets if sheet.title in USERS]
    if len(sheets) < len(USERS):
        return True
    return any(_typed(sheet, USERS[sheet.title]) for sheet in sheets) or _changed(book)


def foreign(plan_xlsx: Path) -> bool:
    """True for what is no workbook, or none that we take: nobody can have ticked anything in it."""
    return _book(plan_xlsx) is None


def altered(book_xlsx: Path) -> bool:
    """True where a book of ours holds anything that we did not write, or is no workbook."""
    book = _book(book_xlsx)
    return book is None or _changed(book)


def _book(path: Path) -> Workbook | None:
    from budgetfix.intake.survey_xlsx import open_book

    data = book_bytes(path, [])
    return None if data is None else open_book(data, False)


def _typed(sheet: Worksheet, heads: tuple[str, ...]) -> bool:
    for row in range(1, min(sheet.max_row, HEADS_WITHIN) + 1):
        columns = [at for at in range(1, sheet.max_column + 1) if word(sheet.cell(row, at).value) in heads]
        if columns:
            return any(
                _filled(sheet.cell(below, at).value)
                for below in range(row + 1, sheet.max_row + 1)
                if sheet.cell(below, ID).value is not None
                for at in columns
            )
    return True


def _changed(book: Workbook) -> bool:
    properties = book.custom_doc_props.props  # type: ignore[attr-defined]
    written = {one.name: str(one.value) for one in properties}.get(PROPERTY)
    return written is not None and written != fingerprint(_constants(book))


def _constants(book: Workbook) -> list[tuple[str, str | float]]:
    """(sheet, value) of every cell that is neither live nor empty."""
    found: list[tuple[str, str | float]] = []
    for sheet in book.worksheets:
        for line in sheet.iter_rows():
            for cell in line:
                if cell.data_type != "f" and _filled(cell.value):
                    number = isinstance(cell.value, int | float) and not isinstance(cell.value, bool)
                    found.append((sheet.title, cell.value if number else str(cell.value)))  # type: ignore[arg-type]
    return found


def word(value: object) -> str:
    """A heading as it is compared; empty for what is no text."""
    return " ".join(value.split()).lower() if isinstance(value, str) else ""


def _filled(value: object) -> bool:
    return bool(value.strip()) if isinstance(value, str) else value is not None and value is not False
