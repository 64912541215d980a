"""What a remedy changes, as the words that fit into one cell of a workbook."""

from __future__ import annotations

from budgetfix.base.tape import in_unit
from budgetfix.catalog.models import SetChange
from budgetfix.forms.catalog_form import FIELDS_OF
from budgetfix.room.survey import Value


def set_text(fields: tuple[tuple[str, Value], ...], unit: str) -> str:
    """`rod_height = 2390; rod_width = 1900`, lengths in `unit`."""
    return "; ".join(f"{name} = {_word(name, value, unit)}" for name, value in fields)


def changes_text(changes: tuple[SetChange, ...], unit: str) -> str:
    """`screen: bottom = 554 | remove old rug | add lights new lamp: what = floor lamp`."""
    return " | ".join(_change(change, unit) for change in changes)


def _change(change: SetChange, unit: str) -> str:
    if change.remove:
        return f"remove {change.item}"
    head = f"add {change.table} {change.item}" if change.add else change.item
    return f"{head}: {set_text(change.set, unit)}"


def _is_length(name: str) -> bool:
    return any(fields[name].kind == "length" for fields in FIELDS_OF.values() if name in fields)


def _word(name: str, value: Value, unit: str) -> str:
    if value is None:
        return "none"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, (int, float)) and _is_length(name):
        return str(in_unit(float(value), unit))
    return str(int(value)) if isinstance(value, float) and value.is_integer() else str(value)
