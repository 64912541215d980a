"""What could be done: every kind tried on every fault that it answers, and every remedy of the user's catalog."""

from __future__ import annotations

from collections.abc import Container, Iterable
from dataclasses import replace
from itertools import chain, count

from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog, Remedy, SetChange
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.judging import judges
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.remedies.cares import cares_for
from budgetfix.remedies.kind import Kind, Site
from budgetfix.remedies.registry import KINDS
from budgetfix.remedies.telling import told
from budgetfix.room.items import ITEM_OF, Item, Table
from budgetfix.room.survey import Change, Household, Survey, Value

OWN_PHASE = 8
"""Phase of a remedy that says nothing of its own and has no kind."""


def candidates(
    survey: Survey | None, catalog: Catalog, brief: Brief, findings: Iterable[Finding]
) -> tuple[Candidate, ...]:
    """All candidates by id: the user's first where two do the same; without a survey only the user's."""
    made = {remedy.remedy: _users(remedy, survey, catalog, brief) for remedy in catalog.remedies}
    same = {(one.changes, one.uses) for one in made.values()}
    for one in _own(survey, catalog, brief, findings) if survey is not None else ():
        if (one.changes, one.uses) not in same:
            same.add((one.changes, one.uses))
            id = _free_id(one.id, made)
            made[id] = replace(one, id=id)
    return tuple(made[id] for id in sorted(made))


def _free_id(id: str, taken: Container[str]) -> str:
    """The id, or the id with the first number that is free: two faults of one thing may ask for two moves."""
    return next(one for one in chain([id], (f"{id}#{number}" for number in count(2))) if one not in taken)


def _own(survey: Survey, catalog: Catalog, brief: Brief, findings: Iterable[Finding]) -> Iterable[Candidate]:
    judged = {judge.rule.slug: judge for judge in judges(RULES, brief)}
    for finding in sorted(findings, key=lambda one: (one.room, one.rule, one.subject)):
        site = Site(
            survey, finding.room, finding.subject, catalog, brief, finding, judged.get(finding.rule), judges=judged
        )
        for kind in KINDS:
            if finding.rule in kind.targets:
                yield from kind.fit(site)


def _users(remedy: Remedy, survey: Survey | None, catalog: Catalog, brief: Brief) -> Candidate:
    kind = next((kind for kind in KINDS if kind.kind == remedy.kind), None)
    changes = _changes(remedy, survey, kind, catalog, brief) if survey is not None else ()
    home = survey.household if survey is not None else Household()
    hazards = kind.hazards if kind is not None else ()
    room = survey.named[remedy.on][1].room if survey is not None and remedy.on in survey.named else ""
    cares = (*remedy.cares, *cares_for(hazards, home))
    return Candidate(
        id=remedy.remedy,
        kind=remedy.kind or "declared",
        name=remedy.name or remedy.remedy,
        subject=remedy.on or "",
        room=room,
        key=remedy.pick_one or remedy.remedy,
        changes=changes,
        uses=remedy.uses,
        tools=remedy.tools,
        cost_minor=remedy.cost_minor,
        work=_work(remedy, kind, told(survey, changes) if survey is not None else ""),
        spends=remedy.spends,
        needs=remedy.needs,
        excludes=remedy.excludes,
        pick_one=remedy.pick_one or "",
        answers=remedy.answers,
        targets=kind.targets if kind is not None else (),
        hazards=hazards,
        cares=tuple(dict.fromkeys(cares)),
        done_when=kind.done_when if kind is not None else "",
    )


def _work(remedy: Remedy, kind: Kind | None, places: str) -> tuple[Work, ...]:
    phase = remedy.phase if remedy.phase is not None else (kind.phase if kind is not None else OWN_PHASE)
    if not remedy.steps:
        return ()
    return tuple(
        Work(
            step.text or places or remedy.name,
            step.minutes,
            step.minutes if step.low is None else step.low,
            step.minutes if step.likely is None else step.likely,
            step.minutes if step.high is None else step.high,
            step.people or remedy.people,
            phase,
            step.wait_sessions,
            step.wait_minutes,
        )
        for step in remedy.steps
    )


def _changes(remedy: Remedy, survey: Survey, kind: Kind | None, catalog: Catalog, brief: Brief) -> tuple[Change, ...]:
    stated = tuple(_stated(change, survey) for change in remedy.changes)
    if remedy.on is None or remedy.on not in survey.named:
        return stated
    if not remedy.set and stated:
        return stated
    sized = _sized(remedy, survey, kind, catalog, brief) if kind is not None else ()
    if not remedy.set:
        return sized
    mine = {name: value for one in sized if one.item == remedy.on and one.add is None for name, value in one.set}
    filled = {name: mine[name] for name in (kind.fills if kind is not None else ()) if name in mine}
    whole = Change(survey.named[remedy.on][0], remedy.on, tuple(sorted({**filled, **dict(remedy.set)}.items())))
    follow = tuple(one for one in sized if one.item != remedy.on) if kind is not None and kind.follows else ()
    return (whole, *(stated or follow))


def _sized(remedy: Remedy, survey: Survey, kind: Kind, catalog: Catalog, brief: Brief) -> tuple[Change, ...]:
    """What the kind itself would change on that thing, with the products that the remedy names."""
    on = remedy.on or ""
    named = tuple(product for product, _ in remedy.uses) or None
    site = Site(survey, survey.named[on][1].room, on, catalog, brief, products=named, fixed=remedy.set)
    fitted = kind.fit(site)
    return fitted[0].changes if fitted else ()


def _stated(change: SetChange, survey: Survey) -> Change:
    if change.remove:
        table: Table = survey.named[change.item][0] if change.item in survey.named else "furniture"
        return Change(table, change.item, remove=True)
    if change.add and change.table is not None:
        return Change(change.table, change.item, add=thing(change.table, change.item, dict(change.set)))
    table = survey.named[change.item][0] if change.item in survey.named else "furniture"
    return Change(table, change.item, change.set)


def thing(table: Table, name: str, fields: dict[str, Value]) -> Item:
    """A new thing of a table. Errors: pydantic's ValidationError for fields that it does not have."""
    made: Item = ITEM_OF[table].model_validate({"name": name, **fields})  # type: ignore[assignment]  # the table's own type
    return made


__all__ = ["candidates", "thing"]
