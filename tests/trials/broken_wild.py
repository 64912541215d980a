"""Anything at all, done to the files of a job: nobody says what must come of it, but it must come in words."""

from __future__ import annotations

import io
import random
import zipfile
from collections.abc import Callable
from datetime import date, time

from openpyxl.utils import get_column_letter

from tests.trials.broken_fields import LONG, WRONG
from tests.trials.broken_jobs import Job, looked
from tests.trials.broken_run import Files
from tests.trials.broken_sheets import Error, Formula, Page, Pages, book_bytes, copied
from tests.trials.broken_sites import Site, csv_bytes, rows_of, sites, spoilt
from tests.trials.broken_yaml import spots, typed_over

Changed = dict[str, bytes | None]
ANY: tuple[object, ...] = (
    *dict.fromkeys(repr(value) for values in WRONG.values() for value in values if isinstance(value, str)), -1, 0, 1,
    2.5, 1e15, 1e16, 1e300, -1e300, LONG, -LONG, True, False, date(1, 1, 1), date(9999, 12, 31), "", " ", "\t", "x\ny",
    "=1+1", "#REF!", "nan", "inf", "1e400", "½", "²", "٣", "−5", "1,200.50", "1.200,50", "12,5", "5/8", "0 5/8",
    "6' 2\"", "yes", "no", "null", "~", "A", "x" * 40_000, "ß", "İ", "\u202e", "\ufeff", "a;b;c", "a:1;a:2", ":", ";;",
    "9" * 5000, "0x10", "1_000", "[]", "{}", "2026-06-31", "0000-00-00", "24:00", "all", "on", "off", [], {}, [[]],
    [None], {"low": 1}, {"low": 3, "likely": 2, "high": 1}, {"": ""}, [1, "a", None, True], {"a": {"b": [1]}}, None,
)  # fmt: skip
"""What may be typed, pasted or left anywhere."""
IN_CELLS: tuple[object, ...] = (
    *(value for value in ANY if not isinstance(value, list | dict) and value is not None), Error("#REF!"),
    Error("#VALUE!"), Formula("=1/0"), Formula("=A1", 5), Formula("=A1", "text"), time(0, 0), time(23, 59),
    float("1e308"), 0.1 + 0.2, -0.0,
)  # fmt: skip
ROWS_MOST = 40


def wild(job: Job, chance: random.Random) -> Files:
    """One to four changes, of cells or of the shape of a file."""
    files: Changed = dict(job.files)
    if chance.random() < 0.5:
        there = sites(job)
        picked = dict.fromkeys(chance.sample(there, chance.randint(1, 4)))
        return {**files, **spoilt(job, [(site, _value(site, there, chance)) for site in picked])}
    for file in chance.sample(sorted(files), chance.randint(1, min(2, len(files)))):
        if file.endswith(".yaml"):
            files[file] = _text_shaped((files[file] or b"").decode(), chance).encode()
        elif file.endswith(".csv"):
            files[file] = _table_shaped(rows_of(files[file] or b""), chance)
        else:
            files[file] = book_bytes(book_shaped(copied(job.pages(file)), chance))
    return files


def _value(site: Site, there: tuple[Site, ...], chance: random.Random) -> object:
    """Anything, or what stands elsewhere."""
    if chance.random() < 0.3:
        return _held(chance.choice(there))
    return chance.choice(IN_CELLS if site.file.endswith(".xlsx") else ANY)


def _held(site: Site) -> object:
    return site.spot.text.strip("'\"") if site.spot is not None else site.label


