"""The catalog as a workbook: starter prices to replace, or a catalog of the user's written out again.

The sheets and columns are those that `intake` reads. Same catalog, same bytes: the date of making is fixed.
"""

from __future__ import annotations

import io
from dataclasses import replace
from datetime import datetime
from fractions import Fraction
from typing import Any

from budgetfix.base.money import LETTER_PAPER, digits_of
from budgetfix.base.tape import in_unit
from budgetfix.catalog.models import Catalog, Product, Remedy, Shop, Tool, WorkStep
from budgetfix.exports.catalog_text import changes_text, set_text
from budgetfix.exports.palette import LINE, QUIET, STRAW, TEAL, WARN_GROUND, WHITE
from budgetfix.forms.catalog_form import CATALOG_SHEETS, CATALOG_TOP, OPTIONAL_FIELDS
from budgetfix.forms.column import Column
from budgetfix.forms.survey_form import Sheet

CREATED = datetime(2026, 1, 1)  # noqa: DTZ001 - a workbook holds no time zone
TITLE, HOW, TOP, HEADS, HINTS, FIRST = 0, 1, 2, 3, 4, 5
"""Rows from 0: title, how to fill in, currency and unit, headings, hints, the first line."""

TOP_AT = (0, 3)
"""Columns of the labels of currency and unit; each value stands in the next one."""
SPARE = 8
"""Empty lines that are printed with the filled ones."""
ONE_PAGE = 12
"""Sheets with more columns print two pages wide, the first column on both."""
WRAPPED, LINE_HEIGHT = 24, 15
"""Columns this wide hold sentences; height of a line in points."""
MONEY = (
    "cost",
    "cost_low",
    "cost_high",
    "price",
    "price_low",
    "price_high",
    "buy",
    "hire_per_session",
    "delivery",
    "free_over",
)
LISTED = {("products", "shop"): "shop_names", ("steps", "remedy"): "remedy_names"}
"""Cells that offer the names typed on another sheet."""

Value = str | int | float | None
Cells = dict[str, Value]


def catalog_book(catalog: Catalog, *, unit: str, currency: str) -> bytes:
    """The workbook, with `unit` (in, cm, mm) for bare lengths. Errors: KeyError for no such currency."""
    import xlsxwriter

    saved = io.BytesIO()
    book = xlsxwriter.Workbook(saved, {"in_memory": True})
    book.set_properties({"title": "Catalogue", "created": CREATED})
    writer = _Writer(book, currency)
    tables = _tables(catalog, unit, digits_of(currency))
    for sheet in CATALOG_SHEETS:
        writer.sheet(_used(sheet, tables[sheet.key]), tables[sheet.key], {"currency": currency, "unit": unit})
    writer.lists()
    book.close()
    return saved.getvalue()


def _used(sheet: Sheet, rows: list[Cells]) -> Sheet:
    """Without the columns for stock where nothing comes from stock, and those for ranges where prices have none."""
    unused: set[str] = set()
    for fields in OPTIONAL_FIELDS:
        if not any(cells.get(field) is not None for cells in rows for field in fields):
            unused |= fields
    return replace(sheet, columns=tuple(one for one in sheet.columns if one.field not in unused))


def _tables(catalog: Catalog, unit: str, digits: int) -> dict[str, list[Cells]]:
    """The cells of every sheet, by field."""
    return {
        "products": [_product(product, unit, digits) for product in catalog.products],
        "remedies": [_remedy(remedy, unit, digits) for remedy in catalog.remedies],
        "steps": [_step(remedy.remedy, step) for remedy in catalog.remedies for step in remedy.steps],
        "tools": [_tool(tool, digits) for tool in catalog.tools],
        "shops": [_shop(shop, digits) for shop in catalog.shops],
    }


def _number(value: Fraction | float | None) -> Value:
    """As few digits as say it."""
    if value is None:
        return None
    return int(value) if value == int(value) else float(value)


def _money(minor: int | None, digits: int) -> Value:
    return None if minor is None else _number(Fraction(minor, 10**digits))


def _likely(likely: int | None, planned: int | None) -> int | None:
    """What stands under Price: the likely one of three, else the one that there is."""
    return planned if likely is None else likely


def _pairs(pairs: tuple[tuple[str, Fraction], ...]) -> str:
    return "; ".join(f"{name}:{_number(amount)}" for name, amount in pairs)


def _yes(value: bool) -> Value:
    return "yes" if value else None


