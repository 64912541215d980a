"""A survey as the text of survey.yaml: what is read back from it is the same survey. Same input, same bytes."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from budgetfix.brief.models import ListedFault
from budgetfix.exports.survey_cells import Row, Typed, typed_home, typed_rows
from budgetfix.forms.column import Column
from budgetfix.forms.survey_form import FORM_OF
from budgetfix.room.survey import Survey

SQUARE = 90.0
PLAIN = re.compile(r"[A-Za-z][A-Za-z0-9]*([ -][A-Za-z0-9]+)*")
"""Text that needs no quotes, unless it is one of the words."""
WORDS = ("yes", "no", "true", "false", "null", "on", "off", "y", "n")
"""Words that some reader of YAML takes for something else than text."""
UNSEEN = re.compile(r"[^\t\n\x20-\x7e\xa0-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]")
"""What YAML 1.2 does not take as it is (chapter 5.1, c-printable, less the mark of byte order)."""
CHOSEN = ("choice", "yes-no", "yes-no-unknown", "turn")
"""Kinds of columns whose words are ours."""


def survey_yaml(survey: Survey, faults: Sequence[ListedFault] = (), told: Iterable[str] = ()) -> bytes:
    """The file's bytes, UTF-8. `told`: lines for the reader at its head. Lengths stand in the survey's own unit."""
    rows = typed_rows(survey, faults)
    if survey.rooms and not survey.rooms[0].room:
        rows["rooms"] = []
    _turned(survey, rows["walls"])
    home = typed_home(survey.household)
    unit = str(home.pop("unit"))
    lines = [*(f"# {line}" for line in told), f"unit: {unit}", f"home: {_flow(home, ())}"]
    for table, columns in FORM_OF.items():
        if rows[table]:
            lines += [f"{table}:", *(f"  - {_flow(_by_column(row, columns), columns)}" for row in rows[table])]
    return ("\n".join(lines) + "\n").encode("utf-8")


def _turned(survey: Survey, rows: Sequence[Row]) -> None:
    """Where a corner is not square every turn is written, but the last where it follows from the others."""
    typed = list(zip(survey.walls, rows, strict=True))
    for room in dict.fromkeys(wall.room for wall in survey.walls):
        mine = [(wall, row) for wall, row in typed if wall.room == room]
        turns = [wall.turn for wall, _ in mine]
        if all(turn == SQUARE for turn in turns):
            continue
        for turn, (_, row) in zip(turns, mine, strict=True):
            row["turn"] = {SQUARE: "right", -SQUARE: "left"}.get(turn, turn)
        if turns[-1] == 360.0 - sum(turns[:-1]):
            mine[-1][1].pop("turn")


def _by_column(row: Row, columns: Sequence[Column]) -> Row:
    return {column.field: row[column.field] for column in columns if column.field in row}


def _flow(row: Mapping[str, Typed], columns: Sequence[Column]) -> str:
    ours = {column.field for column in columns if column.kind in CHOSEN} if columns else set(row)
    return "{" + ", ".join(f"{name}: {_value(value, name in ours)}" for name, value in row.items()) + "}"


def _value(value: Typed, ours: bool) -> str:
    if not isinstance(value, str):
        return format(Decimal(repr(value)), "f")
    plain = PLAIN.fullmatch(value) is not None and (ours or value.lower() not in WORDS)
    return value if plain else _quoted(value)


def _quoted(text: str) -> str:
    """In double quotes; what cannot be seen stands as its number."""
    return UNSEEN.sub(_escaped, json.dumps(text, ensure_ascii=False))


def _escaped(found: re.Match[str]) -> str:
    number = ord(found[0])
    return f"\\u{number:04x}" if number < 0x10000 else f"\\U{number:08x}"
