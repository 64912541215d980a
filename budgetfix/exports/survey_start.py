"""The first sheet of the survey form: the home, the money, the rooms, and how the walls are called."""

from __future__ import annotations

from xlsxwriter.format import Format
from xlsxwriter.workbook import Workbook
from xlsxwriter.worksheet import Worksheet

from budgetfix.exports.survey_cells import Row
from budgetfix.exports.survey_look import TEAL, boxed, cell_format
from budgetfix.forms.column import Column
from budgetfix.forms.survey_form import HOME, MONEY, ROOMS

HOME_ROW, MONEY_ROW, ROOMS_ROW = 3, 12, 19
"""Rows of the three section titles, counted from 0."""
FIRST_ROOM = ROOMS_ROW + 3
LEAST_ROOMS = 5
THINGS = (
    "Face the wall to measure it. Left is your left.",
    "Write what the tape says:  74.5   6' 2 1/2\"   188 cm",
    "Dark headings are needed, straw ones only if they apply.",
    "Column A says ✓ ready, or what a row still needs.",
    "Save it in its folder, then run:  budgetfix inspect FOLDER",
)
_DRAWING = 6
"""First column of the drawing, counted from 0."""


def write_start(
    book: Workbook, sheet: Worksheet, looks: dict[str, Format], home: Row, brief: Row, rooms: list[Row]
) -> None:
    """Fill the sheet; drop-downs are added by the caller, who knows the lists."""
    sheet.hide_gridlines(2)
    for first, last, wide in ((0, 0, 2), (1, 1, 28), (2, 2, 20), (3, 3, 26), (4, 4, 11), (5, 5, 3), (6, 6, 5),
                              (7, 9, 15), (10, 10, 5)):  # fmt: skip
        sheet.set_column(first, last, wide)
    sheet.set_row(0, 30)
    sheet.write_string(0, 1, "Measure your room", looks["title"])
    how = "About half an hour with a tape. Fill in the sheets from left to right; skip what you do not have."
    sheet.write_string(1, 1, how, looks["how"])
    _block(sheet, looks, HOME_ROW, "The home", HOME, home)
    _block(sheet, looks, MONEY_ROW, "Money and time", MONEY, brief)
    _rooms(sheet, looks, rooms)
    _drawing(book, sheet, looks)
    _things(sheet, looks)


def _section(sheet: Worksheet, looks: dict[str, Format], row: int, first: int, last: int, text: str) -> None:
    for column in range(first, last + 1):
        sheet.write_blank(row, column, None, looks["section"])
    sheet.write_string(row, first, text, looks["section"])


def _block(
    sheet: Worksheet, looks: dict[str, Format], row: int, text: str, columns: tuple[Column, ...], values: Row
) -> None:
    _section(sheet, looks, row, 1, 4, text)
    for line, column in enumerate(columns, row + 1):
        sheet.set_row(line, 18)
        sheet.write_string(line, 1, column.heading, looks["label"])
        put(sheet, line, 2, values.get(column.field), looks["value"])
        sheet.write_string(line, 3, column.hint, looks["aside"])
    if columns is HOME:
        blank = {"type": "formula", "criteria": f'=$C${row + 2}=""', "format": looks["tint"]}
        sheet.conditional_format(row + 1, 2, row + 1, 2, blank)


def put(sheet: Worksheet, row: int, column: int, value: object, look: Format) -> None:
    """A cell: text stays text, numbers are numbers, nothing is an empty cell with its look."""
    if isinstance(value, str) and value:
        sheet.write_string(row, column, value, look)
    elif isinstance(value, (int, float)):
        sheet.write_number(row, column, value, look)
    else:
        sheet.write_blank(row, column, None, look)


def _rooms(sheet: Worksheet, looks: dict[str, Format], rooms: list[Row]) -> None:
    _section(sheet, looks, ROOMS_ROW, 1, 4, "The rooms")
    sheet.set_row(ROOMS_ROW + 1, 20)
    for place, column in enumerate(ROOMS, 1):
        sheet.write_string(ROOMS_ROW + 1, place, column.heading, looks["needed" if column.needed else "applies"])
        sheet.write_string(ROOMS_ROW + 2, place, column.hint, looks["hint"])
    for line in range(max(LEAST_ROOMS, len(rooms))):
        values = rooms[line] if line < len(rooms) else {}
        for place, column in enumerate(ROOMS, 1):
            put(sheet, FIRST_ROOM + line, place, values.get(column.field), looks[cell_format(column)])


def _drawing(book: Workbook, sheet: Worksheet, looks: dict[str, Format]) -> None:
    """The room from above, drawn in cells: A at the top, you in the middle."""
    _section(sheet, looks, HOME_ROW, _DRAWING, _DRAWING + 4, "How the walls are called")
    top, bottom, left, right = HOME_ROW + 2, HOME_ROW + 6, _DRAWING + 1, _DRAWING + 3
    words = {(top, left): "← start here", (top, left + 1): "main door", (top + 2, left + 1): "you, facing A",
             (top + 3, left + 1): "then turn right ↻"}  # fmt: skip
    for row in range(top, bottom + 1):
        for column in range(left, right + 1):
            edges = {name: 5 for name, here in (("top", row == top), ("bottom", row == bottom),
                     ("left", column == left), ("right", column == right)) if here}  # fmt: skip
            colors = {f"{name}_color": TEAL for name in edges}
            text = words.get((row, column), "")
            look = boxed(book, **edges, **colors)
            sheet.write_string(row, column, text, look) if text else sheet.write_blank(row, column, None, look)
    for row, column, letter in ((top - 1, left + 1, "A"), (top + 2, right + 1, "B"), (bottom + 1, left + 1, "C"),
                                (top + 2, left - 1, "D")):  # fmt: skip
        sheet.write_string(row, column, letter, looks["letter"])


def _things(sheet: Worksheet, looks: dict[str, Format]) -> None:
    _section(sheet, looks, MONEY_ROW, _DRAWING, _DRAWING + 4, "Five things to know")
    for line, text in enumerate(THINGS, 1):
        sheet.write_number(MONEY_ROW + line, _DRAWING, line, looks["step"])
        sheet.write_string(MONEY_ROW + line, _DRAWING + 1, text, looks["label"])


__all__ = ["FIRST_ROOM", "HOME_ROW", "LEAST_ROOMS", "MONEY_ROW", "put", "write_start"]
