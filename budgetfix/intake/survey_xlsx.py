"""A survey typed into the workbook: sheets by their titles, columns by their headings, values with their cells."""

from __future__ import annotations

import io
import struct
import warnings
import zipfile
import zlib
from collections.abc import Iterable
from datetime import date, datetime, time
from pathlib import Path

from openpyxl import Workbook, load_workbook
from openpyxl.cell.cell import Cell
from openpyxl.comments import Comment
from openpyxl.styles import PatternFill
from openpyxl.utils import get_column_letter
from openpyxl.utils.exceptions import InvalidFileException
from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.base.limits import COLUMNS, ROWS
from budgetfix.base.problems import FileProblem, Place
from budgetfix.base.signs import shortened
from budgetfix.forms.column import Column
from budgetfix.forms.survey_form import HOME, MONEY, ROOMS, SHEETS, START_TITLE
from budgetfix.intake.disarm import disarm
from budgetfix.intake.door import book_bytes
from budgetfix.intake.markup import NotTaken
from budgetfix.intake.parcel import repacked
from budgetfix.intake.raw_rows import RawCell, RawRow, RawSurvey, close_to

LAST_ROW, LAST_COLUMN, HEADINGS_WITHIN = 2000, 80, 60
MARK = "C0392B"
SIGNIFICANT = 15
"""Digits that a spreadsheet's number is good for (Excel specifications and limits)."""
LOW = "every line in row {:,} or above it"
MOVE_UP = "leave no empty rows between lines"
A_BOOK = "a workbook saved as .xlsx"
NO_BOOK = (
    zipfile.BadZipFile, zlib.error, struct.error, InvalidFileException, LookupError, ValueError, TypeError, SyntaxError,
    AttributeError, EOFError, RuntimeError, OverflowError, OSError,
)  # fmt: skip
"""What openpyxl and the standard library say of bytes that are no workbook: other files, damaged ones, locked ones."""


def open_book(data: bytes, values: bool) -> Workbook | None:
    """The workbook, or None for bytes that are none, or past our limits. `values`: results instead of formulas."""
    try:
        return _loaded(repacked(data), values)
    except (NotTaken, *NO_BOOK):
        return None


def book_of(data: bytes, name: str, problems: list[FileProblem], wanted: str = A_BOOK) -> Book | None:
    """The workbook called `name`, opened twice; or None after noting why it is not taken. `wanted`: a book as which."""
    try:
        parcel = repacked(data)
        return Book(name, _loaded(parcel, True), _loaded(parcel, False))
    except NotTaken as refused:
        problems.append(FileProblem(Place(name), refused.found, refused.wanted))
    except NO_BOOK:
        problems.append(FileProblem(Place(name), "a file that is no workbook", wanted))
    return None


