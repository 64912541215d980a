"""What came out otherwise than planned, as facts, and which of them explains what fell off and what came on.

Nothing is guessed: a reason is named only where it is the only one there can be. Goods that are not to be had explain
by themselves; for the others the earlier rest is tried again, once without the hours and once without the money.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from budgetfix.base.numbers import half_up
from budgetfix.framing.options import ERRAND
from budgetfix.optimize import solve
from budgetfix.optimize.phase_count import all_at_once
from budgetfix.optimize.problem import NoPlan, Problem
from budgetfix.outcome.since import HOURS, MONEY, Fact, Shift
from budgetfix.outcome.so_far import LineBack
from budgetfix.pipeline.inputs import marks_of, minutes_of
from budgetfix.pipeline.planning import Walked, Wish
from budgetfix.pipeline.rest import Left
from budgetfix.pipeline.rest_hours import place_of
from budgetfix.pipeline.rest_money import due_minor
from budgetfix.remedies.candidate import Candidate

GAINS = ("cheaper", "returned", "quicker", "more money", "more hours", "catalog", "survey", "brief", "faults")
FILES = ("survey", "catalog", "brief", "faults")
MOMENT = 5.0
"""Seconds for trying the earlier rest again."""


def facts_of(left: Left) -> tuple[Fact, ...]:
    """Everything that came out otherwise than planned, money first, largest first within each sort."""
    found = [
        *_sums(left),
        *_states(left),
        *_deliveries(left),
        *_prices(left),
        *_minutes(left),
        *_pace(left),
        *_sessions(left),
    ]
    found += [*_brief(left), *_files(left, bool([one for one in found if one.kind == "price"]))]
    return tuple(found)


def _sums(left: Left) -> list[Fact]:
    over = [
        (one.planned.line.name, (one.paid_minor or 0) - due_minor(one))
        for one in left.paid.lines
        if one.paid_minor is not None and one.state not in ("returned", "sold out")
    ]
    dearer = [Fact("dearer", name, minor) for name, minor in over if minor > 0]
    cheaper = [Fact("cheaper", name, -minor) for name, minor in over if minor < 0]
    return [*_largest(dearer), *_largest(cheaper)]


def _largest(facts: Iterable[Fact]) -> list[Fact]:
    return sorted(facts, key=lambda fact: (-fact.amount, fact.name))


def _states(left: Left) -> list[Fact]:
    told = [one for one in left.paid.lines if one.state in ("returned", "sold out")]
    return [
        Fact("returned" if one.state == "returned" else "sold out", one.planned.line.name, one.paid_minor or 0)
        for one in told
    ]


def _unbought(left: Left) -> list[LineBack]:
    return [one for one in left.paid.lines if one.state is None and one.paid_minor is None]


def _deliveries(left: Left) -> list[Fact]:
    """Shops that deliver a second time for what of their order is not bought yet."""
    paid = {one.planned.line.shop for one in left.paid.by_kind("delivery") if one.paid_minor is not None}
    again = {one.planned.line.shop for one in _unbought(left) if one.planned.line.kind == "product"} & paid
    shops = [one for one in left.job.catalog.shops if one.shop in again and one.delivery_minor]
    return [Fact("delivery", one.name or one.shop, one.delivery_minor) for one in shops]


def _prices(left: Left) -> list[Fact]:
    """Goods that are not bought yet and have another price in the catalogue now."""
    prices = {one.product: one.price_minor for one in left.job.catalog.products}
    found = []
    for one in _unbought(left):
        line = one.planned.line
        if line.product in prices and line.unit_price_minor is not None:
            by = (prices[line.product] - line.unit_price_minor) * (line.packs or 0)
            found.append(Fact("price" if by > 0 else "cheaper", line.name, abs(by)))
    return _largest(fact for fact in found if fact.amount)


def _minutes(left: Left) -> list[Fact]:
    over: dict[str, int] = {}
    for one in left.so_far.done:
        if one.real_minutes is not None:
            name = one.planned.task.name
            over[name] = over.get(name, 0) + one.real_minutes - one.planned.task.minutes
    longer = [Fact("longer", name, minutes) for name, minutes in over.items() if minutes > 0]
    return [*_largest(longer), *_largest(Fact("quicker", name, -by) for name, by in over.items() if by < 0)]


def _pace(left: Left) -> list[Fact]:
    """All that is left is reckoned longer, as far as real minutes taught so."""
    hundredths = half_up(left.paces.household * 100)
    return [Fact("pace", amount=hundredths)] if left.paces.learnt and hundredths > 100 else []


def _sessions(left: Left) -> list[Fact]:
    """Sessions that are gone with work in them that was not done; goods that are ordered later than planned."""
    gone: dict[int, int] = {}
    for one in left.so_far.steps:
        at = place_of(one.planned, left.brief)
        if not one.done and at is not None and at < left.rest.live:
            gone[at] = gone.get(at, 0) + one.planned.task.person_minutes
    found = [Fact("gone", str(at + 1), minutes) for at, minutes in sorted(gone.items())]
    ordered = left.so_far.remembered.ordered
    waits = [one.planned.line for one in _unbought(left) if one.planned.line.lead_days]
    if ordered is not None and left.day > ordered and waits:
        found.append(Fact("late", waits[0].name, (left.day - ordered).days))
    return found


def _brief(left: Left) -> list[Fact]:
    known, found = left.so_far.remembered, []
    if known.budget_minor is not None and left.brief.budget_minor is not None:
        more = left.brief.budget_minor - known.budget_minor
        found += [Fact("more money" if more > 0 else "less money", "", abs(more))] if more else []
    minutes = sum(minutes_of(left.whole)) - sum(known.minutes)
    if known.marks and minutes:
        found.append(Fact("more hours" if minutes > 0 else "fewer hours", "", abs(minutes)))
    return found


def _files(left: Left, priced: bool) -> list[Fact]:
    """Files that are others now; of the catalogue only where no price says it."""
    old, new = dict(left.so_far.remembered.marks), dict(marks_of(left.whole))
    changed = [name for name in FILES if name in old and old[name] != new[name]]
    kinds: dict[str, Fact] = {
        "survey": Fact("survey"),
        "catalog": Fact("catalog"),
        "brief": Fact("brief"),
        "faults": Fact("faults"),
    }
    return [kinds[name] for name in changed if not (name == "catalog" and priced)]


def shifts_of(left: Left, walked: Walked, facts: tuple[Fact, ...], wish: Wish) -> tuple[tuple[Shift, ...], ...]:
    """(what fell off, what came on), each with the fact that explains it where there is one."""
    earlier = {
        one.candidate.id: one.candidate
        for one in left.so_far.remembered.candidates
        if one.chosen and one.candidate.id not in left.done.ids and one.candidate.id not in left.loaded
    }
    now = {id: walked.offer.framed.candidates[id] for id in walked.answer.plan.chosen if not id.startswith(ERRAND)}
    off = [one for id, one in sorted(earlier.items()) if id not in now]
    on = [one for id, one in sorted(now.items()) if id not in earlier]
    reasons = {one.id: _not_to_be_had(one, left) for one in off}
    ways = {one.id: _gives_way(one, on, walked) for one in off}
    reasons = {id: why or ways[id] for id, why in reasons.items()}
    short = [one for one in off if reasons[one.id] is None]
    if short:
        why = _shortage(earlier, walked, facts, wish)
        reasons |= {one.id: why for one in short}
    return _grouped(off, reasons), _grouped(on, {one.id: _came(one, off, reasons, facts) for one in on})


def _grouped(ones: Iterable[Candidate], reasons: dict[str, Fact | None]) -> tuple[Shift, ...]:
    by: dict[Fact | None, list[str]] = {}
    for one in ones:
        by.setdefault(reasons[one.id], []).append(one.name)
    order = sorted(by, key=lambda why: (why is None, why is not None and why.kind == "gives way"))
    return tuple(Shift(tuple(by[why]), why) for why in order)


def _not_to_be_had(one: Candidate, left: Left) -> Fact | None:
    """The line that was given back, or that the shop had not got, where it is this one's."""
    for back in left.paid.lines:
        line = back.planned.line
        mine = line.product in dict(one.uses) if line.product is not None else line.of == one.id
        if mine and back.state in ("returned", "sold out") and left.rest.there(one.id, line.product or "") is None:
            return Fact("returned" if back.state == "returned" else "sold out", line.name)
    return None