STRANGE = (
    "---", "...", "%YAML 1.1", "&a [*a]", "x: &x {y: *x}", "? [a]", "<<: {a: 1}", "- - - -",
    "!!python/object:os.system {}",
    "!!binary aGFsbG8=", "x: !!set {a, b}", "x: !!omap [a: 1]", "x: !own {a: 1}", "x: *nobody", "| text",
    "@x: 1", "`x`: 1",
    "x: 'open", 'x: "open', "x: [1, 2", "x: {a: 1", "[" * 400, "{a: " * 200, "- " * 300, "\x00", "\x07",
    "\u2028", "\ud7ff",
    "null: 1", "1: 1", "true: 1", "[1, 2]: 3", "x: >\n  folded\n  text", "#", "# only words",
    "survey: {unit: in}", "\ufeff",
)  # fmt: skip
LINES: tuple[Callable[[list[str], int, random.Random], None], ...] = (
    lambda lines, at, _: lines.__delitem__(at),
    lambda lines, at, _: lines.insert(at, lines[at]),
    lambda lines, at, _: lines.__setitem__(at, " " + lines[at]),
    lambda lines, at, _: lines.__setitem__(at, lines[at].lstrip()),
    lambda lines, at, _: lines.__setitem__(at, "\t" + lines[at]),
    lambda lines, at, chance: lines.__setitem__(at, lines[at][: chance.randint(0, len(lines[at]))]),
    lambda lines, at, chance: lines.insert(at, chance.choice(STRANGE)),
    lambda lines, at, chance: lines.insert(at, lines.pop(chance.randrange(len(lines)))),
    lambda lines, at, chance: lines.__delitem__(slice(at, at + chance.randint(1, 12))),
)  # fmt: skip
WRAPS = ("!!str {}", "!!int {}", "!!map {}", "&b {}", "[{}]", "{{k: {}}}", "'{}'", "!x {}", "[{0}, {0}]")


def _text_shaped(text: str, chance: random.Random) -> str:
    """Lines lost, doubled, moved, indented; keys called otherwise; tags and anchors put in front of values."""
    if chance.random() < 0.4:
        there = spots(text)
        picked = chance.sample(there, chance.randint(1, 3))
        keys = [spot.key for spot in there if spot.key is not None]
        changes = [(spot.start, spot.end, chance.choice(WRAPS).format(spot.text)) for spot in picked]
        taken = {(start, end) for start, end, _ in changes}
        key = chance.choice(keys)
        if key not in taken:
            changes.append((*key, chance.choice(("zzz", "unit", "name", "'1'", "null", "-1", "walls", "? x", "a b"))))
        return typed_over(text, changes)
    lines = text.split("\n")
    for _ in range(chance.randint(1, 3)):
        if lines:
            chance.choice(LINES)(lines, chance.randrange(len(lines)), chance)
    return "\n".join(lines)


def _table_shaped(rows: list[list[str]], chance: random.Random) -> bytes:
    """Columns and rows of a CSV lost, moved, doubled; signs and ends of lines of all sorts."""
    for _ in range(chance.randint(1, 3)):
        at, along = chance.randrange(len(rows)), chance.randrange(len(rows[0]))
        match chance.randrange(9):
            case 0:
                rows[at].insert(min(along, len(rows[at])), "")
            case 1:
                rows[at] = rows[at][:along]
            case 2:
                rows = [row[:along] + row[along + 1 :] for row in rows]
            case 3:
                rows = [row[: along + 1] + row[along : along + 1] + row[along + 1 :] for row in rows]
            case 4:
                rows.insert(at, list(rows[chance.randrange(len(rows))]))
            case 5:
                del rows[at : at + chance.randint(1, 4)]
            case 6:
                rows[0] = [chance.choice((head, head.upper(), f" {head} ", head + "s", "", "zzz")) for head in rows[0]]
            case 7:
                rows = [row + [""] * chance.choice((1, 30, 800)) for row in rows]
            case _:
                rows[at] = [str(chance.choice(ANY)) for _ in rows[at]]
        if not rows or not rows[0]:
            return b""
    return csv_bytes(rows, chance.choice(",;\t|"), chance.choice(("\n", "\r\n", "\r", "\n\n")))


def book_shaped(pages: Pages, chance: random.Random) -> Pages:
    """Sheets, rows, columns and headings of a workbook lost, moved, doubled, merged, called otherwise."""
    for _ in range(chance.randint(1, 3)):
        page = chance.choice(pages)
        row, column = chance.randint(1, min(page.rows(), ROWS_MOST)), chance.randint(1, page.columns())
        match chance.randrange(10):
            case 0 if len(pages) > 1:
                pages.remove(page)
            case 1:
                name = chance.choice(
                    (page.title + "s", page.title.upper(), "Sheet1", f" {page.title}", page.title[:-1])
                )
                page.title = name if name.lower() not in {one.title.lower() for one in pages} else page.title
            case 2:
                page.moved(row, chance.randint(1, 70), 0, 0)
            case 3:
                page.moved(0, 0, column, chance.randint(1, 3))
            case 4:
                page.cells = {at: value for at, value in page.cells.items() if at[1] != column}
            case 5:
                page.cells = {at: value for at, value in page.cells.items() if at[0] != row}
            case 6:
                _merged(page, row, column, chance)
            case 7:
                _doubled(page, row, chance)
            case 8:
                _swapped(page, chance)
            case _:
                page.cells[row, column] = chance.choice(IN_CELLS)
    return pages


