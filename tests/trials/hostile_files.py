"""Files made to hurt whoever opens them: parcels that grow, lists that repeat, names that are no files."""

from __future__ import annotations

import io
import os
import random
import zipfile
from collections.abc import Callable
from functools import lru_cache
from pathlib import Path

import openpyxl

SHEET = "xl/worksheets/sheet1.xml"
MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
TIES = "http://schemas.openxmlformats.org/package/2006/relationships"
OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
PARTS = {
    "sheet": SHEET,
    "texts": "xl/sharedStrings.xml",
    "styles": "xl/styles.xml",
    "ties": "xl/worksheets/_rels/sheet1.xml.rels",
}
PROGRAMS = ("xl/vbaProject.bin", "xl/macrosheets/sheet1.xml")
PICTURE = (
    f'<Relationships xmlns="{TIES}"><Relationship Id="a" Type="{OFFICE}/image" Target="http://zqx.invalid/a.png" '
    'TargetMode="External"/></Relationships>'
)
LONG = f'<row><c><f t="shared" ref="A1:A9" si="0">{"1+" * 4_000}1</f></c></row>'
SHARING = '<row><c><f t="shared" si="0"/></c></row>'
WIDE = "<?xml version='1.0' encoding='UTF-16'?><!DOCTYPE a><a/>".encode("utf-16")
DOCTYPE = '<?xml version="1.0"?><!DOCTYPE a [<!ENTITY x SYSTEM "file:///etc/passwd">]>'
LAUGHS = "".join(f'<!ENTITY a{at} "{f"&a{at - 1};" * 10 if at else "ha"}">' for at in range(9))


@lru_cache(maxsize=1)
def _plain() -> dict[str, bytes]:
    book = openpyxl.Workbook()
    page = book.worksheets[0]
    page.title = "Walls"
    page["A1"] = "Wall"
    saved = io.BytesIO()
    book.save(saved)
    with zipfile.ZipFile(io.BytesIO(saved.getvalue())) as parcel:
        return {name: parcel.read(name) for name in parcel.namelist()}


def book() -> bytes:
    """A workbook as openpyxl saves it."""
    return packed(_plain())