def _product(product: Product, unit: str, digits: int) -> Cells:
    sizes = ("width", "width_to", "depth", "height", "drop", "lead")
    words = ("product", "name", "what", "label", "shop", "unit", "heading", "cloth", "take_along")
    return {
        **{field: getattr(product, field) or None for field in words},
        **{field: _number(getattr(product, field)) for field in ("pack", "lumens", "kelvin", "carries")},
        **{field: None if (mm := getattr(product, field)) is None else in_unit(mm, unit) for field in sizes},
        "price": _money(_likely(product.price_likely_minor, product.price_minor), digits),
        "price_low": _money(product.price_low_minor, digits),
        "price_high": _money(product.price_high_minor, digits),
        "on_hand": _number(product.on_hand) or None,
        "lead_days": product.lead_days or None,
        "return_days": product.return_days,
        "example": _yes(product.example),
        "round": _yes(product.round),
        **_stock(product),
    }


def _stock(product: Product) -> Cells:
    days = {field: getattr(product, field) for field in ("free_from", "free_until")}
    return {
        **{field: getattr(product, field) for field in ("stock", "term_days", "least_days")},
        **{field: None if on is None else on.isoformat() for field, on in days.items()},
        "place": product.place or None,
        "weight_kg": _number(product.weight_kg),
    }


def _remedy(remedy: Remedy, unit: str, digits: int) -> Cells:
    return {
        **{field: getattr(remedy, field) for field in ("remedy", "name", "kind", "on", "pick_one", "phase")},
        **{field: _pairs(getattr(remedy, field)) for field in ("answers", "uses", "spends")},
        **{field: "; ".join(getattr(remedy, field)) for field in ("tools", "needs", "excludes", "cares")},
        "cost": _money(_likely(remedy.cost_likely_minor, remedy.cost_minor or None), digits),
        "cost_low": _money(remedy.cost_low_minor, digits),
        "cost_high": _money(remedy.cost_high_minor, digits),
        "people": remedy.people,
        "set": set_text(remedy.set, unit),
        "changes": changes_text(remedy.changes, unit),
        "client": remedy.client or None,
    }


def _step(remedy: str, step: WorkStep) -> Cells:
    return {
        "remedy": remedy,
        "text": step.text,
        "low": step.low,
        "likely": step.minutes if step.likely is None else step.likely,
        "high": step.high,
        "wait_sessions": step.wait_sessions or None,
        "wait_hours": _number(Fraction(step.wait_minutes, 60)) or None,
        "people": step.people,
        "from_stock": None if step.from_stock else "no",
        "help": step.help or None,
    }


def _tool(tool: Tool, digits: int) -> Cells:
    money = {"buy": _money(tool.buy_minor, digits), "hire_per_session": _money(tool.hire_minor, digits)}
    return {"tool": tool.tool, "name": tool.name, "own": _yes(tool.own), **money}


def _shop(shop: Shop, digits: int) -> Cells:
    money = {"delivery": _money(shop.delivery_minor or None, digits), "free_over": _money(shop.free_over_minor, digits)}
    shares = {"tax": _number(shop.tax) or None, "markup": _number(shop.markup) or None}
    shares["return_days"] = shop.return_days
    return {"shop": shop.shop, "name": shop.name, **money, **shares}


