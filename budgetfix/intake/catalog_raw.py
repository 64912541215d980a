"""A catalog file before anything is believed: rows by table, from YAML, JSON, CSV or a workbook."""

from __future__ import annotations

import json
import re
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

from budgetfix.base.limits import TEXT_BYTES
from budgetfix.base.problems import FileProblem, Place
from budgetfix.base.signs import forbidden, tidied
from budgetfix.forms.catalog_form import CATALOG_FORM, CATALOG_SHEETS, CATALOG_TOP
from budgetfix.intake.csv_rows import csv_rows
from budgetfix.intake.door import book_bytes, bytes_of
from budgetfix.intake.raw_rows import RawCell, RawRow, close_to
from budgetfix.intake.yaml_lines import YamlFile, load_yaml, parse_yaml

MOST_ROWS = 20_000
_CONTROLS = re.compile(r"\\u00[01]|\\[bf]")
"""How JSON writes what does something: the slow way tells where."""
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
    found = {" ".join(key.split()): value for key, value in pairs}
    if len(found) < len(pairs):
        raise DoubledKey
    return found


def quick_json(path: Path) -> RawCatalog | None:
    """A JSON catalog read without line numbers, fast; None where the slow way must tell what is wrong."""
    text = (bytes_of(path, TEXT_BYTES, []) or b"").decode("utf-8-sig", "replace")
    if not text.lstrip().startswith("{"):
        return None
    try:
        found = json.loads(text, object_pairs_hook=_pairs)
    except (ValueError, RecursionError):
        return None
    said = json.dumps(found, ensure_ascii=False)
    if forbidden(said) or _CONTROLS.search(said) or tidied(said) != said:
        return None
    return _from_data(path.name, found, None) if isinstance(found, dict) else None


def raw_yaml_catalog(path: Path) -> RawCatalog:
    """A YAML catalog with the line of every value."""
    return _of_yaml(load_yaml(path))


def raw_bytes_catalog(data: bytes, name: str) -> RawCatalog:
    """The same from bytes."""
    return _of_yaml(parse_yaml(data, name))


def _of_yaml(file: YamlFile) -> RawCatalog:
    raw = _from_data(file.file, file.data, file)
    raw.problems += file.problems
    return raw


def _from_data(name: str, data: dict[str, object], file: YamlFile | None) -> RawCatalog:
    raw = RawCatalog(name, RawRow("top", Place(name)))
    for key, value in data.items():
        place = file.place(key) if file is not None else Place(name)
        if key not in TABLES:
            raw.top.cells[key] = RawCell(value, place)
        elif isinstance(value, list):
            rows = (_row(name, key, index, item, file, raw.problems) for index, item in enumerate(value))
            raw.rows[key] = [row for row in rows if row is not None]
        elif value is not None:
            raw.problems.append(FileProblem(place, f"'{key}'", "a list, each item behind a dash"))
    return raw


def _row(
    name: str, table: str, index: int, item: object, file: YamlFile | None, problems: list[FileProblem]
) -> RawRow | None:
    place = file.place(table, index) if file is not None else Place(name)
    row = RawRow(table, place)
    if not isinstance(item, dict):
        problems.append(FileProblem(place, f"'{item}'", f"fields such as {table[:-1]}: name"))
        return None
    for key, value in item.items():
        inner = partial(file.place, table, index, str(key)) if file is not None else None
        row.cells[str(key)] = RawCell(value, inner() if inner is not None else place, at=inner)
    return row


def raw_csv_catalog(path: Path) -> RawCatalog:
    """A CSV of remedies (RFC 4180; `;` and tab between fields are taken too)."""
    raw = RawCatalog(path.name, RawRow("top", Place(path.name)))
    known = [column.field for column in CATALOG_FORM["remedies"]]
    numbers = frozenset(column.field for column in CATALOG_FORM["remedies"] if column.kind in ("number", "count"))
    raw.rows["remedies"] = csv_rows(path, "remedies", known, ("remedy",), raw.problems, numbers)
    return raw


def raw_xlsx_catalog(path: Path) -> RawCatalog:
    """A catalog workbook: sheets by title, columns by heading."""
    from budgetfix.intake import survey_xlsx as books

    raw = RawCatalog(path.name, RawRow("top", Place(path.name)))
    data = book_bytes(path, raw.problems)
    book = None if data is None else books.book_of(data, path.name, raw.problems)
    if book is None:
        return raw
    _lost_sheets(raw, list(book.shown.sheetnames))
    for sheet in CATALOG_SHEETS:
        found = book.sheet(sheet.title)
        if found is not None:
            books.read_labels(book, found, CATALOG_TOP, raw.top)
            raw.rows[sheet.key] = books.read_rows(raw.problems, book, found, sheet.key, sheet.columns, MOST_ROWS)
    return raw


def _lost_sheets(raw: RawCatalog, titles: list[str]) -> None:
    """A sheet whose title is nearly right, or a book without any sheet of ours, would be skipped without a word."""
    there = {title.strip().lower() for title in titles}
    missing = [sheet.title for sheet in CATALOG_SHEETS if sheet.title.lower() not in there]
    known = {sheet.title.lower() for sheet in CATALOG_SHEETS}
    for index, title in enumerate(titles, start=1):
        near = close_to(title, missing) if title.strip().lower() not in known else ""
        if near or len(missing) == len(CATALOG_SHEETS):
            wanted = f"sheets named {', '.join(sheet.title for sheet in CATALOG_SHEETS)}"
            raw.problems.append(FileProblem(Place(raw.file, index, 0, 0, title), f"a sheet '{title}'", wanted, near))
