"""Candidates + bills + brief -> one integer problem, with the trees that say what every set is worth."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction

from budgetfix.brief.models import Brief, ListedFault
from budgetfix.catalog.models import Catalog
from budgetfix.framing.exclusion import Exclusions
from budgetfix.framing.listed import listed_tree
from budgetfix.framing.measured import MeasuredTree, gone, measured_tree
from budgetfix.framing.options import (
    Scales,
    errands_of,
    lead_days,
    limits,
    option,
    products,
    sessions,
    shops,
    tools,
)
from budgetfix.framing.purses import in_phases, instalments, purses, rounds
from budgetfix.framing.rest import WHOLE_JOB, Rest
from budgetfix.framing.scale import scales
from budgetfix.framing.van import loads, within_windows
from budgetfix.inspection.again import Moved
from budgetfix.inspection.guard import too_much_worse
from budgetfix.inspection.inspect import Seen, look_again, look_at_all
from budgetfix.inspection.judging import Block, Judge
from budgetfix.optimize.problem import Option, Problem, Tree
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.items import TABLES
from budgetfix.room.survey import Survey


@dataclass(frozen=True)
class Ground:
    """What does not change between two framings of one job. `seen` holds each block as surveyed."""

    survey: Survey | None
    brief: Brief
    catalog: Catalog
    faults: tuple[ListedFault, ...]
    judged: tuple[Judge, ...]
    blocks: tuple[Block, ...]
    seen: tuple[Seen, ...]
    rest: Rest = WHOLE_JOB
    """What an earlier plan has left behind."""
    _known: dict[tuple[object, ...], Seen] = field(default_factory=dict, init=False, repr=False, compare=False)
    """Blocks looked at again, by all that there is in their room: most plans of a house leave most rooms alike."""

    @property
    def origin(self) -> Survey | None:
        """The rooms before anything was done."""
        return self.rest.origin or self.survey

    @property
    def first(self) -> tuple[Seen, ...]:
        """What was found then, block by block; `seen` is what is found now."""
        return self.rest.first or self.seen

    def again(self, at: int, after: Survey, moved: Moved | None = None) -> Seen:
        """Block `at` in a changed room: what was taken away since the beginning keeps its points (`look_again`).

        `moved`: what changed since the beginning; without it everything is looked at again.
        """
        assert self.origin is not None
        block = self.blocks[at]
        away = gone(self.origin, after, block.room)
        key = (at, away, after.facts(block.room), after.guessed, *(after.things(one, block.room) for one in TABLES))
        if key not in self._known:
            absences = {judge.rule.slug: judge for judge in self.judged}
            self._known[key] = look_again(block, after, self.brief, self.first[at], away, absences, moved)
        return self._known[key]

    def too_much_worse(self, at: int, after: Seen) -> bool:
        """True where the guard forbids what is left of block `at`."""
        return too_much_worse(self.first[at], after, self.brief.may_worsen, self.seen[at])


def ground(
    survey: Survey | None,
    brief: Brief,
    catalog: Catalog,
    faults: tuple[ListedFault, ...],
    judged: tuple[Judge, ...],
    blocks: tuple[Block, ...],
) -> Ground:
    """Inspect every block once, as surveyed."""
    seen = look_at_all(blocks, survey, brief) if survey is not None else ()
    return Ground(survey, brief, catalog, faults, judged, blocks, seen)


@dataclass(frozen=True)
class Framed:
    """One integer problem and what its ids mean."""

    problem: Problem
    candidates: Mapping[str, Candidate]
    trees: tuple[MeasuredTree, ...]


def musts(brief: Brief, candidates: Mapping[str, Candidate]) -> tuple[tuple[str, ...], ...]:
    """Of each tuple at least one is chosen: ids as they are, a pick-one name as all of its members."""
    groups = {name: tuple(sorted(ids)) for name, ids in _groups(candidates).items()}
    if brief.must_all:
        alone = [(id,) for id, candidate in candidates.items() if not candidate.pick_one and not candidate.own]
        listed = [ids for ids in groups.values() if any(not candidates[id].own for id in ids)]
        return tuple(sorted([*alone, *listed]))
    return tuple(sorted(groups[name] if name in groups and name not in candidates else (name,) for name in brief.must))


def _with_begun(musts: tuple[tuple[str, ...], ...], rest: Rest) -> tuple[tuple[str, ...], ...]:
    """What is begun must be ended as well."""
    begun = {(id,) for id in rest.begun} - set(musts)
    return tuple(sorted([*musts, *begun])) if begun else musts


def allowed(candidates: tuple[Candidate, ...], brief: Brief) -> dict[str, Candidate]:
    """The candidates that `never` does not rule out (by id, group, kind or product), by id."""
    never = frozenset(brief.never)
    return {
        candidate.id: candidate
        for candidate in sorted(candidates, key=lambda candidate: candidate.id)
        if never.isdisjoint(
            {candidate.id, candidate.pick_one, candidate.kind, *(product for product, _ in candidate.uses)}
        )
    }


def frame(
    base: Ground,
    candidates: tuple[Candidate, ...],
    clashes: tuple[tuple[str, str], ...],
    warm: Mapping[str, dict[frozenset[str], Seen]] | None = None,
) -> Framed:
    """One problem over these candidates. `clashes`: pairs that cannot both be chosen.

    `warm`: inspections of this survey that were done before, by block (see `memories`).
    """
    brief, catalog = base.brief, base.catalog
    kept = allowed(candidates, brief)
    exclusions = _exclusions(kept, clashes)
    trees = _measured(base, kept, exclusions, warm or {})
    options = _options(base, kept, exclusions)
    by = _scales(catalog, kept)
    return Framed(
        Problem(
            options=options,
            trees=(*map(measured_tree, trees), *_listed(base, kept, exclusions)),
            products=products(catalog, by, base.rest),
            tools=tools(catalog, base.rest),
            shops=shops(catalog),
            limits=limits(brief, by),
            people=tuple(person.name for person in brief.people),
            sessions=sessions(brief),
            budget_minor=_for_remedies(brief),
            must=_with_begun(musts(brief, kept), base.rest),
            must_all=brief.must_all,
            last_session=None if brief.finish_by is None or brief.hours is None else brief.finish_by - 1,
            setup_minutes=brief.setup_minutes,
            hazards_first=brief.hazards_first,
            loads=loads(catalog, brief, by.products),
            phases=instalments(purses(brief)),
        ),
        kept,
        trees,
    )


def _for_remedies(brief: Brief) -> int | None:
    """The budget less what is held back and what is spent whatever is chosen."""
    if brief.budget_minor is None:
        return None
    return brief.budget_minor - brief.held_back_minor() - brief.fixed_minor


def _exclusions(kept: Mapping[str, Candidate], clashes: tuple[tuple[str, str], ...]) -> Exclusions:
    groups = [sorted(ids) for ids in _groups(kept).values()]
    typed = [(id, other) for id, candidate in kept.items() for other in candidate.excludes]
    return Exclusions.of(kept, groups, [*typed, *clashes])


def _measured(
    base: Ground,
    kept: Mapping[str, Candidate],
    exclusions: Exclusions,
    warm: Mapping[str, dict[frozenset[str], Seen]],
) -> tuple[MeasuredTree, ...]:
    if base.survey is None:
        return ()
    changing = {id: candidate for id, candidate in kept.items() if candidate.changes}
    absences = {judge.rule.slug: judge for judge in base.judged}
    return tuple(
        MeasuredTree(
            block,
            base.survey,
            base.brief,
            changing,
            exclusions,
            absences,
            seen,
            warm.get(f"{block.room}/{block.name}", {}),
            base.rest.origin,
            base.rest.first[at] if base.rest.first else None,
        )
        for at, (block, seen) in enumerate(zip(base.blocks, base.seen, strict=True))
    )


def _listed(base: Ground, kept: Mapping[str, Candidate], exclusions: Exclusions) -> tuple[Tree, ...]:
    answers: dict[str, list[tuple[str, Fraction]]] = defaultdict(list)
    for id, candidate in kept.items():
        for fault, relief in candidate.answers:
            answers[fault].append((id, relief))
    return tuple(listed_tree(fault, base.brief, answers[fault.fault], exclusions) for fault in base.faults)


def _scales(catalog: Catalog, kept: Mapping[str, Candidate]) -> Scales:
    used = [(product, units) for candidate in kept.values() for product, units in candidate.goods]
    names = {product for product, _ in used}
    stocked = [
        (product.product, figure)
        for product in catalog.products
        if product.product in names
        for figure in (product.pack, product.on_hand)
    ]
    spent = [spend for candidate in kept.values() for spend in candidate.spends]
    return Scales(scales([*used, *stocked]), scales(spent))


def _options(base: Ground, kept: Mapping[str, Candidate], exclusions: Exclusions) -> tuple[Option, ...]:
    by = _scales(base.catalog, kept)
    totals: dict[str, Fraction] = defaultdict(Fraction)
    for candidate in kept.values():
        for product, units in candidate.goods:
            totals[product] += units
    made: list[Option] = []
    errands: set[str] = set()
    groups = _groups(kept)
    for id, candidate in kept.items():
        needs = errands_of(candidate, base.catalog, base.brief.errands, base.rest)
        errands.update(needs)
        against = exclusions.against[id] - groups.get(candidate.pick_one, frozenset())
        plain = option(candidate, base.brief, base.catalog, by, totals, needs, base.rest)
        whole = within_windows(replace(plain, excludes=tuple(sorted(against))), base.brief)
        wait = lead_days(candidate, base.catalog, totals, base.rest)
        made.append(in_phases(whole, wait, needs, base.brief, base.catalog))
    return tuple(sorted([*made, *rounds(base.brief, errands, base.rest)], key=lambda one: one.id))


def _groups(kept: Mapping[str, Candidate]) -> dict[str, frozenset[str]]:
    """The members of each pick-one group."""
    groups: dict[str, list[str]] = defaultdict(list)
    for id, candidate in kept.items():
        if candidate.pick_one:
            groups[candidate.pick_one].append(id)
    return {name: frozenset(ids) for name, ids in groups.items()}
