"""What a plan of hostile words wrote, looked through: nothing in it runs, and everything is read back."""

from __future__ import annotations

import csv
import io
import json
import re
import warnings
import zipfile
from collections import Counter
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

import icalendar
import openpyxl

from tests.trials.hostile_texts import MARK

RISKY = ("=", "+", "-", "@", "\t", "\r")
"""How a formula may begin (OWASP, CSV injection)."""
LIVE = re.compile(
    r"externalLink|vbaProject|embeddings|connections|oleObject|activeX|TargetMode=.External", re.IGNORECASE
)
LINKED = "=HYPERLINK("
LINK = re.compile(r'=HYPERLINK\("(?:#|(?![a-z]+:|[/\\]))(?:[^"]|"")*","(?:[^"]|"")*"\)', re.IGNORECASE)
"""One link to a place in this workbook or beside it, with nothing after it."""
SIGNS = (
    "circle",
    "defs",
    "desc",
    "g",
    "line",
    "path",
    "pattern",
    "polygon",
    "polyline",
    "rect",
    "text",
    "title",
    "tspan",
)
"""What drawings are made of; how many lines lead to a name depends on how long the name is."""
LINKS = ("href", "src", "action", "formaction", "data", "xlink:href", "srcdoc")


def judged(folder: Path, shape: dict[str, object]) -> Iterator[tuple[str, str]]:
    """Breaks in the files of a folder. `shape`: that of the same job with harmless words."""
    for path in sorted(folder.glob("*.csv")):
        if path.name != "faults.csv":
            yield from _table(path)
    for path in sorted(folder.glob("*.xlsx")):
        yield from _book(path)
    for path in sorted(folder.glob("*.html")):
        yield from _page(path)
    found = shape_of(folder)
    for what in sorted(shape):
        if found.get(what) != shape[what]:
            yield ("page" if "html" in what else "read back"), f"{what}: {_apart(found.get(what), shape[what])}"


def _apart(found: object, wanted: object) -> str:
    if isinstance(found, Counter) and isinstance(wanted, Counter):
        return f"{dict(found - wanted)} too many, {dict(wanted - found)} missing"
    return f"{found}, not {wanted}"


def shape_of(folder: Path) -> dict[str, object]:
    """How many rows, entries, elements and sheets the files have: no word can make more of them."""
    found: dict[str, object] = {}
    for path in sorted(folder.glob("*.csv")):
        if path.name != "faults.csv":
            found[f"rows of {path.name}"] = [len(row) for row in _rows(path)]
    for number, path in enumerate(sorted(folder.glob("*.ics"))):
        read = icalendar.Calendar.from_ical(path.read_bytes())
        found[f"entries of calendar {number}"] = Counter(part.name for part in read.walk())
        found[f"keys of calendar {number}"] = Counter(key for part in read.walk() for key in part)
    for path in sorted(folder.glob("*.html")):
        found[f"elements of {path.name}"] = Counter(Page(path).tags)
    for path in sorted(folder.glob("*.xlsx")):
        book = _opened(path)
        found[f"sheets of {path.name}"] = len(book.sheetnames)
        found[f"formulas of {path.name}"] = sum(
            cell.data_type == "f" and not str(cell.value).startswith(LINKED)
            for sheet in book
            for row in sheet
            for cell in row
        )
    return found


def _opened(path: Path) -> openpyxl.Workbook:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return openpyxl.load_workbook(path)


def _rows(path: Path) -> list[list[str]]:
    return list(csv.reader(io.StringIO(path.read_bytes().decode(), newline="")))


def _table(path: Path) -> Iterator[tuple[str, str]]:
    for row in _rows(path):
        for cell in row:
            if cell.startswith(RISKY) and not re.fullmatch(r"-?[0-9.]+", cell) and not re.match(r"\+\d+:\d\d", cell):
                yield "formulas", f"{path.name} holds {cell[:60]!r}"


def _book(path: Path) -> Iterator[tuple[str, str]]:
    with zipfile.ZipFile(path) as parcel:
        for name in parcel.namelist():
            text = parcel.read(name).decode("utf-8", "replace") if name.endswith((".rels", ".xml")) else ""
            if LIVE.search(name) or (name.endswith(".rels") and LIVE.search(text)):
                yield "formulas", f"{path.name} holds {name}"
    for sheet in _opened(path):
        for row in sheet:
            for cell in row:
                if cell.hyperlink is not None and cell.hyperlink.target:
                    yield "formulas", f"{path.name} links from {cell.coordinate}"
                if cell.data_type == "f" and _reaching(str(cell.value)):
                    yield "formulas", f"{path.name} reaches by {str(cell.value)[:60]!r}"
                if cell.data_type == "f" and MARK in json.dumps(str(cell.value)):
                    yield "formulas", f"{path.name} works out {str(cell.value)[:60]!r}"


def _reaching(formula: str) -> bool:
    """True for a link to anything but the plan of a job in the folder beside."""
    return formula.startswith(LINKED) and LINK.fullmatch(formula) is None


class Page(HTMLParser):
    """Elements of a page, and what in their attributes would run or reach out."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.live: list[str] = []
        self.drawings = 0
        self.feed(path.read_text("utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if self.drawings and tag not in SIGNS:
            self.live.append(f"<{tag}> in a drawing")
        elif not self.drawings and tag not in ("b", "br"):
            self.tags.append(tag)
        self.drawings += tag == "svg"
        for name, value in attrs:
            out = name in LINKS and not (value or "").startswith(("#", "data:image/"))
            if name.startswith("on") or out or MARK in name:
                self.live.append(f"<{tag} {name}={value!r}>"[:80])

    def handle_endtag(self, tag: str) -> None:
        self.drawings -= tag == "svg" and self.drawings > 0


def _page(path: Path) -> Iterator[tuple[str, str]]:
    for one in Page(path).live:
        yield "page", f"{path.name} holds {one}"
