"""From records back to what a person would have typed: the cells of a filled form."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from budgetfix.base.tape import in_unit
from budgetfix.brief.models import ListedFault
from budgetfix.forms.column import FIRST_DATE, LAST_DATE, Column
from budgetfix.forms.survey_form import FORM_OF, HOME
from budgetfix.room.items import Hung
from budgetfix.room.survey import Household, RoomFacts, Survey, Wall

HOLE_OF = {"nail": "pin hole", "screws": "plug hole"}
MARK_NAME = re.compile(r"Marks \d+")
Typed = str | int | float
Row = dict[str, Typed]


def typed_rows(survey: Survey, faults: Sequence[ListedFault]) -> dict[str, list[Row]]:
    """The rows of every table by field. What was guessed or is usual stays empty."""
    rows: dict[str, list[Row]] = {table: [] for table in FORM_OF}
    alone = len(survey.rooms) < 2
    for table in FORM_OF:
        records: Sequence[object] = faults if table == "faults" else _things(survey, table)
        for record in records:
            row = _row(FORM_OF[table], record, survey, survey.household.unit)
            if table == "marks" and isinstance(record, Hung):
                row |= {"what": HOLE_OF.get(record.fixing, record.group), "things": record.things}
            if table != "rooms" and alone:
                row.pop("room", None)
            rows[table].append(row)
    return rows


def _things(survey: Survey, table: str) -> Sequence[object]:
    """The records of a table; marks stand among what hangs, and have a sheet of their own."""
    if table in ("pictures", "marks"):
        return [one for one in survey.pictures if _is_mark(one) == (table == "marks")]
    return getattr(survey, table)  # type: ignore[no-any-return]  # a table of the survey


def _is_mark(hung: Hung) -> bool:
    """True for what a line of marks is read as."""
    named = MARK_NAME.fullmatch(hung.name) is not None and hung.width == hung.height
    return hung.what == "mark" or (hung.what == "old holes" and named and hung.fixing in HOLE_OF)


def _row(columns: tuple[Column, ...], record: object, survey: Survey, unit: str) -> Row:
    fields = dict(record)  # type: ignore[call-overload]
    name = str(fields["room"] if isinstance(record, RoomFacts) else fields.get("name", ""))
    row: Row = {}
    skip = _placed_on_a_piece(survey, name) if "switch" in fields else ()
    for column in columns:
        value = fields.get(column.field)
        if value is None or value == "" or (name, column.field) in survey.guessed or column.field in skip:
            continue
        usual = type(record).model_fields[column.field].default  # type: ignore[attr-defined]
        always = isinstance(record, RoomFacts) or column.defaults or column.needed or column.needed_for
        if value != usual or always:
            row[column.field] = typed(column, value, unit)
    if isinstance(record, Wall) and record.turn == 90.0:
        row.pop("turn", None)
    return row


def _placed_on_a_piece(survey: Survey, name: str) -> tuple[str, ...]:
    return ("wall", "from_left", "gap") if (name, "from_left") in survey.guessed else ()


def typed(column: Column, value: object, unit: str) -> Typed:
    """One value as a person would type it."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if column.kind == "turn" and value in (90.0, -90.0):
        return "right" if value == 90.0 else "left"
    if column.kind == "length" and isinstance(value, (int, float)):
        bare = in_unit(float(value), unit)
        return f"{bare} {unit}" if not isinstance(bare, str) and FIRST_DATE <= bare <= LAST_DATE else bare
    if isinstance(value, float) and value.is_integer():
        return int(value)
    return value if isinstance(value, (str, int, float)) else str(value)


def typed_home(household: Household) -> Row:
    """The home's facts; what is not known is `not sure`."""
    facts = dict(household)
    row: Row = {}
    for column in HOME:
        value = facts[column.field]
        row[column.field] = "not sure" if value is None else typed(column, value, household.unit)
    return row


def typed_brief(fields: Mapping[str, object]) -> Row:
    """The brief's simple fields: a list of hours as `3; 2`, each other value as it is."""
    row: Row = {}
    for name, found in fields.items():
        value = found[0] if isinstance(found, tuple) else found
        if isinstance(value, (list, tuple)):
            value = "; ".join(f"{hours:g}" if isinstance(hours, float) else str(hours) for hours in value)
        if isinstance(value, (str, int, float)) and not isinstance(value, bool):
            row[name] = int(value) if isinstance(value, float) and value.is_integer() else value
    return row