def _loaded(parcel: bytes, values: bool) -> Workbook:
    """Errors: those of NO_BOOK."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", UserWarning)  # of looks that it does not know: cells are all that is read
        book = load_workbook(io.BytesIO(parcel), data_only=values, keep_links=False)
    for sheet in book.worksheets:
        cells = sheet._cells
        for far in [at for at in cells if at[0] > ROWS or at[1] > COLUMNS]:
            del cells[far]
    return book


class Book:
    """A workbook opened twice: for what cells show and for the formulas behind."""

    def __init__(self, file: str, shown: Workbook, typed: Workbook) -> None:
        self.file = file
        self.shown = shown
        self.typed = typed
        self.titles = {title.strip().lower(): title for title in shown.sheetnames}

    def sheet(self, title: str) -> Worksheet | None:
        known = self.titles.get(title.lower())
        sheet = self.shown[known] if known else None
        return sheet if isinstance(sheet, Worksheet) else None

    def place(self, sheet: Worksheet, row: int, column: int) -> Place:
        label = f"{sheet.title}!{get_column_letter(column)}{row}"
        return Place(self.file, self.shown.sheetnames.index(sheet.title) + 1, row, column, label)

    def cell(self, sheet: Worksheet, row: int, column: int) -> RawCell | None:
        """What a cell holds; None for an empty one."""
        cell = sheet.cell(row, column)
        place = self.place(sheet, row, column)
        behind = self.typed[sheet.title].cell(row, column)
        if cell.value is None and behind.data_type == "f":
            return RawCell("=", place, "a formula whose result was never stored")
        if cell.value is None or (isinstance(cell.value, str) and not cell.value.strip()):
            return None
        if cell.data_type == "e":
            return RawCell(cell.value, place, f"the error {cell.value}")
        if isinstance(cell.value, (datetime, date, time)):
            return RawCell(_day(cell.value), place, "" if isinstance(cell.value, (datetime, date)) else "a time of day")
        return RawCell(_without_dust(cell.value), place)


def _without_dust(value: object) -> object:
    """A sum such as 0.30000000000000004 as the program shows it."""
    return float(f"{value:.{SIGNIFICANT}g}") if isinstance(value, float) else value


def _day(value: datetime | date | time) -> object:
    return value.date() if isinstance(value, datetime) else value


def _text(sheet: Worksheet, row: int, column: int) -> str:
    value = sheet.cell(row, column).value
    return " ".join(value.split()).rstrip("?:").strip().lower() if isinstance(value, str) else ""


def raw_xlsx(path: Path) -> RawSurvey:
    """Every value of the workbook with its cell."""
    raw = RawSurvey(path.name, RawRow("home", Place(path.name, 0, 0, 0, "Start")))
    data = book_bytes(path, raw.problems)
    book = None if data is None else book_of(data, path.name, raw.problems)
    if book is None:
        raw.home.cells["unit"] = RawCell("mm", raw.home.place)
        return raw
    _lost_sheets(raw, book)
    start = book.sheet(START_TITLE)
    if start is not None:
        _start(raw, book, start)
    for sheet in SHEETS:
        found = book.sheet(sheet.title)
        rows = read_rows(raw.problems, book, found, sheet.key, sheet.columns) if found is not None else []
        raw.rows[sheet.key] = rows
    return raw


def _lost_sheets(raw: RawSurvey, book: Book) -> None:
    """A sheet that was given nearly the right title would be skipped without a word."""
    wanted = [START_TITLE, *(sheet.title for sheet in SHEETS)]
    missing = [title for title in wanted if title.lower() not in book.titles]
    for lowered, title in book.titles.items():
        if lowered not in {name.lower() for name in wanted} and close_to(title, missing):
            place = Place(book.file, book.shown.sheetnames.index(title) + 1, 0, 0, title)
            raw.problems.append(FileProblem(place, f"a sheet '{title}'", close_to(title, missing)[13:-1] + " as title"))


def _start(raw: RawSurvey, book: Book, sheet: Worksheet) -> None:
    """Labels with their value in the next cell to the right, and the list of rooms."""
    raw.home.place = book.place(sheet, 1, 1)
    labels = {column.heading.lower(): column for column in (*HOME, *MONEY)}
    for row in range(1, min(sheet.max_row, HEADINGS_WITHIN) + 1):
        for at in range(1, min(sheet.max_column, LAST_COLUMN) + 1):
            column = labels.get(_text(sheet, row, at))
            if column is None:
                continue
            cell = book.cell(sheet, row, at + 1)
            if column in HOME:
                raw.home.empty[column.field] = book.place(sheet, row, at + 1)
                if cell is not None:
                    raw.home.cells[column.field] = cell
            elif cell is not None:
                raw.brief[column.field] = (cell.value, cell.place)
    raw.rows["rooms"] = read_rows(raw.problems, book, sheet, "rooms", ROOMS)


def read_labels(book: Book, sheet: Worksheet, columns: tuple[Column, ...], row: RawRow) -> None:
    """Put the cell to the right of each label into `row`."""
    labels = {column.heading.lower(): column.field for column in columns}
    for number in range(1, min(sheet.max_row, HEADINGS_WITHIN) + 1):
        for at in range(1, min(sheet.max_column, LAST_COLUMN) + 1):
            field = labels.get(_text(sheet, number, at))
            if field is None or field in row.cells:
                continue
            row.empty[field] = book.place(sheet, number, at + 1)
            cell = book.cell(sheet, number, at + 1)
            if cell is not None:
                row.cells[field] = cell


def _headings(sheet: Worksheet, columns: tuple[Column, ...]) -> tuple[int, dict[int, Column]]:
    """The row of headings (the one with most of them; 0 for none) and the columns by their place."""
    by_text = {column.heading.lower(): column for column in columns}
    best: tuple[int, dict[int, Column]] = (0, {})
    for row in range(1, min(sheet.max_row, HEADINGS_WITHIN) + 1):
        found: dict[int, Column] = {}
        for at in range(1, min(sheet.max_column, LAST_COLUMN) + 1):
            column = by_text.get(_text(sheet, row, at))
            if column is not None and column not in found.values():
                found[at] = column
        if len(found) > len(best[1]):
            best = (row, found)
    return best


def read_rows(
    problems: list[FileProblem],
    book: Book,
    sheet: Worksheet,
    table: str,
    columns: tuple[Column, ...],
    last: int = LAST_ROW,
) -> list[RawRow]:
    """The lines under the headings of a sheet, down to row `last`; what is wrong with the headings is noted."""
    head, found = _headings(sheet, columns)
    if len(found) < 2:
        if any(sheet.iter_rows(max_row=1, values_only=True)):
            wanted = ", ".join(column.heading for column in columns[:4])
            problems.append(FileProblem(book.place(sheet, 4, 1), "no headings", f"headings such as {wanted}"))
        return []
    _lost_headings(problems, book, sheet, head, found, columns)
    _too_low(problems, book, sheet, tuple(found), last)
    first = head + 2 if _is_hints(sheet, head + 1, found) else head + 1
    rows = []
    for number in range(first, min(sheet.max_row, last) + 1):
        row = RawRow(table, book.place(sheet, number, min(found)))
        for at, column in found.items():
            cell = book.cell(sheet, number, at)
            row.empty[column.field] = book.place(sheet, number, at)
            if cell is not None:
                row.cells[column.field] = cell
        if row.cells:
            rows.append(row)
    return rows


def _too_low(problems: list[FileProblem], book: Book, sheet: Worksheet, columns: tuple[int, ...], last: int) -> None:
    """What stands under a heading below the last row that is read would be missed without a word: the first cell."""
    typed = (at for at, cell in sheet._cells.items() if at[0] > last and at[1] in columns and cell.value is not None)
    low = min(typed, default=None)
    if low is not None:
        problems.append(FileProblem(book.place(sheet, *low), f"a line in row {low[0]:,}", LOW.format(last), MOVE_UP))


def _is_hints(sheet: Worksheet, row: int, found: dict[int, Column]) -> bool:
    return any(column.hint and sheet.cell(row, at).value == column.hint for at, column in found.items())


def _lost_headings(
    problems: list[FileProblem],
    book: Book,
    sheet: Worksheet,
    head: int,
    found: dict[int, Column],
    columns: tuple[Column, ...],
) -> None:
    """A heading that is missing is told if the column is needed, or if something nearly like it is there."""
    missing = [column for column in columns if column not in found.values()]
    known = {column.heading.lower() for column in columns}
    for at in range(1, min(sheet.max_column, LAST_COLUMN) + 1):
        text = sheet.cell(head, at).value
        if isinstance(text, str) and at not in found and text.strip().lower() not in known:
            near = close_to(text.strip(), [column.heading for column in missing])
            if near:
                heading = near[13:-1]
                missing = [column for column in missing if column.heading != heading]
                problem = FileProblem(book.place(sheet, head, at), f"the heading '{text}'", f"the heading '{heading}'")
                problems.append(problem)
    for column in missing:
        if column.needed or column.needed_for:
            wanted = f"a column with the heading '{column.heading}'"
            problems.append(FileProblem(book.place(sheet, head, min(found)), "no such column", wanted))


def marked(path: Path, problems: Iterable[FileProblem]) -> bytes:
    """A copy of the workbook with a note on each bad cell and the tab of its sheet turned red."""
    whole = book_of(book_bytes(path, []) or b"", path.name, [])
    if whole is None:
        return b""
    book = whole.typed
    disarm(book, whole.shown)
    notes: dict[tuple[str, int, int], list[str]] = {}
    for problem in sorted(problems):
        place = problem.place
        if place.file == path.name and 0 < place.sheet_index <= len(book.sheetnames):
            key = (book.sheetnames[place.sheet_index - 1], max(place.row, 1), max(place.column, 1))
            found, wanted, todo = map(shortened, (problem.found, problem.wanted, problem.todo))
            notes.setdefault(key, []).append(f"Found {found}, wanted {wanted}. {todo}".strip())
    for (title, row, column), texts in notes.items():
        cell = book[title].cell(row, column)
        if isinstance(cell, Cell):
            cell.comment = Comment("\n".join(texts), "budgetfix", height=120, width=320)
            cell.fill = PatternFill("solid", start_color="F3B8A2", end_color="F3B8A2")
        book[title].sheet_properties.tabColor = MARK
    saved = io.BytesIO()
    book.save(saved)
    return saved.getvalue()
