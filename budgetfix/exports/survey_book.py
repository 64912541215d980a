"""The survey form as a workbook: blank for measuring, or filled from a survey. Same input, same bytes."""

from __future__ import annotations

import io
from collections.abc import Mapping, Sequence
from datetime import UTC, datetime
from pathlib import Path

from xlsxwriter.format import Format
from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.workbook import Workbook
from xlsxwriter.worksheet import Worksheet

from budgetfix.brief.models import ListedFault
from budgetfix.exports.marked import write_marked
from budgetfix.exports.survey_cells import Row, typed_brief, typed_home, typed_rows
from budgetfix.exports.survey_look import (
    FIRST_ROW,
    TEAL,
    cell_format,
    formats,
    live_formula,
    live_value,
    missing_terms,
)
from budgetfix.exports.survey_print import LIVE_WIDE, print_page, print_table
from budgetfix.exports.survey_start import FIRST_ROOM, HOME_ROW, LEAST_ROOMS, put, write_start
from budgetfix.forms.column import Column
from budgetfix.forms.survey_form import HOME, ROOMS, SHEETS, START_TITLE, Sheet
from budgetfix.room.survey import Survey

CREATED = datetime(2026, 1, 1, tzinfo=UTC)
"""Fixed, so that two builds are the same bytes."""
LIST_TITLE = "Lists"
SPARE_ROWS = 6


def write_survey_book(
    path: Path,
    survey: Survey | None,
    brief_fields: Mapping[str, object] | None = None,
    faults: Sequence[ListedFault] = (),
    unit: str = "",
) -> None:
    """Write the form: blank (survey None; `unit` may be filled in) or filled. Errors: OSError."""
    write_marked(path, survey_book(survey, brief_fields or {}, faults, unit))


def survey_book(
    survey: Survey | None, brief_fields: Mapping[str, object], faults: Sequence[ListedFault], unit: str = ""
) -> bytes:
    """The workbook's bytes."""
    rows = typed_rows(survey if survey is not None else Survey(), faults)
    home: Row = typed_home(survey.household) if survey is not None else ({"unit": unit} if unit else {})
    if survey is None:
        rows["walls"] = [{"wall": letter} for letter in "ABCD"]
    data = io.BytesIO()
    book = Workbook(data, {"in_memory": True})
    book.set_properties({"title": "Room survey", "author": "", "created": CREATED})
    looks = formats(book)
    start = book.add_worksheet(START_TITLE)
    start.set_tab_color(TEAL)
    write_start(book, start, looks, home, typed_brief(brief_fields), rows["rooms"])
    sheets = {sheet.key: book.add_worksheet(sheet.title) for sheet in SHEETS}
    lists = _Lists(book, rows)
    _start_lists(start, lists, len(rows["rooms"]))
    for number, sheet in enumerate(SHEETS, 1):
        _table(sheets[sheet.key], looks, sheet, number, rows[sheet.key], lists)
    print_page(start)
    book.close()
    return data.getvalue()


def _last_row(key: str, least: int, rows: Mapping[str, Sequence[Row]]) -> int:
    """The last prepared row, counted from 1."""
    return FIRST_ROW - 1 + max(least, len(rows[key]) + SPARE_ROWS)


class _Lists:
    """The hidden sheet of choices, and the defined names that drop-downs refer to."""

    def __init__(self, book: Workbook, rows: Mapping[str, Sequence[Row]]) -> None:
        self.book = book
        self.sheet = book.add_worksheet(LIST_TITLE)
        self.sheet.hide()
        self.known: dict[tuple[str, ...], str] = {}
        rooms = FIRST_ROOM + max(LEAST_ROOMS, len(rows["rooms"]))
        book.define_name("names_rooms", f"={START_TITLE}!$B${FIRST_ROOM + 1}:$B${rooms}")
        for sheet in SHEETS:
            last = _last_row(sheet.key, sheet.rows, rows)
            book.define_name(f"names_{sheet.key}", f"='{sheet.title}'!$B${FIRST_ROW}:$B${last}")

    def name_of(self, column: Column) -> str:
        """The defined name of a column's list; empty where it has none."""
        match column.kind:
            case "yes-no":
                return self._choices("yes_no", ("yes", "no"))
            case "yes-no-unknown":
                return self._choices("yes_no_not_sure", ("yes", "no", "not sure"))
            case "wall":
                return "names_walls"
            case "name":
                return f"names_{column.names[0]}"
            case _:
                return self._choices(column.field, column.choices) if column.choices else ""

    def _choices(self, word: str, choices: tuple[str, ...]) -> str:
        if choices not in self.known:
            place = len(self.known)
            letter = xl_col_to_name(place)
            self.known[choices] = f"list_{word}_{place}"
            self.sheet.write_string(0, place, word)
            for row, choice in enumerate(choices, 1):
                self.sheet.write_string(row, place, choice)
            self.book.define_name(self.known[choices], f"={LIST_TITLE}!${letter}$2:${letter}${len(choices) + 1}")
        return self.known[choices]


