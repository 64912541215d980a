"""The hidden sheet `Record` of a plan's workbook, read back."""

from __future__ import annotations

from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.base.problems import FileProblem, Place
from budgetfix.intake.survey_xlsx import Book
from budgetfix.outcome.record_text import VERSION, NoRecord, Text, from_texts
from budgetfix.outcome.so_far import Remembered

RECORD = "Record"
LAST_ROW, LAST_PART = 20_000, 400
WANTED = "the hidden sheet 'Record' as it was written"
TAKE_A_COPY = "take a copy of the workbook that still has it"


def read_record(book: Book) -> tuple[Remembered | None, tuple[FileProblem, ...]]:
    """What the workbook remembers of its own plan; or None, with what is wrong."""
    sheet = book.sheet(RECORD)
    if sheet is None:
        return None, (FileProblem(Place(book.file), f"no sheet '{RECORD}'", WANTED, TAKE_A_COPY),)
    version = sheet.cell(1, 2).value
    if version != VERSION:
        found = f"a record of version {version}" if isinstance(version, int) else "no version of the record"
        return None, (FileProblem(book.place(sheet, 1, 2), found, f"version {VERSION}", TAKE_A_COPY),)
    texts = tuple(_text(sheet, row) for row in range(2, min(sheet.max_row, LAST_ROW) + 1))
    try:
        return from_texts(texts), ()
    except NoRecord as error:
        place = book.place(sheet, 1 if error.at is None else error.at + 2, 2)
        return None, (FileProblem(place, str(error), WANTED, TAKE_A_COPY),)


def _text(sheet: Worksheet, row: int) -> Text:
    """A row's kind, and its text put together from all of its cells."""
    parts: list[str] = []
    for column in range(2, LAST_PART):
        part = sheet.cell(row, column).value
        if part is None:
            break
        parts.append(str(part))
    return Text(str(sheet.cell(row, 1).value), "".join(parts))
