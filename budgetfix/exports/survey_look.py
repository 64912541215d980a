"""How the survey form looks: its colours, formats, and the live sentence in column A."""

from __future__ import annotations

from collections.abc import Mapping

from xlsxwriter.format import Format
from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.workbook import Workbook

from budgetfix.forms.column import Column

TEAL, STRAW, INK, SOFT, RULE = "#1F4E4A", "#EFEBDD", "#1B1B1B", "#5F625B", "#C9C3B1"
MISSING, RUST, LEAF, PAPER = "#F7D9C4", "#9A3F1D", "#3C6B4F", "#FAF8F1"
PADDED = "General_)"
"""Numbers with a little air on the right; an indent would render unevenly."""

FIRST_ROW = 6
"""The first row of data, counted from 1; headings are in row 4, hints in row 5."""

_BASE: dict[str, object] = {"font_name": "Calibri", "font_size": 10, "font_color": INK, "valign": "vcenter"}
_CELL: dict[str, object] = {"border": 1, "border_color": RULE}
_LOOKS: dict[str, dict[str, object]] = {
    "title": {"font_size": 20, "bold": True, "font_color": TEAL},
    "how": {"font_color": SOFT, "font_size": 10.5},
    "section": {"font_size": 12, "bold": True, "font_color": TEAL, "bottom": 2, "bottom_color": TEAL},
    "label": {},
    "aside": {"font_color": SOFT, "italic": True, "font_size": 9, "indent": 1},
    "value": {**_CELL, "bold": True, "bg_color": PAPER, "align": "left", "indent": 1},
    "needed": {**_CELL, "bold": True, "bg_color": TEAL, "font_color": "#FFFFFF", "text_wrap": True, "align": "center"},
    "applies": {**_CELL, "bold": True, "bg_color": STRAW, "text_wrap": True, "align": "center"},
    "hint": {"font_color": SOFT, "italic": True, "font_size": 8, "text_wrap": True, "align": "center",
             "bottom": 1, "bottom_color": TEAL},
    "text": {**_CELL, "align": "left", "num_format": "_(@_)"},
    "number": {**_CELL, "align": "right", "num_format": PADDED},
    "mark": {**_CELL, "align": "center"},
    "live": {"font_size": 9, "font_color": LEAF, "shrink": True},
    "live_head": {"font_size": 8, "font_color": SOFT, "italic": True},
    "tint": {"bg_color": MISSING},
    "needs": {"bold": True, "font_color": RUST},
    "letter": {"font_size": 16, "bold": True, "font_color": TEAL, "align": "center"},
    "inside": {"font_color": SOFT, "font_size": 9, "align": "center", "bg_color": PAPER},
    "step": {"font_color": TEAL, "bold": True, "align": "center"},
}  # fmt: skip


def formats(book: Workbook) -> dict[str, Format]:
    """Every format of the form, by name."""
    bare = ("tint", "needs")
    return {name: book.add_format(look if name in bare else {**_BASE, **look}) for name, look in _LOOKS.items()}


def boxed(book: Workbook, **edges: object) -> Format:
    """A cell inside the drawing of the room, with thick edges where a wall is."""
    return book.add_format({**_BASE, **_LOOKS["inside"], **edges})


def cell_format(column: Column) -> str:
    """Which format a column's cells have."""
    if column.kind in ("length", "number", "count", "percent"):
        return "number"
    return "mark" if column.kind in ("yes-no", "yes-no-unknown", "wall", "turn") else "text"


def missing_terms(key: str, columns: tuple[Column, ...], row: int) -> list[tuple[str, str, str]]:
    """(field, heading, formula that is true where the cell is missing) of each column that may be needed."""
    at = _cells(columns, row)
    terms = []
    for column in columns:
        empty = f'{at[column.field]}=""'
        if key == "walls" and column.field == "length":
            terms.append((column.field, column.heading, f'AND({empty},{at["wall"]}<>"C",{at["wall"]}<>"D")'))
        elif column.needed and column.unless:
            terms.append((column.field, column.heading, f'AND({empty},{at[column.unless]}="")'))
        elif column.needed and column.defaults:
            terms.append((column.field, column.heading, f"AND({empty},NOT({_sorts(at['what'], taken(column))}))"))
        elif column.needed:
            terms.append((column.field, column.heading, f"({empty})"))
        elif column.needed_for:
            terms.append((column.field, column.heading, f"AND({empty},{_sorts(at['what'], column.needed_for)})"))
    return terms


def taken(column: Column) -> tuple[str, ...]:
    """The sorts of things for which a usual size is taken where this needed cell is empty."""
    return tuple(what for default in column.defaults for what in default.whats) if column.needed else ()


def _cells(columns: tuple[Column, ...], row: int) -> dict[str, str]:
    return {column.field: f"${xl_col_to_name(place)}{row}" for place, column in enumerate(columns, 1)}


def _sorts(cell: str, whats: tuple[str, ...]) -> str:
    asked = ",".join(f'{cell}="{what}"' for what in whats)
    return f"OR({asked})"


def _assumed(columns: tuple[Column, ...], row: int) -> str:
    """How many needed cells are empty and taken at a usual size; empty where that cannot be.

    It begins with a number: a single TRUE would not be counted.
    """
    at = _cells(columns, row)
    terms = [f'AND({at[column.field]}="",{_sorts(at["what"], taken(column))})' for column in columns if taken(column)]
    return "+".join(["0", *terms]) if terms else ""


def live_formula(key: str, columns: tuple[Column, ...], row: int) -> str:
    """`✓ ready`, `✓ ready, 1 assumed`, or `needs Width + 1`: names the first missing cell and counts the rest."""
    terms = missing_terms(key, columns, row)
    count = "+".join(term for _, _, term in terms)
    first = '""'
    for _, heading, term in reversed(terms):
        first = f'IF({term},"{heading}",{first})'
    more = f'IF({count}>1," + "&({count}-1),"")'
    begun = f"COUNTA($B{row}:${xl_col_to_name(len(columns))}{row})"
    assumed = _assumed(columns, row)
    ready = f'"✓ ready"&IF({assumed}>0,", "&({assumed})&" assumed","")' if assumed else '"✓ ready"'
    return f'=IF({begun}=0,"",IF({count}=0,{ready},"needs "&{first}&{more}))'


def live_value(key: str, columns: tuple[Column, ...], values: Mapping[str, object]) -> str:
    """What the live sentence says for a row: stored with the formula, so that phones and previews show it."""
    if not values:
        return ""
    missing = [column.heading for column in columns if _is_missing(key, column, values)]
    if not missing:
        what = str(values.get("what", ""))
        assumed = sum(1 for column in columns if column.field not in values and what in taken(column))
        return f"✓ ready, {assumed} assumed" if assumed else "✓ ready"
    return f"needs {missing[0]}" + (f" + {len(missing) - 1}" if len(missing) > 1 else "")


def _is_missing(key: str, column: Column, values: Mapping[str, object]) -> bool:
    if column.field in values or (column.unless and column.unless in values):
        return False
    if key == "walls" and column.field == "length":
        return values.get("wall") not in ("C", "D")
    what = str(values.get("what", ""))
    return column.needs(what) and what not in taken(column)
