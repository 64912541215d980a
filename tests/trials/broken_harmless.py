"""Changes that do no harm: another program's way of saving, other places, more around. The job is read as the same."""

from __future__ import annotations

import json
import math
import random
from collections.abc import Callable
from datetime import date

from ruamel.yaml import YAML

from budgetfix.forms.survey_form import START_TITLE
from tests.trials.broken_fields import HEADINGS, role
from tests.trials.broken_jobs import Job
from tests.trials.broken_run import Seen
from tests.trials.broken_sheets import Formula, Page, Pages, book_bytes, copied
from tests.trials.broken_sites import csv_bytes, heads_of, rows_of
from tests.trials.broken_yaml import spots, typed_over

Rows = list[list[str]]


def harmless(job: Job, chance: random.Random) -> tuple[dict[str, bytes], str]:
    """The job saved otherwise, and how."""
    files, said = job.parts(), []
    for file in sorted(files):
        if chance.random() < 0.3 and len(files) > 1:
            continue
        if file.endswith(".yaml"):
            name, how = chance.choice(TEXTS)
            files[file] = how(files[file].decode(), chance)
        elif file.endswith(".csv"):
            name, how_rows = chance.choice(TABLES)
            files[file] = how_rows(rows_of(files[file]), chance)
        else:
            name, how_pages = chance.choice(BOOKS)
            files[file] = book_bytes(how_pages(copied(job.pages(file)), chance, file))
        said.append(f"{file} {name}")
    return files, ", ".join(said)


def judge(found: Seen, same: Seen, how: str) -> None:
    """Read as what the job is without the change."""
    if found.refused or found.job is None:
        found.fault("same", f"{how}: refused: {found.err[:200]!r}")
        return
    assert same.job is not None
    one, other = found.job, same.job
    parts = ("survey", "brief", "catalog", "faults")
    other_parts = [part for part in parts if getattr(one, part) != getattr(other, part)]
    if other_parts or found.out != same.out:
        found.fault("same", f"{how}: another {', '.join(other_parts) or 'answer'}")


def _json(text: str, _: random.Random) -> bytes:
    data = YAML(typ="safe", pure=True).load(text)
    return json.dumps(data, default=date.isoformat, indent=1).encode()


def _spaced(text: str, chance: random.Random) -> bytes:
    """Comments and empty lines between those of the file, spaces at their ends."""
    lines = []
    for line in text.split("\n"):
        if chance.random() < 0.2:
            lines.append(chance.choice(("", "# a word", "   ", "  # another")))
        lines.append(line + chance.choice(("", "  ", " # a word" if line.strip() else "")))
    return "\n".join(lines).encode()


def _quoted(text: str, chance: random.Random) -> bytes:
    """Words in quotes that had none."""
    there = [spot for spot in spots(text) if spot.text.isalpha() and spot.text not in ("true", "false", "null")]
    sign = chance.choice("'\"")
    picked = [spot for spot in there if chance.random() < 0.5]
    return typed_over(text, [(spot.start, spot.end, f"{sign}{spot.text}{sign}") for spot in picked]).encode()


def _anchored(text: str, _: random.Random) -> bytes:
    """A word that stands often is written once, and pointed to after that."""
    there = [spot for spot in spots(text) if spot.text.isalpha() and len(spot.text) > 2]
    words = [spot.text for spot in there]
    if not words:
        return text.encode()
    word = max(sorted(set(words)), key=words.count)
    first, *rest = [spot for spot in there if spot.text == word]
    changes = [(first.start, first.end, f"&same {word}"), *((one.start, one.end, "*same ") for one in rest)]
    return typed_over(text, changes).encode()


TEXTS: tuple[tuple[str, Callable[[str, random.Random], bytes]], ...] = (
    ("with CRLF", lambda text, _: text.replace("\n", "\r\n").encode()),
    ("with a byte order mark", lambda text, _: b"\xef\xbb\xbf" + text.encode()),
    ("with a mark of documents", lambda text, _: b"%YAML 1.2\n---\n" + text.encode() + b"\n...\n"),
    ("as JSON", _json),
    ("with comments and spaces", _spaced),
    ("with quotes", _quoted),
    ("with anchors", _anchored),
)


def _points(rows: Rows, _: random.Random) -> bytes:
    """As programs of half of Europe save it: semicolons between fields, commas in numbers."""
    numbers = [at for at, head in enumerate(rows[0]) if head in ("cost", "hours", "points")]
    changed = [
        [cell.replace(".", ",") if at in numbers and number else cell for at, cell in enumerate(row)]
        for number, row in enumerate(rows)
    ]
    return csv_bytes(changed, ";")


