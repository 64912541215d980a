"""What a remedy says it changes, in the survey's own fields and the file's unit."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from budgetfix.catalog.models import SetChange
from budgetfix.forms.catalog_form import FIELDS_OF
from budgetfix.forms.column import Column, Unread
from budgetfix.intake.inside import Inside, Part, at, each, only
from budgetfix.intake.raw_rows import close_to
from budgetfix.intake.reader import Record, as_text
from budgetfix.intake.yaml_lines import Key
from budgetfix.room.items import ITEM_OF, TABLES, Table
from budgetfix.room.survey import Value

Fields = tuple[tuple[str, Value], ...]
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


def _fields(given: Mapping[str, object], unit: str, table: str | None = None) -> Fields:
    """Every field read; without a `table` a field may belong to any."""
    tables = [FIELDS_OF[table]] if table is not None else list(FIELDS_OF.values())
    return tuple(sorted(each(given.items(), lambda name, value: (str(name), _value(str(name), value, unit, tables)))))


def _value(name: str, value: object, unit: str, tables: list[dict[str, Column]]) -> Value:
    columns = [fields[name] for fields in tables if name in fields]
    if not columns:
        near = close_to(name, sorted({field for fields in tables for field in fields}))
        raise Inside(Part(name, f"no field of the survey is called that; {near}".removesuffix("; ")))
    if value is None or (isinstance(value, str) and value.lower() in EMPTY and "none" not in columns[0].choices):
        return None
    said = ""
    for column in columns:
        try:
            found = column.read(value, unit)
            return float(found) if isinstance(found, Fraction) else found
        except Unread as advice:
            said = said or f"{name}: {column.wanted}" + (f"; {advice}" if str(advice) else "")
    raise ValueError(said)


def read_changes(record: Record, field: str, unit: str) -> tuple[SetChange, ...]:
    """`[{item: screen, set: {bottom: 554}}, {add: lights, item: lamp, what: floor lamp}, {remove: rug}]`.

    In a workbook: `screen: bottom = 554 | remove rug`, and `add lights lamp: what = floor lamp; ...`.
    """
    wanted = "changes such as [{item: screen, set: {bottom: 554}}]"
    none: tuple[SetChange, ...] = ()
    return record.read(
        field, none, lambda value: tuple(each(_listed(value), lambda _, one: _change(one, unit))), wanted
    )


def _listed(value: object) -> list[tuple[Key, object]]:
    if isinstance(value, dict):
        raise ValueError("each change behind a dash")
    if not isinstance(value, list):
        value = [_typed(part.strip()) for part in str(value).split("|") if part.strip()]
    return list(enumerate(value))


def _typed(text: str) -> dict[str, object]:
    if text.startswith("remove "):
        return {"remove": text.removeprefix("remove ").strip()}
    head, colon, rest = text.partition(":")
    if not colon:
        raise ValueError(f"'{text}' has no colon")
    if head.startswith("add "):
        table, _, item = head.removeprefix("add ").strip().partition(" ")
        return {"add": table, "item": item.strip(), **_mapping(rest)}
    return {"item": head.strip(), "set": _mapping(rest)}


def _change(given: object, unit: str) -> SetChange:
    if not isinstance(given, dict):
        raise ValueError("a change in braces")
    if "remove" in given:
        only(given, ("remove",))
        return SetChange(item=at("remove", given["remove"], _name), remove=True)
    item = at("item", given.get("item"), _name)
    if "add" in given:
        table = at("add", given["add"], _table)
        fields = {str(name): value for name, value in given.items() if name not in ("add", "item")}
        added = SetChange(table=table, item=item, set=_fields(fields, unit, table), add=True)
        _whole(added, table)
        return added
    only(given, ("item", "set"))
    return SetChange(item=item, set=at("set", given.get("set"), lambda value: _fields(_mapping(value or {}), unit)))


def _name(value: object) -> str:
    name = as_text(value) if value is not None else ""
    if not name:
        raise ValueError("each change names its thing")
    return name


def _table(value: object) -> Table:
    for table in TABLES:
        if table == value:
            return table
    raise ValueError(f"one of: {', '.join(TABLES)}")


def _whole(added: SetChange, table: Table) -> None:
    """A thing that is added has every field that its table cannot do without. Errors: ValueError."""
    given = dict(added.set)
    for name, field in ITEM_OF[table].model_fields.items():
        if field.is_required() and name != "name" and given.get(name) is None:
            raise ValueError(f"{added.item}: {name} is missing")