def _gives_way(one: Candidate, on: Iterable[Candidate], walked: Walked) -> Fact | None:
    """What came on and cannot stand beside it."""
    options = {option.id: option for option in walked.chooser.framed.problem.options}
    own = options.get(one.id)
    if own is None:
        return None
    for other in on:
        rival = options[other.id]
        if other.id in own.excludes or one.id in rival.excludes or (own.group and own.group == rival.group):
            return Fact("gives way", other.name)
    return None


def _shortage(earlier: dict[str, Candidate], walked: Walked, facts: tuple[Fact, ...], wish: Wish) -> Fact | None:
    """Why the rest of the earlier plan is not the best now: one fact where only one can be it, else what is lacking."""
    causes = [fact for fact in facts if fact.kind not in ("sold out", "cheaper", "quicker", "more money", "more hours")]
    if len(causes) == 1:
        return causes[0]
    problem = walked.chooser.framed.problem
    ids = {id for id in earlier if id in walked.offer.framed.candidates}
    missing = _missing_money(problem, ids, wish)
    dear = missing is not None and missing > 0
    late = _too_long(problem, ids, wish)
    if dear == late:
        return Fact("neither") if dear else None
    sort = [fact for fact in causes if fact.kind in (MONEY if dear else HOURS)]
    if dear:
        sort = [fact for fact in sort if fact.amount >= (missing or 0)]
    return sort[0] if len(sort) == 1 else Fact("no money" if dear else "no time")


