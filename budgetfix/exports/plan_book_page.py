"""One sheet of a plan's workbook: its paper, its title, tables whose rows are as high as their text.

Layout of every sheet: column A holds ids and is hidden; row 1 title, row 2 a sentence, row 4 headings, data from row 5.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import Decimal

from xlsxwriter.format import Format
from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.workbook import Workbook
from xlsxwriter.worksheet import Worksheet

from budgetfix.base.money import LETTER_PAPER, digits_of
from budgetfix.exports import palette
from budgetfix.exports.lettering import lines_on_paper

HEAD = 3
"""Row of the headings, counted from 0."""
FIRST = HEAD + 1
LONGEST = 32_767
"""Characters that one cell can hold."""
LETTER, A4 = 1, 9
INDENT, BOLD = 1.6, 0.92
"""What an indent takes of a column, and what is left of it for bold letters."""
LINE_POINTS, AIR_POINTS = 13.0, 5.0

BASE: dict[str, object] = {"font_name": "Arial", "font_size": 10, "font_color": palette.INK, "valign": "vcenter"}


@dataclass(frozen=True, slots=True)
class Formula:
    """A live cell, with the value that it has when the book is written."""

    text: str
    value: str | float


Value = str | int | float | Formula | None


@dataclass(frozen=True, slots=True)
class Col:
    """One column: its heading, its width in characters, how its cells look, whether the user fills it in."""

    heading: str
    width: float
    look: str = "text"
    yours: bool = False


def clean(text: str) -> str:
    """Text that any spreadsheet can hold: no broken letters, no longer than a cell takes."""
    return text.encode("utf-8", "replace").decode("utf-8")[:LONGEST]


class Styles:
    """The formats of a book, each made once. `currency` decides how many digits money has.

    `typed`: (sheet, value) of every cell written so far that is neither live nor empty.
    """

    def __init__(self, book: Workbook, currency: str) -> None:
        self._book = book
        self.typed: list[tuple[str, str | float]] = []
        self._made: dict[tuple[tuple[str, object], ...], Format] = {}
        self.digits = digits_of(currency)
        self.paper = LETTER if currency in LETTER_PAPER else A4
        self.money = f"#,##0.{'0' * self.digits}_)" if self.digits else "#,##0_)"
        self._looks: dict[str, dict[str, object]] = {
            "text": {"text_wrap": True, "align": "left", "indent": 1},
            "quiet": {"text_wrap": True, "align": "left", "indent": 1, "font_color": palette.QUIET},
            "warn": {"text_wrap": True, "align": "left", "indent": 1, "font_color": palette.WARN},
            "strong": {"text_wrap": True, "align": "left", "indent": 1, "bold": True},
            "mark": {"align": "center"},
            "money": {"num_format": self.money, "align": "right"},
            "whole": {"num_format": "#,##0_)", "align": "right"},
            "gain": {"num_format": '+#,##0_);−#,##0_);"·"_)', "align": "right"},
        }

    def __call__(self, look: str = "", **more: object) -> Format:
        """The format of a look, with what is said on top of it."""
        wanted = {**BASE, **self._looks.get(look, {}), **more}
        key = tuple(sorted(wanted.items(), key=lambda pair: pair[0]))
        if key not in self._made:
            self._made[key] = self._book.add_format(wanted)
        return self._made[key]

    def bare(self, **look: object) -> Format:
        """A format for a condition: only what it changes."""
        key = tuple(sorted(look.items(), key=lambda pair: pair[0]))
        if key not in self._made:
            self._made[key] = self._book.add_format(look)
        return self._made[key]

    def below_zero(self) -> dict[str, object]:
        """The condition, and the look, of money that has run out."""
        look = self.bare(
            font_color=palette.WARN, bg_color=palette.WARN_GROUND, num_format=f'{self.money};"▼ −"{self.money}'
        )
        return {"type": "cell", "criteria": "<", "value": 0, "format": look}

    def amount(self, minor: int) -> float:
        """Minor units as the number that a cell shows."""
        return float(Decimal(minor).scaleb(-self.digits))


class Page:
    """One sheet, being laid out. Rows and columns count from 0; `ref` gives A1 addresses."""

    def __init__(self, book: Workbook, styles: Styles, name: str, title: str, note: str, owner: str) -> None:
        self.sheet: Worksheet = book.add_worksheet(name)
        self.name = name
        self.styles = styles
        self.names: dict[str, str] = {}
        """Cells of this sheet that others ask for by a word."""
        self._paper(owner)
        self.sheet.set_row(0, 30)
        self.put(0, 1, title, styles(font_size=18, bold=True, font_color=palette.TEAL))
        self.sheet.set_row(1, 17)
        self.put(1, 1, note, styles(font_color=palette.QUIET))

    def _paper(self, owner: str) -> None:
        sheet = self.sheet
        sheet.hide_gridlines(2)
        sheet.set_landscape()
        sheet.set_paper(self.styles.paper)
        sheet.fit_to_pages(1, 0)
        sheet.set_margins(left=0.5, right=0.5, top=0.6, bottom=0.75)
        named = owner[:60].replace("&", "&&")
        sheet.set_footer(f'&L&"Arial"&9{_spaced(named)}&C&"Arial"&9&A&R&"Arial"&9&P / &N')
        sheet.set_column(0, 0, 12, None, {"hidden": True})
        sheet.ignore_errors({"number_stored_as_text": "A1:Z3000"})

    def put(self, row: int, column: int, value: Value, look: Format) -> None:
        """One cell. Text is never a formula; nothing leaves a blank cell that keeps its look."""
        if isinstance(value, Formula):
            self.sheet.write_formula(row, column, value.text, look, value.value)
            return
        if value is None or (isinstance(value, str) and not value.strip()):
            self.sheet.write_blank(row, column, None, look)
            return
        if isinstance(value, str):
            value = clean(value)
            self.sheet.write_string(row, column, value, look)
        else:
            self.sheet.write_number(row, column, value, look)
        self.styles.typed.append((self.name, value))

    def span(self, column: int, first: int, last: int, away: bool = False) -> str:
        """Absolute address of part of a column; `away`: as another sheet names it."""
        letter = xl_col_to_name(column)
        area = f"${letter}${first + 1}:${letter}${last + 1}"
        return f"'{self.name}'!{area}" if away else area

    def ref(self, row: int, column: int, away: bool = False) -> str:
        """Absolute address of one cell."""
        cell = f"${xl_col_to_name(column)}${row + 1}"
        return f"'{self.name}'!{cell}" if away else cell


def _spaced(name: str) -> str:
    """A digit at the start would be read as part of the font's size."""
    return f" {name}" if name[:1].isdigit() else name


