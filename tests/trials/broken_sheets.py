"""A workbook as plain cells, to be spoilt quickly: out of a demo's workbook, and back into bytes."""

from __future__ import annotations

import io
import warnings
import zipfile
from dataclasses import dataclass, field
from datetime import date, datetime, time
from xml.sax.saxutils import escape, quoteattr

from openpyxl import load_workbook
from openpyxl.utils import get_column_letter

Cells = dict[tuple[int, int], object]
"""By row and column, from 1."""
EPOCH = datetime(1899, 12, 30)  # noqa: DTZ001 - a workbook holds no time zone


@dataclass(frozen=True)
class Formula:
    """A live cell; `stored` is the result that the file remembers, None for none."""

    text: str
    stored: object = None


@dataclass(frozen=True)
class Error:
    """A cell such as #REF!"""

    text: str


@dataclass
class Page:
    """One sheet."""

    title: str
    cells: Cells
    merged: list[str] = field(default_factory=list)
    hidden: bool = False

    def rows(self) -> int:
        """The last row that holds something."""
        return max((row for row, _ in self.cells), default=1)

    def columns(self) -> int:
        """The last column that holds something."""
        return max((column for _, column in self.cells), default=1)

    def label(self, row: int, column: int) -> str:
        """`Walls!B6`."""
        return f"{self.title}!{get_column_letter(column)}{row}"

    def moved(self, row: int, rows: int, column: int, columns: int) -> None:
        """Move what stands at or behind a row and a column by so many."""
        self.cells = {
            (at + (rows if at >= row else 0), along + (columns if along >= column else 0)): value
            for (at, along), value in self.cells.items()
        }


Pages = list[Page]


def pages_of(data: bytes) -> Pages:
    """The cells of a workbook of ours; looks are left out."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", UserWarning)
        shown, typed = load_workbook(io.BytesIO(data), data_only=True), load_workbook(io.BytesIO(data))
    pages = []
    for sheet in shown.worksheets:
        cells: Cells = {}
        for line in typed[sheet.title].iter_rows():
            for cell in line:
                if cell.value is not None:
                    where = (cell.row or 0, cell.column or 0)
                    stored = sheet.cell(*where).value
                    cells[where] = Formula(str(cell.value), stored) if cell.data_type == "f" else cell.value
        pages.append(Page(sheet.title, cells, hidden=sheet.sheet_state != "visible"))
    return pages


def copied(pages: Pages) -> Pages:
    """Pages of one's own; what stands in a cell is never changed itself."""
    return [Page(page.title, dict(page.cells), list(page.merged), page.hidden) for page in pages]


def without_live(pages: Pages) -> Pages:
    """Only what people typed: no live cells, no hidden sheets."""
    return [
        Page(page.title, {at: value for at, value in page.cells.items() if not isinstance(value, Formula)})
        for page in pages
        if not page.hidden
    ]


_TYPES = (
    '<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
    '<Default Extension="xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>'
    '<Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>'  # noqa: E501
    '<Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/></Types>'  # noqa: E501
)
_MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
_OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships"
_STYLES = (
    f'<?xml version="1.0"?><styleSheet xmlns="{_MAIN}"><fonts count="1"><font/></fonts>'
    '<fills count="1"><fill><patternFill/></fill></fills>'
    '<borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="3">'
    '<xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/><xf numFmtId="20" applyNumberFormat="1"/></cellXfs>'
    "</styleSheet>"
)


def book_bytes(pages: Pages) -> bytes:
    """The workbook; the same pages give the same bytes."""
    parts = {
        "[Content_Types].xml": _TYPES,
        "_rels/.rels": _links([("officeDocument", "xl/workbook.xml")]),
        "xl/workbook.xml": _book(pages),
        "xl/_rels/workbook.xml.rels": _links(
            [*(("worksheet", f"worksheets/s{at}.xml") for at in range(1, len(pages) + 1)), ("styles", "styles.xml")]
        ),
        "xl/styles.xml": _STYLES,
    }
    parts |= {f"xl/worksheets/s{at}.xml": _page(page) for at, page in enumerate(pages, start=1)}
    saved = io.BytesIO()
    with zipfile.ZipFile(saved, "w") as folder:
        for name, text in parts.items():
            folder.writestr(zipfile.ZipInfo(name), text.encode())
    return saved.getvalue()


def _links(targets: list[tuple[str, str]]) -> str:
    lines = "".join(
        f'<Relationship Id="rId{at}" Type="{_OFFICE}/{sort}" Target="{target}"/>'
        for at, (sort, target) in enumerate(targets, start=1)
    )
    return f'<?xml version="1.0"?><Relationships xmlns="{_PACKAGE}">{lines}</Relationships>'


def _book(pages: Pages) -> str:
    sheets = "".join(
        f'<sheet name={quoteattr(page.title)} sheetId="{at}" {"state=" + quoteattr("hidden") if page.hidden else ""} '
        f'r:id="rId{at}"/>'
        for at, page in enumerate(pages, start=1)
    )
    return f'<?xml version="1.0"?><workbook xmlns="{_MAIN}" xmlns:r="{_OFFICE}"><sheets>{sheets}</sheets></workbook>'


def _page(page: Page) -> str:
    lines: dict[int, list[str]] = {}
    for (row, column), value in sorted(page.cells.items()):
        lines.setdefault(row, []).append(_cell(f"{get_column_letter(column)}{row}", value))
    data = "".join(f'<row r="{row}">{"".join(cells)}</row>' for row, cells in lines.items())
    merged = "".join(f'<mergeCell ref="{span}"/>' for span in page.merged)
    merges = f"<mergeCells>{merged}</mergeCells>" if merged else ""
    return f'<?xml version="1.0"?><worksheet xmlns="{_MAIN}"><sheetData>{data}</sheetData>{merges}</worksheet>'


def _cell(name: str, value: object) -> str:
    match value:
        case bool():
            return f'<c r="{name}" t="b"><v>{int(value)}</v></c>'
        case int() | float():
            return f'<c r="{name}"><v>{value}</v></c>'
        case Error():
            return f'<c r="{name}" t="e"><v>{value.text}</v></c>'
        case Formula():
            return _live(name, value)
        case datetime() | date():
            day = datetime(value.year, value.month, value.day)  # noqa: DTZ001
            return f'<c r="{name}" s="1"><v>{(day - EPOCH).days}</v></c>'
        case time():
            return f'<c r="{name}" s="2"><v>{(value.hour * 60 + value.minute) / 1440}</v></c>'
    text = escape(str(value), {chr(sign): f"_x{sign:04X}_" for sign in range(32) if sign not in (9, 10)})
    return f'<c r="{name}" t="inlineStr"><is><t xml:space="preserve">{text}</t></is></c>'


def _live(name: str, value: Formula) -> str:
    text = escape(value.text.removeprefix("="))
    if value.stored is None:
        return f'<c r="{name}"><f>{text}</f></c>'
    sort = ' t="str"' if isinstance(value.stored, str) else ""
    return f'<c r="{name}"{sort}><f>{text}</f><v>{escape(str(value.stored))}</v></c>'
