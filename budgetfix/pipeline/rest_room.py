"""The rooms as they stand after what is done, and as they were before it.

A survey that was measured again wins, field by field: a change that is done sets a field only where the survey still
says what it said when the plan was made.
"""

from __future__ import annotations

from collections.abc import Iterable

from pydantic import ValidationError

from budgetfix.outcome.so_far import Planned
from budgetfix.room.items import ITEM_OF, Item
from budgetfix.room.survey import Change, Survey, Value

Was = dict[str, dict[str, Value]]
"""Fields as they were surveyed before, by thing."""


def room_now(survey: Survey, done: Iterable[Planned]) -> Survey:
    """The survey with every change of what is done, in this order, as far as it does not know it already."""
    ours: set[tuple[str, str]] = set()
    now = survey
    for one in done:
        was = _was(one)
        for change in one.candidate.changes:
            kept = _kept(survey, now, change, was.get(change_item(change), {}), ours)
            if kept is not None:
                now = _known(now.changed([kept]), kept)
                ours |= {(change_item(kept), name) for name, _ in kept.set} | {(change_item(kept), "")}
    return now


def room_before(survey: Survey, done: Iterable[Planned]) -> Survey:
    """The survey as it was before anything was done, also where some of it was measured again since."""
    before = survey
    for one in reversed(tuple(done)):
        was = _was(one)
        for change in reversed(one.candidate.changes):
            back = _back(before, change, was.get(change_item(change), {}))
            before = before.changed([back]) if back is not None else before
    return before


def change_item(change: Change) -> str:
    """The thing that a change is about."""
    return change.add.name if change.add is not None else change.item


def _was(one: Planned) -> Was:
    found: Was = {}
    for thing, field, value in one.was:
        found.setdefault(thing, {})[field] = value
    return found


def _kept(
    survey: Survey, now: Survey, change: Change, was: dict[str, Value], ours: set[tuple[str, str]]
) -> Change | None:
    """What of a change is still to be made; None for nothing. `ours`: what was changed before it."""
    name = change_item(change)
    there, stands = _thing(survey, name), _thing(now, name)
    mine = any(thing == name for thing, _ in ours)
    same = there is None if not was else there is not None and all(_same(there, *pair) for pair in was.items())
    if change.add is not None:
        return change if same or mine else None
    if stands is None:
        return None
    if change.remove:
        return change if same or mine else None
    fields = tuple(
        (field, value)
        for field, value in change.set
        if (name, field) in ours or field not in was or there is None or _same(there, field, was[field])
    )
    return Change(change.table, change.item, fields) if fields else None


def _back(survey: Survey, change: Change, was: dict[str, Value]) -> Change | None:
    """What undoes a change; None where nothing is to be undone."""
    name = change_item(change)
    thing = _thing(survey, name)
    if thing is not None and change.add is not None and not was:
        return Change(change.table, name, remove=True)
    if thing is None:
        rebuilt = _rebuilt(change, was)
        return Change(change.table, name, add=rebuilt) if rebuilt is not None else None
    fields = tuple((field, value) for field, value in sorted(was.items()) if not _same(thing, field, value))
    return Change(change.table, name, fields) if fields else None


def _rebuilt(change: Change, was: dict[str, Value]) -> Item | None:
    """A thing that the survey has no longer; None where too little of it was remembered."""
    if not was:
        return None
    try:
        return ITEM_OF[change.table].model_validate(was)  # type: ignore[return-value]
    except ValidationError:
        return None


def _known(survey: Survey, change: Change) -> Survey:
    """Fields that a remedy has set are no guesses any more."""
    known = {(change.item, name) for name, _ in change.set} & survey.guessed
    if not known:
        return survey
    fields = {name: getattr(survey, name) for name in Survey.model_fields}
    return Survey(**{**fields, "guessed": survey.guessed - known})


def _thing(survey: Survey, name: str) -> Item | None:
    return survey.named.get(name, (None, None))[1]


def _same(thing: Item, field: str, value: Value) -> bool:
    return bool(getattr(thing, field, None) == value)
