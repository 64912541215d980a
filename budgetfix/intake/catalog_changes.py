"""What a remedy says it changes, in the survey's own fields and the file's unit."""

from __future__ import annotations

from typing import cast

from budgetfix.catalog.models import SetChange
from budgetfix.forms.catalog_form import THING_FIELDS
from budgetfix.forms.column import Unread
from budgetfix.intake.raw_rows import close_to
from budgetfix.intake.reader import Record
from budgetfix.room.items import TABLES
from budgetfix.room.survey import Value

EMPTY = ("null", "none", "~")


def read_set(record: Record, field: str, unit: str) -> tuple[tuple[str, Value], ...]:
    """`{rod_width: 1900}`, or in a workbook `rod_width = 1900; rod_height = 2390`."""
    return record.read(field, (), lambda value: _fields(_mapping(value), unit), "fields such as rod_width: 1900")


def _mapping(value: object) -> dict[str, object]:
    if isinstance(value, dict):
        return {str(key): each for key, each in value.items()}
    found: dict[str, object] = {}
    for part in str(value).split(";"):
        if part.strip():
            name, sign, each = part.partition("=")
            if not sign:
                raise ValueError(f"'{part.strip()}' has no =")
            found[name.strip()] = each.strip()
    return found


def _fields(given: dict[str, object], unit: str) -> tuple[tuple[str, Value], ...]:
    return tuple(sorted((name, _value(name, value, unit)) for name, value in given.items()))


def _value(name: str, value: object, unit: str) -> Value:
    if name not in THING_FIELDS:
        raise ValueError(f"'{name}' is no field of the survey. {close_to(name, list(THING_FIELDS))}".strip())
    if value is None or (isinstance(value, str) and value.lower() in EMPTY):
        return None
    column = THING_FIELDS[name]
    try:
        return cast(Value, column.read(value, unit))
    except Unread as advice:
        raise ValueError(f"{name}: wanted {column.wanted}" + (f"; {advice}" if str(advice) else "")) from None


def read_changes(record: Record, field: str, unit: str) -> tuple[SetChange, ...]:
    """`[{item: screen, set: {bottom: 554}}, {add: lights, item: lamp, what: floor lamp}, {remove: rug}]`.

    In a workbook: `screen: bottom = 554 | remove rug`, and `add lights lamp: what = floor lamp; ...`.
    """
    wanted = "changes such as [{item: screen, set: {bottom: 554}}]"
    return record.read(field, (), lambda value: tuple(_change(item, unit) for item in _listed(value)), wanted)


def _listed(value: object) -> list[dict[str, object]]:
    if isinstance(value, list):
        if not all(isinstance(item, dict) for item in value):
            raise ValueError("")
        return [dict(item) for item in value]
    return [_typed(part.strip()) for part in str(value).split("|") if part.strip()]


def _typed(text: str) -> dict[str, object]:
    if text.startswith("remove "):
        return {"remove": text.removeprefix("remove ").strip()}
    head, colon, rest = text.partition(":")
    if not colon:
        raise ValueError(f"'{text}' has no colon")
    if head.startswith("add "):
        _, table, item = head.split(maxsplit=2)
        return {"add": table, "item": item.strip(), **_mapping(rest)}
    return {"item": head.strip(), "set": _mapping(rest)}


def _change(given: dict[str, object], unit: str) -> SetChange:
    if "remove" in given:
        return SetChange(item=str(given["remove"]), remove=True)
    if "item" not in given:
        raise ValueError("each change names its item")
    item = str(given["item"])
    if "add" in given:
        table = str(given["add"])
        if table not in TABLES:
            raise ValueError(f"'{table}' is no table. There are: {', '.join(TABLES)}")
        fields = {name: value for name, value in given.items() if name not in ("add", "item")}
        return SetChange(table=table, item=item, set=_fields(fields, unit), add=True)
    return SetChange(item=item, set=_fields(_mapping(given.get("set") or {}), unit))