def _forced(problem: Problem, ids: Iterable[str]) -> Problem:
    """The problem with these options only, all of them chosen; what they are worth does not matter."""
    problem = all_at_once(problem)
    kept = {one.id: one for one in problem.options if one.id in set(ids)}
    needed = {need for one in kept.values() for need in one.needs}
    options = tuple(one for one in problem.options if one.id in kept or one.id in needed)
    return replace(problem, options=options, trees=(), must=tuple((id,) for id in sorted(kept)), must_all=False)


def _missing_money(problem: Problem, ids: Iterable[str], wish: Wish) -> int | None:
    """What is missing for them, hours left aside; 0 for nothing, None where it was not to be found out."""
    if problem.budget_minor is None:
        return 0
    forced = replace(_forced(problem, ids), sessions=None, last_session=None, budget_minor=None)
    found = solve(forced, seconds=MOMENT, clock=wish.clock, depth="figures")
    return None if isinstance(found, NoPlan) else max(0, found.plan.spent_minor - problem.budget_minor)


def _too_long(problem: Problem, ids: Iterable[str], wish: Wish) -> bool:
    """True where they have no place in the hours, money left aside."""
    found = solve(replace(_forced(problem, ids), budget_minor=None), seconds=MOMENT, clock=wish.clock, depth="worth")
    return isinstance(found, NoPlan) and found.proven


def _came(
    one: Candidate, off: Iterable[Candidate], reasons: dict[str, Fact | None], facts: tuple[Fact, ...]
) -> Fact | None:
    """Why something is in the plan now that was not."""
    gone = list(off)
    for other in gone:
        why = reasons[other.id]
        if _alike(one, other) and why is not None and why.kind != "gives way":
            return Fact("instead", other.name)
    gains = [fact for fact in facts if fact.kind in GAINS]
    first = [other for other in gone if (why := reasons[other.id]) is None or why.kind != "gives way"]
    if first and not gains:
        return Fact("freed")
    return gains[0] if len(gains) == 1 and not first else None


def _alike(one: Candidate, other: Candidate) -> bool:
    """True where one stands for the other: of one group, of one remedy, or about the same thing."""
    if one.pick_one and one.pick_one == other.pick_one:
        return True
    if one.key and one.key == other.key:
        return True
    return bool(one.subject) and (one.subject, one.room) == (other.subject, other.room)