class _Writer:
    """One workbook in the making: its formats, and the sheets one by one."""

    def __init__(self, book: Any, currency: str) -> None:
        self.book = book
        self.paper = 1 if currency in LETTER_PAPER else 9
        self.money = "#,##0" + ("." + "0" * digits_of(currency) if digits_of(currency) else "") + "_)"
        self.formats: dict[tuple[tuple[str, Any], ...], Any] = {}
        self.choices: dict[str, tuple[str, ...]] = {}
        self.last: dict[str, int] = {}

    def format(self, **what: Any) -> Any:
        key = tuple(sorted(what.items()))
        if key not in self.formats:
            self.formats[key] = self.book.add_format({"font_name": "Calibri", "font_size": 11, **what})
        return self.formats[key]

    def sheet(self, sheet: Sheet, rows: list[Cells], top: dict[str, str]) -> None:
        """One sheet: title, how, headings with hints, lines, and empty lines ready to be filled in."""
        page = self.book.add_worksheet(sheet.title)
        last = self.last[sheet.key] = FIRST + max(sheet.rows, len(rows) + 2 * SPARE) - 1
        page.set_row(TITLE, 26)
        page.write_string(TITLE, 0, sheet.title, self.format(bold=True, font_size=18, font_color=TEAL))
        page.write_string(HOW, 0, sheet.how, self.format(font_color=QUIET))
        if sheet.key == "products":
            self._top(page, top)
        page.set_row(HEADS, 32)
        page.set_row(HINTS, 30)
        for at, column in enumerate(sheet.columns):
            self._column(page, sheet.key, at, column, last)
        for number, cells in enumerate(rows):
            page.set_row(FIRST + number, LINE_HEIGHT * _lines(sheet, cells))
            for at, column in enumerate(sheet.columns):
                self._cell(page, FIRST + number, at, cells.get(column.field), self._input(column))
        self._needed(page, sheet, last)
        self._print(page, sheet, last)
        page.print_area(0, 0, FIRST + len(rows) + SPARE, len(sheet.columns) - 1)

    def _top(self, page: Any, top: dict[str, str]) -> None:
        for at, column in zip(TOP_AT, CATALOG_TOP, strict=True):
            page.write_string(TOP, at, column.heading, self.format(bold=True, font_color=TEAL))
            page.write_string(TOP, at + 1, top[column.field], self.format(border=1, border_color=LINE, align="left"))
            if column.choices:
                page.data_validation(TOP, at + 1, TOP, at + 1, {"validate": "list", "source": [*column.choices]})

    def _column(self, page: Any, key: str, at: int, column: Column, last: int) -> None:
        look = {"bg_color": TEAL, "font_color": WHITE} if column.needed else {"bg_color": STRAW, "font_color": TEAL}
        page.write_string(
            HEADS, at, column.heading, self.format(bold=True, text_wrap=True, valign="vcenter", indent=1, **look)
        )
        hint = self.format(italic=True, font_size=9, font_color=QUIET, text_wrap=True, valign="top", indent=1)
        page.write_string(HINTS, at, column.hint, hint)
        page.set_column(at, at, column.wide)
        for row in range(FIRST, last + 1):
            page.write_blank(row, at, None, self._input(column))
        source = LISTED.get((key, column.field))
        if column.kind == "yes-no":
            source = "yes_no"
            self.choices[source] = ("yes", "no")
        elif column.choices:
            source = f"{key}_{column.field}"
            self.choices[source] = column.choices
        if source:
            rule = {"validate": "list", "source": f"={source}", "error_type": "warning"}
            page.data_validation(FIRST, at, last, at, rule)

    def _input(self, column: Column) -> Any:
        shape: dict[str, Any] = {"border": 1, "border_color": LINE, "valign": "top"}
        if column.field in MONEY:
            shape["num_format"] = self.money
        elif column.kind == "percent":
            shape["num_format"] = "0.0##%_)"
        elif column.kind in ("number", "count", "length"):
            shape["num_format"] = "General_)"
        else:
            shape |= {"indent": 1, "align": "left", "text_wrap": column.wide >= WRAPPED}
        return self.format(**shape)

    def _cell(self, page: Any, row: int, at: int, value: Value, shape: Any) -> None:
        if isinstance(value, str) and value:
            page.write_string(row, at, value, shape)
        elif isinstance(value, (int, float)):
            page.write_number(row, at, value, shape)

    def _needed(self, page: Any, sheet: Sheet, last: int) -> None:
        """A needed cell turns salmon as soon as its row is begun without it."""
        row = FIRST + 1
        wide = _letters(len(sheet.columns) - 1)
        for at, column in enumerate(sheet.columns):
            if column.needed:
                begun = f"=AND(COUNTA($A{row}:${wide}{row})>0,ISBLANK({_letters(at)}{row}))"
                shape = self.book.add_format({"bg_color": WARN_GROUND})
                page.conditional_format(FIRST, at, last, at, {"type": "formula", "criteria": begun, "format": shape})

    def _print(self, page: Any, sheet: Sheet, last: int) -> None:
        page.freeze_panes(FIRST, 1)
        page.hide_gridlines(2)
        page.set_landscape()
        page.set_paper(self.paper)
        page.fit_to_pages(2 if len(sheet.columns) > ONE_PAGE else 1, 0)
        page.repeat_columns(0)
        page.repeat_rows(HEADS, HINTS)
        page.set_margins(left=0.5, right=0.5, top=0.6, bottom=0.75)
        page.set_footer("&L&A&R&P / &N")
        page.ignore_errors({"number_stored_as_text": f"A1:{_letters(len(sheet.columns) - 1)}{last + 1}"})

    def lists(self) -> None:
        """A hidden sheet with every list of choices, and the names of lists typed on other sheets."""
        page = self.book.add_worksheet("Lists")
        page.hide()
        for at, (name, choices) in enumerate(sorted(self.choices.items())):
            for row, choice in enumerate(choices):
                page.write_string(row, at, choice)
            letters = _letters(at)
            self.book.define_name(name, f"=Lists!${letters}$1:${letters}${len(choices)}")
        for name, title in (("remedy_names", "Remedies"), ("shop_names", "Shops")):
            self.book.define_name(name, f"={title}!$A${FIRST + 1}:$A${self.last[title.lower()] + 1}")


def _lines(sheet: Sheet, cells: Cells) -> int:
    """How many lines the longest sentence of a row takes, wrapped (readers of workbooks do not all fit rows)."""
    wrapped = (column for column in sheet.columns if column.wide >= WRAPPED)
    return max((-(-len(str(cells.get(column.field) or "")) // (column.wide - 4)) for column in wrapped), default=1) or 1


def _letters(at: int) -> str:
    """Letters of a column, from 0: A ... Z, AA, AB ..."""
    return (chr(64 + at // 26) if at >= 26 else "") + chr(65 + at % 26)