def _merged(page: Page, row: int, column: int, chance: random.Random) -> None:
    last, end = row + chance.randint(0, 3), column + chance.randint(0, 4)
    page.merged.append(f"{get_column_letter(column)}{row}:{get_column_letter(end)}{last}")
    inside = [at for at in page.cells if row <= at[0] <= last and column <= at[1] <= end and at != (row, column)]
    for at in inside:
        del page.cells[at]


def _doubled(page: Page, row: int, chance: random.Random) -> None:
    """A row or the headings a second time."""
    target = chance.choice((row + 1, page.rows() + 1, page.rows() + 3))
    page.cells.update({(target, along): value for (at, along), value in list(page.cells.items()) if at == row})


def _swapped(page: Page, chance: random.Random) -> None:
    if len(page.cells) > 1:
        one, other = chance.sample(sorted(page.cells), 2)
        page.cells[one], page.cells[other] = page.cells[other], page.cells[one]


def damaged(job: Job, chance: random.Random) -> Files:
    """A file whose bytes are not what its name says: cut, flipped, in another encoding, of another program, empty."""
    files: Changed = dict(job.files)
    file = chance.choice(sorted(files))
    data = files[file] or b""
    if file.endswith(".xlsx") and file in dict(looked()) and chance.random() < 0.5:
        data = dict(looked())[file]
    if file.endswith(".xlsx") and chance.random() < 0.4:
        files[file] = _parts_damaged(data, chance)
    elif chance.random() < 0.08:
        files[file] = None
    else:
        files[file] = chance.choice(BYTES)(data, chance)
    if chance.random() < 0.1:
        files.update({file.replace(".yaml", ".xlsx").replace(".csv", ".xlsx"): data})
    return files


def _flipped(data: bytes, chance: random.Random) -> bytes:
    found = bytearray(data)
    for _ in range(chance.randint(1, 12)):
        found[chance.randrange(len(found))] = chance.randrange(256)
    return bytes(found)


def _noise(data: bytes, chance: random.Random) -> bytes:
    at = chance.randint(0, len(data))
    return data[:at] + chance.randbytes(chance.randint(1, 60)) + data[at:]


ODD = (b"", b" ", b"\n", b"\x00", b"\x00" * 500, b"\xff\xfe", b"\xef\xbb\xbf", b"PK\x03\x04", b"{}", b"[]", b"null",
       b"true", b"1", b"{", b'{"a": 1, "a": 2}', b"a,b\n1,2\n", b"<html><table><tr><td>survey</td></tr></table></html>",
       b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + b"\x00" * 600)  # fmt: skip
"""Whole files of nothing, of too little, or of other programs."""
CODES = ("latin-1", "cp1252", "mac-roman", "utf-8")


def _odd(_: bytes, chance: random.Random) -> bytes:
    return chance.choice(ODD)


BYTES: tuple[Callable[[bytes, random.Random], bytes], ...] = (
    lambda data, chance: data[: chance.randrange(len(data))],
    lambda data, chance: data[chance.randrange(len(data)) :],
    _flipped,
    _flipped,
    _noise,
    _odd,
    _odd,
    lambda data, _: data.decode("latin-1").encode("utf-16"),
    lambda data, _: data.decode("latin-1").encode("utf-16-le"),
    lambda data, _: data.decode("latin-1").encode("utf-32"),
    lambda data, chance: data.replace(b"e", "é".encode(chance.choice(CODES)), 3),
    lambda data, _: b"\xef\xbb\xbf\xef\xbb\xbf" + data,
    lambda data, _: data.replace(b"\n", b"\x00\n"),
    lambda data, _: b"%PDF-1.7\n" + data,
    lambda data, _: data + data,
)  # fmt: skip


def _parts_damaged(data: bytes, chance: random.Random) -> bytes:
    """An archive of which one part is missing, cut, noise, or of another kind."""
    saved = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as parts:
        names = parts.namelist()
        bad = chance.choice(names)
        how = chance.randrange(5)
        with zipfile.ZipFile(saved, "w") as made:
            for name in names:
                part = parts.read(name)
                if name == bad:
                    if how == 0:
                        continue
                    part = (part[: chance.randrange(len(part))], b"", _flipped(part, chance), b"<x/>")[how - 1]
                made.writestr(zipfile.ZipInfo(name), part)
    return saved.getvalue()
