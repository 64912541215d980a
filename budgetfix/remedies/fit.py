"""What could be done: every kind tried on every fault that it answers, and every remedy of the user's catalog."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable
from dataclasses import replace
from itertools import chain, count

from budgetfix.brief.models import Brief
from budgetfix.catalog.models import Catalog, Remedy, SetChange
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.judging import judges
from budgetfix.inspection.registry import RULES
from budgetfix.remedies.candidate import Candidate, Leaves, Work
from budgetfix.remedies.cares import cares_for
from budgetfix.remedies.following import Following, following, says
from budgetfix.remedies.kind import Kind, Site
from budgetfix.remedies.lifting import load_cares
from budgetfix.remedies.old_paint import disturbed_mm2
from budgetfix.remedies.registry import KINDS
from budgetfix.remedies.telling import told
from budgetfix.room.items import ITEM_OF, Item, Light, Table
from budgetfix.room.survey import Change, Household, Survey, Value

OWN_PHASE = 8
"""Phase of a remedy that says nothing of its own and has no kind."""
BY_TOOL = ("drill", "ladder")
"""Tools that are a hazard by their own name, whoever's remedy lists them."""
MOVED = ("room", "wall", "from_left", "bottom")


def candidates(
    survey: Survey | None,
    catalog: Catalog,
    brief: Brief,
    findings: Iterable[Finding],
    *,
    rooms: bool = True,
    at: Callable[[str], None] = lambda _: None,
) -> tuple[Candidate, ...]:
    """All candidates by id: the user's first where two do the same; without a survey only the user's.

    `rooms` False: without the kinds that look at a whole room. `at`: told of each room as it is come to.
    """
    made = {remedy.remedy: _users(remedy, survey, catalog, brief) for remedy in catalog.remedies}
    same = {(one.changes, one.uses) for one in made.values()}
    faults = tuple(findings)
    fitted = _own(survey, catalog, brief, faults, at) if survey is not None else ()
    whole = _whole_rooms(survey, catalog, brief, faults, at) if survey is not None and rooms else ()
    for one in chain(fitted, whole):
        if (one.changes, one.uses) not in same:
            same.add((one.changes, one.uses))
            id = _free_id(one.id, made)
            made[id] = replace(one, id=id)
    return tuple(made[id] for id in sorted(made))


def _free_id(id: str, taken: Container[str]) -> str:
    """The id, or the id with the first number that is free: two faults of one thing may ask for two moves."""
    return next(one for one in chain([id], (f"{id}#{number}" for number in count(2))) if one not in taken)


def _own(
    survey: Survey, catalog: Catalog, brief: Brief, findings: Iterable[Finding], at: Callable[[str], None]
) -> Iterable[Candidate]:
    judged = {judge.rule.slug: judge for judge in judges(RULES, brief)}
    for finding in sorted(findings, key=lambda one: (one.room, one.rule, one.subject)):
        at(finding.room)
        site = Site(
            survey, finding.room, finding.subject, catalog, brief, finding, judged.get(finding.rule), judges=judged
        )
        for kind in KINDS:
            if finding.rule in kind.targets and not kind.whole_room:
                yield from kind.fit(site)


def _whole_rooms(
    survey: Survey, catalog: Catalog, brief: Brief, findings: Iterable[Finding], at: Callable[[str], None]
) -> Iterable[Candidate]:
    """The kinds that look at a whole room, once for each room that has one of their faults."""
    judged = {judge.rule.slug: judge for judge in judges(RULES, brief)}
    for facts in survey.rooms:
        at(facts.room)
        found = {finding.rule for finding in findings if finding.room == facts.room}
        for kind in KINDS:
            if kind.whole_room and not found.isdisjoint(kind.targets):
                yield from kind.fit(Site(survey, facts.room, "room", catalog, brief, judges=judged))


