"""What could be done: every kind tried on every fault that it answers, and every remedy of the user's catalog."""

from __future__ import annotations

from collections.abc import Iterable

from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog, Remedy, SetChange
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.judging import judges
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.remedies.cares import cares_for
from budgetfix.remedies.kind import Kind, Site, work_of
from budgetfix.remedies.registry import KINDS
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
    if survey is not None:
        for one in _own(survey, catalog, brief, findings):
            if (one.changes, one.uses) not in same:
                made.setdefault(one.id, one)
    return tuple(made[id] for id in sorted(made))


def _own(survey: Survey, catalog: Catalog, brief: Brief, findings: Iterable[Finding]) -> Iterable[Candidate]:
    judged = {judge.rule.slug: judge for judge in judges(RULES, brief)}
    for finding in sorted(findings, key=lambda one: (one.room, one.rule, one.subject)):
        site = Site(survey, finding.room, finding.subject, catalog, brief, finding, judged.get(finding.rule))
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
        work=_work(remedy, kind),
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


def _work(remedy: Remedy, kind: Kind | None) -> tuple[Work, ...]:
    phase = remedy.phase if remedy.phase is not None else (kind.phase if kind is not None else OWN_PHASE)
    if not remedy.steps:
        return () if kind is None or remedy.answers else (work_of(kind, remedy.name, people=remedy.people),)
    return tuple(
        Work(
            step.text or remedy.name,
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
    given = [_stated(change, survey) for change in remedy.changes]
    if remedy.on is not None and remedy.on in survey.named and remedy.set:
        given.insert(0, Change(survey.named[remedy.on][0], remedy.on, remedy.set))
    if not given and kind is not None and remedy.on is not None and remedy.on in survey.named:
        return _sized(remedy, survey, kind, catalog, brief)
    return tuple(given)


def _sized(remedy: Remedy, survey: Survey, kind: Kind, catalog: Catalog, brief: Brief) -> tuple[Change, ...]:
    """What the kind itself would change on that thing, with the products that the remedy names."""
    on = remedy.on or ""
    named = tuple(product for product, _ in remedy.uses) or None
    site = Site(survey, survey.named[on][1].room, on, catalog, brief, products=named)
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
