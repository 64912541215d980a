"""What leaves a workbook before a copy of it is handed back: nothing in the copy reaches out of it, or runs.

Sums of the user's own and of our form stay live; any other formula gives way to the result that was stored with it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

from openpyxl import Workbook

SUMS = re.compile(
    "ABS|AND|AVERAGE|CEILING|CHAR|CHOOSE|COLUMN|COUNT|COUNTA|COUNTBLANK|COUNTIF|COUNTIFS|EXACT|FALSE|FIND|FLOOR|IF|"
    "IFERROR|INDEX|INT|ISBLANK|ISERROR|ISNA|ISNUMBER|ISTEXT|LARGE|LEFT|LEN|LOWER|MATCH|MAX|MID|MIN|MOD|NA|NOT|OR|PI|"
    "POWER|PRODUCT|QUOTIENT|RIGHT|ROUND|ROUNDDOWN|ROUNDUP|ROW|ROWS|SEARCH|SIGN|SMALL|SQRT|SUBSTITUTE|SUM|SUMIF|"
    "SUMIFS|SUMPRODUCT|TEXT|TRIM|TRUE|TRUNC|UPPER|VALUE|VLOOKUP|XOR"
)
"""Functions that work out a value from cells of the same book, and do nothing else."""
_FUNCTION = re.compile(r"([A-Za-z_][\w.]*)\s*\(")
_WORDS = re.compile(r'"[^"]*"')
_OUT = re.compile(r"[\[|\\]|://|#REF")


def harmless(formula: object) -> bool:
    """True for a formula of plain sums over cells of its own book."""
    if not isinstance(formula, str):
        return False
    bare = _WORDS.sub("", formula)
    known = all(SUMS.fullmatch(name.upper().removeprefix("_XLFN.")) for name in _FUNCTION.findall(bare))
    return known and _OUT.search(bare) is None


def disarm(book: Workbook, shown: Workbook) -> None:
    """Take out of a workbook what reaches out of it. `shown`: the same workbook with results instead of formulas."""
    for sheet in book.worksheets:
        _sheet(sheet, shown[sheet.title])
    for names in (book.defined_names, *(sheet.defined_names for sheet in book.worksheets)):
        for name in [name for name, one in names.items() if not harmless(one.attr_text)]:
            del names[name]


def _sheet(sheet: Any, shown: Any) -> None:
    for (row, column), cell in list(sheet._cells.items()):
        if cell.hyperlink is not None:
            cell.hyperlink = None
        if cell.data_type == "f" and not harmless(cell.value):
            cell.value = None
            _result(cell, shown.cell(row, column))
    sheet._hyperlinks, sheet._pivots = [], []
    _only_harmless(sheet)


def _result(cell: Any, stored: Any) -> None:
    """The stored result, as what it is: text stays text, however it begins."""
    if isinstance(stored.value, str):
        cell._value, cell.data_type = stored.value, "s"
    elif stored.value is not None:
        cell.value = stored.value


def _only_harmless(sheet: Any) -> None:
    lists = sheet.data_validations
    lists.dataValidation = [
        one
        for one in lists.dataValidation
        if all(part is None or harmless(part) for part in (one.formula1, one.formula2))
    ]
    kept = type(sheet.conditional_formatting)()
    for cells in sheet.conditional_formatting:
        for rule in cells.rules:
            if _all_harmless(rule.formula):
                kept.add(str(cells.sqref), rule)
    sheet.conditional_formatting = kept


def _all_harmless(formulas: Iterable[object]) -> bool:
    return all(one is None or harmless(one) for one in formulas)