def _users(remedy: Remedy, survey: Survey | None, catalog: Catalog, brief: Brief) -> Candidate:
    kind = next((kind for kind in KINDS if kind.kind == remedy.kind), None)
    changes = _changes(remedy, survey, kind, catalog, brief) if survey is not None else ()
    home = survey.household if survey is not None else Household()
    follow = _follow(remedy, survey, changes, kind, catalog, brief.profile)
    leaves, paint_mm2 = _leaves(remedy, kind, catalog), disturbed_mm2(home, _holes(remedy), follow.filled)
    people = max((2 if step.help else step.people or remedy.people for step in remedy.steps), default=remedy.people)
    hazards = _hazards(remedy, kind, survey, changes)
    room = survey.named[remedy.on][1].room if survey is not None and remedy.on in survey.named else ""
    cares = (
        *remedy.cares,
        *cares_for((*hazards, *follow.hazards), home, people, leaves, paint_mm2),
        *(load_cares(survey, changes) if survey is not None else ()),
    )
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
        work=_work(remedy, kind, told(survey, changes) if survey is not None else "", follow.words),
        spends=remedy.spends,
        needs=remedy.needs,
        excludes=remedy.excludes,
        pick_one=remedy.pick_one or "",
        answers=remedy.answers,
        targets=kind.targets if kind is not None else (),
        hazards=hazards,
        cares=tuple(dict.fromkeys(cares)),
        done_when=kind.done_when if kind is not None else "",
        leaves=leaves,
        client=remedy.client,
        paint_mm2=paint_mm2,
    )


def _follow(
    remedy: Remedy,
    survey: Survey | None,
    changes: tuple[Change, ...],
    kind: Kind | None,
    catalog: Catalog,
    profile: str,
) -> Following:
    """What follows; old holes are not spoken of where the kind, or the user's words (or a need's), fill them."""
    told_of = [remedy, *(one for one in catalog.remedies if one.remedy in remedy.needs)]
    spoken = any("fill" in words.lower() for one in told_of for words in _words(one))
    fill = not spoken and (kind is None or not kind.fills_old_holes)
    return following(survey, changes, fill, profile) if survey is not None else Following()


def _hazards(remedy: Remedy, kind: Kind | None, survey: Survey | None, changes: tuple[Change, ...]) -> tuple[str, ...]:
    """What its kind has, what its own tools are, and wires where a wall light without a lead gets another place."""
    usual = kind.hazards if kind is not None else ()
    tools = {tool.casefold() for tool in remedy.tools}
    wired = survey is not None and any(_rewires(survey, change) for change in changes)
    more = (*(word for word in BY_TOOL if word in tools), *(["wire"] if wired else []))
    return tuple(dict.fromkeys((*usual, *more)))


def _rewires(survey: Survey, change: Change) -> bool:
    """True where a wall light that hangs on its wires already is moved, whatever the remedy's kind."""
    light = survey.named.get(change.item, (None, None))[1] if change.add is None else None
    wired = isinstance(light, Light) and light.what == "wall light" and light.lead is None and not light.socket
    return wired and any(name in MOVED and getattr(light, name) != to for name, to in change.set)


def _words(remedy: Remedy) -> tuple[str, ...]:
    return (remedy.name, *(step.text for step in remedy.steps), *remedy.cares)


def _holes(remedy: Remedy) -> int:
    """Plug holes that the user's remedy spends."""
    return int(dict(remedy.spends).get("holes", 0))


def _leaves(remedy: Remedy, kind: Kind | None, catalog: Catalog) -> Leaves:
    """What the user's remedy leaves: strips where it uses them, what its kind leaves, plugs where it spends holes."""
    sorts = {product.product: product.what for product in catalog.products}
    if any(sorts.get(product) == "strips" for product, _ in remedy.uses):
        return "strips"
    usual: Leaves = kind.leaves if kind is not None else "nothing"
    return "plugs" if usual == "nothing" and _holes(remedy) else usual


def _work(remedy: Remedy, kind: Kind | None, places: str, follow: tuple[str, ...] = ()) -> tuple[Work, ...]:
    """The user's steps and minutes; what follows is said in the last one."""
    phase = remedy.phase if remedy.phase is not None else (kind.phase if kind is not None else OWN_PHASE)
    if not remedy.steps:
        return ()
    return tuple(
        Work(
            says(step.text or places or remedy.name, follow if step is remedy.steps[-1] else ()),
            step.minutes,
            step.minutes if step.low is None else step.low,
            step.minutes if step.likely is None else step.likely,
            step.minutes if step.high is None else step.high,
            1 if step.help else step.people or remedy.people,
            phase,
            step.wait_sessions,
            step.wait_minutes,
            step.from_stock,
            help=step.help,
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