def packed(parts: dict[str, bytes]) -> bytes:
    """Parts as a parcel, deflated."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as parcel:
        for name, data in parts.items():
            parcel.writestr(name, data)
    return made.getvalue()


def sheet(rows: str, after: str = "", before: str = "") -> bytes:
    """A workbook whose only sheet holds these rows."""
    body = f'{before}<worksheet xmlns="{MAIN}" xmlns:r="{OFFICE}"><sheetData>{rows}</sheetData>{after}</worksheet>'
    return packed({**_plain(), SHEET: body.encode()})


def _lying(data: bytes, size: int) -> bytes:
    """Every part claims so many bytes, whatever it holds."""
    made = bytearray(data)
    at = 0
    while (at := made.find(b"PK\x01\x02", at)) >= 0:
        made[at + 24 : at + 28] = size.to_bytes(4, "little")
        at += 4
    return bytes(made)


def _spaces(millions: int) -> bytes:
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as parcel:
        for name, data in _plain().items():
            if name != SHEET:
                parcel.writestr(name, data)
        with parcel.open(SHEET, "w", force_zip64=True) as part:
            part.write(b"<a>")
            for _ in range(millions):
                part.write(b" " * 1_000_000)
    return made.getvalue()


def _number(chance: random.Random) -> str:
    return str(chance.choice((20_001, 99_999, 1_048_576, 9_999_999)))


def _other(**parts: str) -> bytes:
    """A workbook in which some parts are otherwise."""
    return packed({**_plain(), **{PARTS[name]: text.encode() for name, text in parts.items()}})


def _list(tag: str, inside: str) -> str:
    return f'<{tag} xmlns="{MAIN}">{inside}</{tag}>'


BOOKS: dict[str, Callable[[random.Random], bytes]] = {
    "grows": lambda chance: _spaces(chance.choice((65, 100, 300))),
    "claims little": lambda chance: _lying(_spaces(chance.choice((65, 100))), chance.choice((0, 1, 10_000))),
    "claims much": lambda chance: _lying(book(), chance.choice((70_000_000, 0xFFFFFFF0))),
    "grows aside": lambda _: packed({**_plain(), "xl/media/a.png": b"0" * 40_000_000}),
    "rows": lambda chance: sheet("<row><c><v>1</v></c></row>" * chance.randrange(20_001, 90_000)),
    "far cell": lambda chance: sheet(f'<row r="{_number(chance)}"><c><v>1</v></c></row>'),
    "far right": lambda _: sheet('<row r="1"><c r="XFD1"><v>1</v></c></row>'),
    "far empty": lambda _: sheet('<row r="1048576"><c r="XFD1048576"/></row>'),
    "wide": lambda chance: sheet("<row>" + "<c><v>1</v></c>" * chance.choice((501, 20_000, 100_000)) + "</row>"),
    "merged": lambda chance: sheet("", f'<mergeCells><mergeCell ref="A1:XFD{_number(chance)}"/></mergeCells>'),
    "linked": lambda chance: sheet("", f'<hyperlinks><hyperlink ref="A1:XFD{_number(chance)}"/></hyperlinks>'),
    "entity": lambda _: sheet('<row><c t="inlineStr"><is><t>&x;</t></is></c></row>', before=DOCTYPE),
    "laughs": lambda _: sheet("<row/>&a8;", before=f"<!DOCTYPE a [{LAUGHS}]>"),
    "wide entity": lambda _: packed({**_plain(), SHEET: WIDE}),
    "odd letters": lambda _: packed({**_plain(), SHEET: b'<?xml version="1.0" encoding="cp037"?>' + b"x" * 99}),
    "deep": lambda chance: packed({**_plain(), SHEET: b"<a>" * chance.choice((101, 5_000, 1_000_000))}),
    "parts": lambda _: packed({**_plain(), **{f"xl/x{at}.xml": b"" for at in range(2_100)}}),
    "texts": lambda _: _other(texts=_list("sst", "<si/>" * 1_600_000)),
    "styles": lambda _: _other(styles=_list("styleSheet", "<font/>" * 121_000)),
    "formulas": lambda _: sheet(LONG + SHARING * 9_000),
    "macros": lambda chance: packed({**_plain(), chance.choice(PROGRAMS): b"zqx"}),
    "twice": lambda _: packed({**_plain(), SHEET.upper(): b"<a/>"}),
    "nested": lambda _: packed({"xl/workbook.xml": packed({"a": packed(_plain())})}),
    "outside": lambda _: sheet('<row><c><f>[1]A!A1+cmd|" /C zqx"!A0</f><v>1</v></c></row>'),
    "pictures": lambda _: _other(ties=PICTURE),
    "cut": lambda chance: book()[: chance.randrange(1, 4_000)],
    "no book": lambda chance: chance.randbytes(chance.randrange(0, 9_000)),
    "large": lambda _: b"PK" + bytes(32_000_001),
}  # fmt: skip


def _laughs(times: int) -> str:
    names = ((at, ",".join([f"*a{at - 1}"] * times)) for at in range(1, 40))
    return "a0: &a0 [x,x]\n" + "".join(f"a{at}: &a{at} [{inside}]\n" for at, inside in names)


YAMLS: dict[str, Callable[[random.Random], str]] = {
    "laughs": lambda chance: _laughs(chance.choice((2, 10))),
    "chain": lambda _: "a0: &a0 [x]\n" + "".join(f"a{at}: &a{at} [*a{at - 1}]\n" for at in range(1, 300)),
    "flow": lambda chance: "a: " + chance.choice(("[", "{a: ", "[{a: ")) * chance.choice((41, 500, 20_000)),
    "block": lambda chance: "".join(" " * at + "a:\n" for at in range(chance.choice((45, 400)))),
    "dashes": lambda chance: chance.choice(("- ", "? ")) * chance.choice((45, 9_000)),
    "itself": lambda chance: chance.choice(("a: &a [*a, *a]\n", "a: &a {b: *a}\n", "? &k [*k]\n: 1\n")),
    "scalar": lambda chance: "currency: " + chance.choice(("x", "'x", '"x')) + "x" * chance.choice((10_001, 400_000)),
    "tag": lambda chance: "a: " + chance.choice(("!", "&", "*", "!<")) + "x" * 600_000,
    "runs": lambda _: "a: !!python/object/apply:os.system ['touch zqx']",
    "digits": lambda chance: "budget: " + "9" * chance.choice((400, 5_000, 90_000)),
    "controls": lambda chance: chance.choice(('currency: "\\e[31m"', 'currency: "\\0"', '"\\ud800": 1')),
    "large": lambda _: "a: 1\n" * 500_000,
    "bytes": lambda chance: chance.randbytes(300).decode("latin-1"),
}  # fmt: skip
TABLES: dict[str, Callable[[random.Random], str]] = {
    "field": lambda chance: "fault,points\n" + "x" * chance.choice((10_001, 131_073, 900_000)) + ",1\n",
    "lines": lambda chance: "fault,points\n" + "a,1\n" * chance.choice((20_001, 200_000)),
    "wide": lambda chance: "fault,points" + ",x" * chance.choice((500, 100_000)) + "\n",
    "quote": lambda _: 'fault,points\n"' + "a,1\n" * 30_000,
    "large": lambda _: "fault,points\n" + "a" * 8_000_001,
    "zero": lambda _: "fault,points\nzqx\0,1\n",
    "controls": lambda chance: f"fault,points\n{chance.choice((chr(27) + '[2J', chr(7), chr(8) * 3, chr(155)))}zqx,1\n",
}  # fmt: skip
PATHS = (
    "../../../../../../etc/passwd", "/etc/passwd", "/etc/shadow.yaml", "/dev/zero", "/dev/stdin", "/dev/tty", "~",
    "~/a.yaml", "\\\\zqx.invalid\\share\\a.yaml", "//zqx.invalid/a.yaml", "file:///etc/passwd",
    "http://zqx.invalid/a.yaml", "", ".", "..", "pipe.yaml", "loop.yaml", "zero.yaml", "folder.yaml", "gone.yaml",
    "x" * 300,
    "x" * 299 + ".yaml", "a\x1b[31m.yaml", "a\0.yaml", "passwd.yaml", "socket.yaml", "CON", "nul.yaml", "C:\\a.yaml",
    "a.yaml:stream", "/proc/self/mem", "/proc/self/environ.yaml",
)  # fmt: skip
"""What a brief may name as its catalogue; some of them are laid out by `traps`."""


def traps(folder: Path) -> None:
    """Pipes, loops, devices and links to elsewhere, under names that look like files of a job."""
    os.mkfifo(folder / "pipe.yaml")
    (folder / "loop.yaml").symlink_to("loop.yaml")
    (folder / "zero.yaml").symlink_to("/dev/zero")
    (folder / "folder.yaml").mkdir()
    (folder / "gone.yaml").symlink_to("nowhere")
    (folder / "passwd.yaml").symlink_to("/etc/passwd")


def instead(folder: Path, name: str, chance: random.Random) -> None:
    """Something else under the name of a file of the job."""
    path = folder / name
    path.unlink(missing_ok=True)
    match chance.randrange(5):
        case 0:
            os.mkfifo(path)
        case 1:
            path.symlink_to("/dev/zero")
        case 2:
            path.mkdir()
        case 3:
            path.symlink_to(path.name)
        case _:
            path.symlink_to("/dev/full")
