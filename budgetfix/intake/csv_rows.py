"""CSV files (RFC 4180) as rows by heading, each value with the cell that a spreadsheet would show."""

from __future__ import annotations

import csv
import io
import re
from pathlib import Path

from budgetfix.base.limits import COLUMNS, ROWS, TEXT_BYTES
from budgetfix.base.problems import FileProblem, Place
from budgetfix.intake.door import bytes_of
from budgetfix.intake.raw_rows import RawCell, RawRow, close_to

SIGNS = (",", ";", "\t")
"""What may stand between fields: spreadsheet programs of some countries write semicolons."""
_COMMA = re.compile(r"-?\d+,(\d{1,2}|\d{4,15})")


def csv_rows(
    path: Path,
    table: str,
    known: list[str],
    needed: tuple[str, ...],
    problems: list[FileProblem],
    numbers: frozenset[str] = frozenset(),
) -> list[RawRow]:
    """The rows of a file, or none where its headings are not to be used.

    `numbers`: headings below which a comma is taken for the point, where no comma stands between fields.
    """
    data = bytes_of(path, TEXT_BYTES, problems)
    if data is None:
        return []
    try:
        sign, lines = _lines(data.decode("utf-8-sig"))
    except UnicodeDecodeError:
        problems.append(FileProblem(Place(path.name), "bytes that are not text", "a file saved as CSV, UTF-8"))
        return []
    except csv.Error as error:
        problems.append(FileProblem(Place(path.name), str(error), "a file saved as CSV"))
        return []
    if len(lines) > ROWS or max(map(len, lines), default=0) > COLUMNS:
        found = f"{len(lines):,} lines of up to {max(map(len, lines)):,} fields"
        problems.append(FileProblem(Place(path.name), found, f"{ROWS:,} lines of {COLUMNS} fields at most"))
        return []
    if not lines or not any(head.strip() for head in lines[0]):
        problems.append(FileProblem(Place(path.name), "no headings", f"headings such as {', '.join(known[:3])}"))
        return []
    heads = [head.strip().lower().replace(" ", "_") for head in lines[0]]
    if not _sound_heads(path.name, heads, known, needed, problems):
        return []
    if sign != ",":
        commas = [at for at, head in enumerate(heads) if head in numbers]
        lines = [_with_points(cells, commas) for cells in lines]
    return [
        _row(path.name, table, number, heads, cells, problems)
        for number, cells in enumerate(lines[1:], start=2)
        if any(cell.strip() for cell in cells)
    ]


def _lines(text: str) -> tuple[str, list[list[str]]]:
    """What stands between fields, and the fields."""
    first = text.splitlines()[0] if text else ""
    sign = max(SIGNS, key=lambda sign: (first.count(sign), sign == ","))
    return sign, list(csv.reader(io.StringIO(text, newline=""), delimiter=sign))


def _with_points(cells: list[str], commas: list[int]) -> list[str]:
    """`12,5` as `12.5` in these columns; three digits may be thousands, and are left for the reader to ask about."""
    return [
        cell.replace(",", ".") if at in commas and _COMMA.fullmatch(cell.strip()) else cell
        for at, cell in enumerate(cells)
    ]


def _sound_heads(
    file: str, heads: list[str], known: list[str], needed: tuple[str, ...], problems: list[FileProblem]
) -> bool:
    """Note headings that are unknown, twice, or missing; True where every needed one is there."""
    for at, head in enumerate(heads, start=1):
        place = csv_place(file, 1, at)
        if head and head in heads[: at - 1]:
            problems.append(FileProblem(place, f"the heading '{head}' again", "each heading once"))
        elif head and head not in known:
            near = close_to(head, [name for name in known if name not in heads])
            problems.append(FileProblem(place, f"the heading '{head}'", f"one of: {', '.join(known)}", near))
    missing = [head for head in needed if head not in heads]
    first = csv_place(file, 1, 1)
    problems += [FileProblem(first, f"no heading '{head}'", f"a column named {head}") for head in missing]
    return not missing


def _row(file: str, table: str, number: int, heads: list[str], cells: list[str], problems: list[FileProblem]) -> RawRow:
    row = RawRow(table, csv_place(file, number, 1))
    for at, head in enumerate(heads):
        place = csv_place(file, number, at + 1)
        row.empty[head] = place
        if head and at < len(cells) and cells[at].strip():
            row.cells[head] = RawCell(cells[at].strip(), place)
    if any(cell.strip() for cell in cells[len(heads) :]):
        place = csv_place(file, number, len(heads) + 1)
        todo = "put text that holds a comma in double quotes"
        problems.append(FileProblem(place, f"{len(cells)} fields", f"{len(heads)}, as in the headings", todo))
    return row


def csv_place(file: str, row: int, column: int) -> Place:
    """`faults.csv [B4]`."""
    letters, left = "", column
    while left > 0:
        left, letter = divmod(left - 1, 26)
        letters = chr(65 + letter) + letters
    return Place(file, 0, row, column, f"{letters}{row}")
