"""A catalog file before anything is believed: rows by table, from YAML, JSON, CSV or a workbook."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path

from budgetfix.base.problems import FileProblem, Place
from budgetfix.forms.catalog_form import CATALOG_FORM, CATALOG_SHEETS, CATALOG_TOP
from budgetfix.intake.raw_rows import RawCell, RawRow, close_to
from budgetfix.intake.yaml_lines import YamlFile, load_yaml

TABLES = ("tools", "shops", "products", "remedies")


@dataclass
class RawCatalog:
    """Rows by table (`steps` only from a workbook), and what stands on top."""

    file: str
    top: RawRow
    rows: dict[str, list[RawRow]] = field(default_factory=dict)
    problems: list[FileProblem] = field(default_factory=list)


class DoubledKey(ValueError):
    """A key stands twice in one JSON object."""


def _pairs(pairs: list[tuple[str, object]]) -> dict[str, object]:
    found = dict(pairs)
    if len(found) < len(pairs):
        raise DoubledKey
    return found


def quick_json(path: Path) -> RawCatalog | None:
    """A JSON catalog read without line numbers, fast; None where the slow way must tell what is wrong."""
    text = path.read_bytes().decode("utf-8-sig", "replace")
    if not text.lstrip().startswith("{"):
        return None
    try:
        data = json.loads(text, object_pairs_hook=_pairs, parse_float=Decimal)
    except (json.JSONDecodeError, DoubledKey):
        return None
    return _from_data(path.name, data, None) if isinstance(data, dict) else None


def raw_yaml_catalog(path: Path) -> RawCatalog:
    """A YAML catalog with the line of every value. Errors: OSError."""
    file = load_yaml(path)
    raw = _from_data(path.name, file.data, file)
    raw.problems += file.problems
    return raw


def _from_data(name: str, data: dict[str, object], file: YamlFile | None) -> RawCatalog:
    raw = RawCatalog(name, RawRow("top", Place(name)))
    for key, value in data.items():
        place = file.place(key) if file is not None else Place(name)
        if key not in TABLES:
            raw.top.cells[key] = RawCell(value, place)
        elif isinstance(value, list):
            raw.rows[key] = [_row(name, key, index, item, file, raw.problems) for index, item in enumerate(value)]
        elif value is not None:
            raw.problems.append(FileProblem(place, f"'{key}'", "a list, each item behind a dash"))
    return raw


def _row(
    name: str, table: str, index: int, item: object, file: YamlFile | None, problems: list[FileProblem]
) -> RawRow:
    place = file.place(table, index) if file is not None else Place(name)
    row = RawRow(table, place)
    if not isinstance(item, dict):
        problems.append(FileProblem(place, f"'{item}'", f"fields such as {table[:-1]}: name"))
        return row
    for key, value in item.items():
        row.cells[str(key)] = RawCell(value, file.place(table, index, str(key)) if file is not None else place)
    return row


def raw_csv_catalog(path: Path) -> RawCatalog:
    """A CSV of remedies (RFC 4180; `;` and tab between fields are taken too). Errors: OSError."""
    raw = RawCatalog(path.name, RawRow("top", Place(path.name)))
    raw.rows["remedies"] = csv_rows(path, "remedies", [c.field for c in CATALOG_FORM["remedies"]], raw.problems)
    return raw


def csv_rows(path: Path, table: str, known: list[str], problems: list[FileProblem]) -> list[RawRow]:
    """The rows of a CSV file by heading, with the cell that a spreadsheet would show. Errors: OSError."""
    try:
        text = path.read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError:
        problems.append(FileProblem(Place(path.name), "bytes that are not text", "a file saved as CSV, UTF-8"))
        return []
    lines = list(csv.reader(io.StringIO(text, newline=""), delimiter=_delimiter(text)))
    if not lines:
        problems.append(FileProblem(Place(path.name), "an empty file", f"headings such as {', '.join(known[:3])}"))
        return []
    heads = [head.strip().lower().replace(" ", "_") for head in lines[0]]
    for at, head in enumerate(heads):
        if head and head not in known:
            problems.append(
                FileProblem(csv_place(path.name, 1, at + 1), f"the heading '{head}'", "a heading that is known here",
                            close_to(head, known))
            )  # fmt: skip
    rows = []
    for number, cells in enumerate(lines[1:], start=2):
        if not any(cell.strip() for cell in cells):
            continue
        row = RawRow(table, csv_place(path.name, number, 1))
        for at, head in enumerate(heads):
            place = csv_place(path.name, number, at + 1)
            row.empty[head] = place
            if at < len(cells) and cells[at].strip():
                row.cells[head] = RawCell(cells[at].strip(), place)
        if len(cells) > len(heads):
            problems.append(
                FileProblem(csv_place(path.name, number, len(heads) + 1), f"{len(cells)} fields",
                            f"{len(heads)}, as in the headings", "put text with a comma in double quotes")
            )  # fmt: skip
        rows.append(row)
    return rows


def csv_place(file: str, row: int, column: int) -> Place:
    """`faults.csv [B4]`."""
    letter = chr(64 + column) if column <= 26 else f"column {column} row "
    return Place(file, 0, row, column, f"{letter}{row}")


def _delimiter(text: str) -> str:
    first = text.splitlines()[0] if text else ""
    return max((",", ";", "\t"), key=lambda sign: (first.count(sign), sign == ","))


def raw_xlsx_catalog(path: Path) -> RawCatalog:
    """A catalog workbook: sheets by title, columns by heading. Errors: OSError."""
    from budgetfix.intake import survey_xlsx as books

    raw = RawCatalog(path.name, RawRow("top", Place(path.name)))
    data = path.read_bytes()
    shown, typed = books.open_book(data, True), books.open_book(data, False)
    if shown is None or typed is None:
        raw.problems.append(FileProblem(Place(path.name), "a file that is no workbook", "a workbook saved as .xlsx"))
        return raw
    book = books.Book(path.name, shown, typed)
    for sheet in CATALOG_SHEETS:
        found = book.sheet(sheet.title)
        if found is not None:
            books.read_labels(book, found, CATALOG_TOP, raw.top)
            raw.rows[sheet.key] = books.read_rows(raw.problems, book, found, sheet.key, sheet.columns)
    return raw
