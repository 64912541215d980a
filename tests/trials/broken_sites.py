"""Every place of a job's files where a value can be typed over, and the label by which a message must call it."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from openpyxl.utils import get_column_letter

from tests.trials.broken_fields import HEADINGS, role, sort_of
from tests.trials.broken_jobs import Job
from tests.trials.broken_sheets import Page, book_bytes, copied
from tests.trials.broken_yaml import Path, Spot, spelled, spots, typed_over


@dataclass(frozen=True)
class Site:
    """`spot`: in YAML; else `row` and `column`, from 0 in a CSV, from 1 on the `page` of a workbook.

    `table`: of which it is a part; `line`: which line of that table, the same for all of its values.
    """

    file: str
    label: str
    sort: str
    table: str = ""
    line: tuple[str | int, ...] = ()
    spot: Spot | None = None
    page: str = ""
    row: int = 0
    column: int = 0
    held: object = ""
    """What stands there."""


@lru_cache(maxsize=16)
def sites(job: Job) -> tuple[Site, ...]:
    """Every filled value whose field is read."""
    found: list[Site] = []
    for file, data in job.files:
        if file.endswith(".yaml"):
            found += [_in_yaml(file, spot) for spot in spots(data.decode())]
        elif file.endswith(".csv"):
            found += _in_csv(file, data)
        elif role(file) in HEADINGS:
            found += [site for page in job.pages(file) for site in _in_page(file, page)]
    return tuple(found)


def _in_yaml(file: str, spot: Spot) -> Site:
    path: Path = spot.path
    return Site(
        file,
        f"line {spot.line}",
        sort_of(file, path),
        str(path[0]),
        (file, *path[:2]),
        spot,
        held=spot.text.strip("'\""),
    )


def rows_of(data: bytes) -> list[list[str]]:
    """The fields of a CSV of ours."""
    return list(csv.reader(io.StringIO(data.decode(), newline="")))


def csv_bytes(rows: Iterable[Iterable[object]], sign: str = ",", end: str = "\r\n") -> bytes:
    """And back."""
    saved = io.StringIO()
    csv.writer(saved, delimiter=sign, lineterminator=end).writerows(rows)
    return saved.getvalue().encode()


def _in_csv(file: str, data: bytes) -> list[Site]:
    heads, *rows = rows_of(data)
    table = "remedies" if role(file) == "catalog" else "faults"
    return [
        Site(file, f"{get_column_letter(at + 1)}{number + 1}", _csv_sort(file, table, head), table, (file, number),
             row=number, column=at, held=row[at])
        for number, row in enumerate(rows, start=1)
        for at, head in enumerate(heads)
        if row[at]
    ]  # fmt: skip


def _csv_sort(file: str, table: str, head: str) -> str:
    return sort_of(file, (table, 0, head))


def _in_page(file: str, page: Page) -> list[Site]:
    table, fields = HEADINGS[role(file)].get(page.title, ("", {}))
    row, columns = heads_of(page, fields)
    return [
        Site(file, page.label(*at), sort_of(file, (table, 0, columns[at[1]])), table, (file, page.title, at[0]),
             page=page.title, row=at[0], column=at[1], held=page.cells[at])
        for at in sorted(page.cells)
        if at[0] > row + 1 and at[1] in columns
    ]  # fmt: skip


def heads_of(page: Page, fields: dict[str, str]) -> tuple[int, dict[int, str]]:
    """The row of the headings, and fields by column."""
    found: dict[int, dict[int, str]] = {}
    for (row, column), value in page.cells.items():
        if isinstance(value, str) and value in fields:
            found.setdefault(row, {})[column] = fields[value]
    row = max(found, key=lambda one: len(found[one]), default=0)
    return row, found.get(row, {})


def spoilt(job: Job, typed: Iterable[tuple[Site, object]]) -> dict[str, bytes]:
    """The job's files with other values at these sites."""
    files, by_file = job.parts(), dict[str, list[tuple[Site, object]]]()
    for site, value in typed:
        by_file.setdefault(site.file, []).append((site, value))
    for file, changes in by_file.items():
        files[file] = _with(job, file, changes)
    return files


def _with(job: Job, file: str, changes: list[tuple[Site, object]]) -> bytes:
    data = dict(job.files)[file]
    if file.endswith(".yaml"):
        there = [(site.spot, value) for site, value in changes if site.spot is not None]
        spans = [(spot.start, spot.end, spelled(value)) for spot, value in there]
        return typed_over(data.decode(), spans).encode()
    if file.endswith(".csv"):
        rows: list[list[object]] = [list(row) for row in rows_of(data)]
        for site, value in changes:
            rows[site.row][site.column] = value
        return csv_bytes(rows)
    pages = {page.title: page for page in copied(job.pages(file))}
    for site, value in changes:
        pages[site.page].cells[site.row, site.column] = value
    return book_bytes(list(pages.values()))