class Table:
    """A table on a page: headings in row 4, data below. Columns stand from B on."""

    def __init__(self, page: Page, columns: Sequence[Col]) -> None:
        self.page = page
        self.columns = tuple(columns)
        self.at = {column.heading: place for place, column in enumerate(self.columns, start=1)}
        self.next_row = FIRST
        page.put(HEAD, 0, "id", page.styles("quiet"))
        for place, column in enumerate(self.columns, start=1):
            page.sheet.set_column(place, place, column.width)
            page.put(HEAD, place, column.heading, self._head(column.look))
        lines = max(lines_on_paper(column.heading, (column.width - INDENT) * BOLD) for column in self.columns)
        page.sheet.set_row(HEAD, lines * LINE_POINTS + 8)
        page.sheet.repeat_rows(HEAD)
        page.sheet.freeze_panes(FIRST, 0)

    def _head(self, look: str) -> Format:
        place: dict[str, object] = {"align": "left", "indent": 1}
        if look in ("mark", "money", "whole", "gain"):
            place = {"align": "center"} if look == "mark" else {"align": "right", "num_format": "@_)"}
        ground: dict[str, object] = {"font_color": palette.WHITE, "bg_color": palette.TEAL, "bold": True}
        return self.page.styles("", text_wrap=True, **ground, **place)

    @property
    def last(self) -> int:
        """The last row that holds data; FIRST - 1 when there is none."""
        return self.next_row - 1

    def row(
        self,
        id: str,
        values: Sequence[Value],
        *,
        look: Callable[[str], dict[str, object]] | None = None,
    ) -> int:
        """One row, and where it stands; `look` adds to a column's look by its heading."""
        row, page = self.next_row, self.page
        page.put(row, 0, id, page.styles("quiet"))
        for place, (column, value) in enumerate(zip(self.columns, values, strict=True), start=1):
            more: dict[str, object] = {"bottom": 1, "bottom_color": palette.LINE}
            if column.yours:
                more |= {"bg_color": palette.YOURS, "bold": True}
            page.put(row, place, value, page.styles(column.look, **more | (look(column.heading) if look else {})))
        texts = [
            lines_on_paper(value, (column.width - INDENT) * (BOLD if column.look == "strong" else 1.0))
            for column, value in zip(self.columns, values, strict=True)
            if isinstance(value, str)
        ]
        page.sheet.set_row(row, min(400.0, max(texts, default=1) * LINE_POINTS + AIR_POINTS))
        self.next_row += 1
        return row

    def band(self, heading: str, words: str) -> None:
        """A heading between rows, below the heading of a column: no row of the list, without an id."""
        edge: dict[str, object] = {"bottom": 1, "bottom_color": palette.TEAL, "bg_color": palette.STRAW}
        for place in range(1, len(self.columns) + 1):
            self.page.put(self.next_row, place, None, self.page.styles("", **edge))
        look = self.page.styles("", bold=True, font_color=palette.TEAL, indent=1, align="left", **edge)
        self.page.put(self.next_row, self.at[heading], words, look)
        self.page.sheet.set_row(self.next_row, 18)
        self.next_row += 1

    def area(self, heading: str, first: int = FIRST, last: int | None = None, away: bool = False) -> str:
        """Address of a column's data."""
        return self.page.span(self.at[heading], first, self.last if last is None else last, away)

    def says(self, text: str) -> None:
        """A sentence where there are no rows."""
        self.page.put(self.next_row, 1, text, self.page.styles(font_color=palette.QUIET, italic=True))
        self.next_row += 2


def kept(columns: Sequence[Col], rows: Sequence[Sequence[Value]], always: Sequence[str]) -> list[int]:
    """Places of the columns that hold something in any row, or are always shown."""
    return [
        place
        for place, column in enumerate(columns)
        if column.yours or column.heading in always or any(row[place] not in (None, "") for row in rows)
    ]
