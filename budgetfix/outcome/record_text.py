"""What a workbook remembers as lines of text (JSON, plain ASCII), and back; each line, step and candidate apart.

Tables of things say which class an added thing has: nothing is guessed from its fields.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cache
from typing import Any, cast

from pydantic import TypeAdapter, ValidationError

from budgetfix.base.signs import forbidden, tidied
from budgetfix.outcome.so_far import Planned, PlannedLine, PlannedStep, Remembered
from budgetfix.room.items import ITEM_OF, Item
from budgetfix.room.survey import Change

VERSION = 1
"""Of the way in which a plan is remembered; another one is not read."""
PLAN, LINE, STEP, CANDIDATE = "plan", "line", "step", "candidate"


class NoRecord(ValueError):
    """A text that is not as it was written. `at`: which of them, from 0; None for what is missing."""

    def __init__(self, at: int | None, why: str) -> None:
        super().__init__(why)
        self.at = at


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text with its kind."""

    kind: str
    text: str


def as_texts(remembered: Remembered) -> tuple[Text, ...]:
    """The plan's own figures, then each line, step and candidate."""
    plan = replace(remembered, lines=(), steps=(), candidates=())
    return (
        Text(PLAN, _dumped(_adapter(Remembered), plan)),
        *(Text(LINE, _dumped(_adapter(PlannedLine), one)) for one in remembered.lines),
        *(Text(STEP, _dumped(_adapter(PlannedStep), one)) for one in remembered.steps),
        *(Text(CANDIDATE, _dumped(_adapter(Planned), one)) for one in remembered.candidates),
    )


def from_texts(texts: Iterable[Text]) -> Remembered:
    """What the texts say. Errors: NoRecord."""
    found: dict[str, list[Any]] = {PLAN: [], LINE: [], STEP: [], CANDIDATE: []}
    for at, one in enumerate(texts):
        if one.kind not in found:
            raise NoRecord(at, "no kind of record")
        try:
            _sound(json.loads(one.text))
            found[one.kind].append(_read(one))
        except (ValidationError, ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
            raise NoRecord(at, "a text that cannot be read") from error
    if len(found[PLAN]) != 1:
        raise NoRecord(None, "nothing of the plan itself" if not found[PLAN] else "the plan itself twice")
    _once(one.id for one in (*found[LINE], *found[STEP]))
    _once(one.candidate.id for one in found[CANDIDATE])
    plan: Remembered = found[PLAN][0]
    return replace(plan, lines=tuple(found[LINE]), steps=tuple(found[STEP]), candidates=tuple(found[CANDIDATE]))


def _read(one: Text) -> object:
    if one.kind == CANDIDATE:
        return _candidate(one.text)
    shape = {PLAN: Remembered, LINE: PlannedLine, STEP: PlannedStep}[one.kind]
    return _adapter(shape).validate_json(one.text)


def _sound(value: object) -> None:
    """Errors: ValueError, where a text holds a sign that does something, which no plan of ours would remember."""
    match value:
        case str():
            if forbidden(value) or tidied(value) != value:
                raise ValueError("a text that does something")
        case list():
            for part in value:
                _sound(part)
        case dict():
            for key, part in value.items():
                _sound(key)
                _sound(part)


def _once(ids: Iterable[str]) -> None:
    seen: set[str] = set()
    for id in ids:
        if id in seen:
            raise NoRecord(None, f"'{id}' twice")
        seen.add(id)


@cache
def _adapter(shape: type[Any]) -> TypeAdapter[Any]:
    return TypeAdapter(shape)


def _dumped(adapter: TypeAdapter[Any], value: object) -> str:
    """Spreadsheets take `_x0041_` for a letter of its own, so that no text holds an underscore before an x."""
    data = json.dumps(adapter.dump_python(value, mode="json"), ensure_ascii=True, separators=(",", ":"))
    return data.replace("_x", "\\u005fx")


def _candidate(text: str) -> Planned:
    """A candidate whose added things are read by the table that they belong to."""
    data = json.loads(text)
    changes = data["candidate"]["changes"]
    added = [change.pop("add", None) for change in changes]
    planned = cast(Planned, _adapter(Planned).validate_json(json.dumps(data)))
    whole = tuple(map(_with_thing, planned.candidate.changes, added))
    return replace(planned, candidate=replace(planned.candidate, changes=whole))


def _with_thing(change: Change, added: object) -> Change:
    if added is None:
        return change
    shape = ITEM_OF[change.table]
    return replace(change, add=cast(Item, shape.model_validate_json(json.dumps(added))))
