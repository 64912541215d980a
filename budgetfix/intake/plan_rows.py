"""The rows of a list in a plan's workbook: headings wherever they stand, rows by their hidden ids."""

from __future__ import annotations

from dataclasses import dataclass

from openpyxl.worksheet.worksheet import Worksheet

from budgetfix.base.problems import FileProblem, Place
from budgetfix.intake.plan_ticks import HEADS_WITHIN, USERS, word
from budgetfix.intake.raw_rows import RawCell
from budgetfix.intake.survey_xlsx import LAST_COLUMN, Book

LAST_ROW = 20_000
ID_HEAD = "id"
NAMES = {"Buy": "product", "Do": "step"}
"""The heading, by sheet, below which a row says what it is."""
MARKS = {"Buy": "product", "Do": "no."}
"""The heading, by sheet, below which only rows of the plan hold something: sums leave it empty."""
CALLED = {"bought": "Bought", "paid in all": "Paid in all", "done": "Done", "real minutes": "Real minutes", "id": "id"}
AS_WRITTEN = "take a copy of the workbook that still has it"


@dataclass(frozen=True)
class Listed:
    """One row: its hidden id ("" for none), what it says it is, and the user's cells by heading (None: empty).

    `ours`: it looks like a row of the plan, whatever became of its id.
    """

    id: str
    name: str
    ours: bool
    cells: dict[str, RawCell | None]
    place: Place


def listed(book: Book, title: str) -> tuple[tuple[Listed, ...], tuple[FileProblem, ...]]:
    """The rows of the sheet Buy or Do below its headings; or what is missing there."""
    sheet = book.sheet(title)
    if sheet is None:
        return (), (FileProblem(Place(book.file), f"no sheet '{title}'", f"the sheet '{title}'", AS_WRITTEN),)
    head, columns, problems = _headings(book, sheet, (ID_HEAD, *USERS[title]))
    if problems:
        return (), problems
    named, marked = (next(iter(columns_of(sheet, head, by[title])), 0) for by in (NAMES, MARKS))
    rows = range(head + 1, min(sheet.max_row, LAST_ROW) + 1)
    return tuple(_row(book, sheet, number, columns, (named, marked)) for number in rows), ()


def _row(book: Book, sheet: Worksheet, number: int, columns: dict[str, int], telling: tuple[int, int]) -> Listed:
    """`telling`: the columns of its name and of what only rows of the plan hold; 0 for none."""
    id = key(sheet.cell(number, columns[ID_HEAD]).value)
    name, mark = (key(sheet.cell(number, at).value) if at else "" for at in telling)
    users = {heading: at for heading, at in columns.items() if heading != ID_HEAD}
    cells = {heading: book.cell(sheet, number, at) for heading, at in users.items()}
    return Listed(id, name, bool(id or mark), cells, book.place(sheet, number, min(users.values())))


def key(value: object) -> str:
    """An id or a name as it is compared: spaces in a row are one."""
    return "" if value is None else " ".join(str(value).split())


def _headings(
    book: Book, sheet: Worksheet, wanted: tuple[str, ...]
) -> tuple[int, dict[str, int], tuple[FileProblem, ...]]:
    """The row with most of the headings, their columns; or what is missing, or there twice."""
    within = range(1, min(sheet.max_row, HEADS_WITHIN) + 1)
    found = {row: {heading: columns_of(sheet, row, heading) for heading in wanted} for row in within}
    head = max(found, key=lambda row: (sum(map(bool, found[row].values())), -row), default=1)
    places = found.get(head, {})
    problems = [_missing(book, sheet, heading) for heading in wanted if not places.get(heading)]
    for heading in wanted:
        problems += [
            FileProblem(
                book.place(sheet, head, at), f"the heading '{CALLED[heading]}' again", "it once", "take one away"
            )
            for at in places.get(heading, [])[1:]
        ]
    return head, {heading: columns[0] for heading, columns in places.items() if columns}, tuple(problems)


def _missing(book: Book, sheet: Worksheet, heading: str) -> FileProblem:
    if heading == ID_HEAD:
        what, wanted = "no hidden column of ids", "the column with the heading 'id' as it was written"
    else:
        what, wanted = f"no heading '{CALLED[heading]}'", f"the heading '{CALLED[heading]}' above its column"
    index = book.shown.sheetnames.index(sheet.title) + 1
    return FileProblem(Place(book.file, index, 0, 0, sheet.title), what, wanted, AS_WRITTEN)


def columns_of(sheet: Worksheet, row: int, heading: str) -> list[int]:
    """Where a heading stands in a row, from the left."""
    last = min(sheet.max_column, LAST_COLUMN)
    return [at for at in range(1, last + 1) if word(sheet.cell(row, at).value) == heading]