def _moved(rows: Rows, chance: random.Random) -> bytes:
    order = list(range(len(rows[0])))
    chance.shuffle(order)
    return csv_bytes([[row[at] for at in order] for row in rows])


def _around(rows: Rows, chance: random.Random) -> bytes:
    """Empty lines between rows, empty columns behind."""
    found: Rows = []
    for row in rows:
        found += [[*row, "", ""], *([[""] * len(row)] if chance.random() < 0.3 else [])]
    return csv_bytes(found)


TABLES: tuple[tuple[str, Callable[[Rows, random.Random], bytes]], ...] = (
    ("with semicolons", lambda rows, _: csv_bytes(rows, ";")),
    ("with semicolons and decimal commas", _points),
    ("with tabs", lambda rows, _: csv_bytes(rows, "\t")),
    ("with LF", lambda rows, _: csv_bytes(rows, end="\n")),
    ("with CR", lambda rows, _: csv_bytes(rows, end="\r")),
    ("with a byte order mark", lambda rows, _: b"\xef\xbb\xbf" + csv_bytes(rows)),
    ("with its columns moved", _moved),
    ("with empty lines and columns", _around),
    ("with big letters in its headings", lambda rows, _: csv_bytes([[one.upper() for one in rows[0]], *rows[1:]])),
)


def _more_sheets(pages: Pages, chance: random.Random, _: str) -> Pages:
    notes = Page("My notes", {(row, 1): "Measured on Sunday" for row in range(1, 4)})
    pages.insert(chance.randint(0, len(pages)), notes)
    return pages


def _lower(pages: Pages, chance: random.Random, _: str) -> Pages:
    """Empty rows above everything."""
    for page in pages:
        page.moved(1, chance.randint(0, 5), 0, 0)
    return pages


def _aside(pages: Pages, chance: random.Random, _: str) -> Pages:
    """Columns put in at the left."""
    for page in pages:
        page.moved(0, 0, 1, chance.randint(0, 4))
    return pages


def _columns_moved(pages: Pages, chance: random.Random, file: str) -> Pages:
    """The columns of every list in another order."""
    for page in pages:
        head, columns = heads_of(page, HEADINGS[role(file)].get(page.title, ("", {}))[1])
        if page.title == START_TITLE or not columns:
            continue
        order = list(columns)
        chance.shuffle(order)
        places = dict(zip(columns, order, strict=True))
        page.cells = {
            (row, places.get(at, at) if row >= head else at): value for (row, at), value in page.cells.items()
        }
    return pages


def _gaps(pages: Pages, chance: random.Random, file: str) -> Pages:
    """Empty rows between the lines of every list."""
    for page in pages:
        head, columns = heads_of(page, HEADINGS[role(file)].get(page.title, ("", {}))[1])
        for row in range(page.rows(), head + 2, -1):
            if columns and chance.random() < 0.2:
                page.moved(row, 1, 0, 0)
    return pages


def _live(pages: Pages, chance: random.Random, _: str) -> Pages:
    """Numbers that are worked out, with their results stored."""
    for page in pages:
        for at, value in page.cells.items():
            if isinstance(value, int | float) and not isinstance(value, bool) and chance.random() < 0.3:
                page.cells[at] = Formula(f"={value}*1", _dusty(value))
    return pages


def _dusty(value: float) -> float:
    """As binary sums come out: 0.1 + 0.2 is 0.30000000000000004."""
    return value if isinstance(value, int) else math.nextafter(value, math.inf)


def _as_text(pages: Pages, chance: random.Random, _: str) -> Pages:
    """Numbers saved as text."""
    for page in pages:
        for at, value in page.cells.items():
            if isinstance(value, int | float) and not isinstance(value, bool) and chance.random() < 0.3:
                page.cells[at] = f" {value}"
    return pages


def _spaced_heads(pages: Pages, chance: random.Random, file: str) -> Pages:
    """Headings with other letters and spaces around them."""
    for page in pages:
        head, columns = heads_of(page, HEADINGS[role(file)].get(page.title, ("", {}))[1])
        for column in columns:
            word = str(page.cells[head, column])
            page.cells[head, column] = chance.choice((word.upper(), f" {word} ", word.lower(), word.replace(" ", "\n")))
    return pages


BOOKS: tuple[tuple[str, Callable[[Pages, random.Random, str], Pages]], ...] = (
    ("with a sheet of notes", _more_sheets),
    ("with its sheets in another order", lambda pages, chance, _: chance.sample(pages, len(pages))),
    ("with empty rows above", _lower),
    ("with empty columns at the left", _aside),
    ("with its columns moved", _columns_moved),
    ("with empty rows between lines", _gaps),
    ("with live numbers", _live),
    ("with numbers as text", _as_text),
    ("with its headings spelled otherwise", _spaced_heads),
)