def _drop_down(sheet: Worksheet, lists: _Lists, column: Column, first: int, at: int, last: int) -> None:
    name = lists.name_of(column)
    if name:
        strict = column.kind in ("choice", "yes-no-unknown")
        asked = {"validate": "list", "source": f"={name}", "show_error": strict, "error_type": "warning",
                 "error_title": column.heading, "error_message": f"Wanted: {column.wanted}"[:255]}  # fmt: skip
        sheet.data_validation(first, at, last, at, asked)


def _start_lists(sheet: Worksheet, lists: _Lists, rooms: int) -> None:
    for line, column in enumerate(HOME, HOME_ROW + 1):
        _drop_down(sheet, lists, column, line, 2, line)
    for place, column in enumerate(ROOMS, 1):
        _drop_down(sheet, lists, column, FIRST_ROOM, place, FIRST_ROOM + max(LEAST_ROOMS, rooms) - 1)


def _table(
    page: Worksheet, looks: dict[str, Format], sheet: Sheet, number: int, rows: list[Row], lists: _Lists
) -> None:
    """One table: title, how to measure, headings, hints, rows."""
    last = _last_row(sheet.key, sheet.rows, {sheet.key: rows})
    page.hide_gridlines(2)
    page.set_column(0, 0, LIVE_WIDE)
    page.set_row(0, 28)
    page.set_row(3, 31)
    page.set_row(4, 24)
    page.write_string(0, 0, f"{number}  {sheet.title}", looks["title"])
    page.write_string(1, 0, sheet.how, looks["how"])
    page.write_string(3, 0, "ready?", looks["live_head"])
    for place, column in enumerate(sheet.columns, 1):
        page.set_column(place, place, column.wide)
        must = column.needed or bool(column.needed_for)
        page.write_string(3, place, column.heading, looks["needed" if must else "applies"])
        page.write_string(4, place, column.hint, looks["hint"])
        _drop_down(page, lists, column, FIRST_ROW - 1, place, last - 1)
    for line in range(FIRST_ROW, last + 1):
        values = rows[line - FIRST_ROW] if line - FIRST_ROW < len(rows) else {}
        _line(page, looks, sheet, line, values)
    _tints(page, looks, sheet, last)
    page.freeze_panes(FIRST_ROW - 1, 2)
    page.ignore_errors({"number_stored_as_text": f"A1:{xl_col_to_name(len(sheet.columns))}{last}"})
    print_table(page, sheet.columns, f"{number}  {sheet.title}", sheet.how, last - 1)


def _line(page: Worksheet, looks: dict[str, Format], sheet: Sheet, line: int, values: Row) -> None:
    page.set_row(line - 1, 18)
    formula = live_formula(sheet.key, sheet.columns, line)
    page.write_formula(line - 1, 0, formula, looks["live"], live_value(sheet.key, sheet.columns, values))
    for place, column in enumerate(sheet.columns, 1):
        put(page, line - 1, place, values.get(column.field), looks[cell_format(column)])


def _tints(page: Worksheet, looks: dict[str, Format], sheet: Sheet, last: int) -> None:
    """Missing cells turn as soon as a row is begun, and the live sentence with them."""
    begun = f"COUNTA($B{FIRST_ROW}:${xl_col_to_name(len(sheet.columns))}{FIRST_ROW})>0"
    terms = {name: term for name, _, term in missing_terms(sheet.key, sheet.columns, FIRST_ROW)}
    for place, column in enumerate(sheet.columns, 1):
        if column.field in terms:
            rule = {"type": "formula", "criteria": f"=AND({begun},{terms[column.field]})", "format": looks["tint"]}
            page.conditional_format(FIRST_ROW - 1, place, last - 1, place, rule)
    needs = {"type": "text", "criteria": "begins with", "value": "needs", "format": looks["needs"]}
    page.conditional_format(FIRST_ROW - 1, 0, last - 1, 0, needs)
