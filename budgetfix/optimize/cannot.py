"""Options that no plan can hold, and why: found by arithmetic, before anything is solved."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Option, Problem, Step
from budgetfix.optimize.recount import goods_minor, too_heavy, too_many
from budgetfix.optimize.setting_up import setups
from budgetfix.optimize.windows import windows


def impossible(problem: Problem) -> dict[str, str]:
    """Reason by option id, for options that can never be chosen; sorted by id.

    Words: "step-too-long", "too-loud", "too-late", "half-done", "too-few-people", "needs-clash", "tool-not-to-be-had",
    "over-budget", "money-too-late", "over-limit", "not-enough-there", "too-heavy". What needs an impossible option is
    impossible for the same reason.
    """
    facts = Facts.of(problem)
    late = _late(facts)
    half = late - _late(Facts.of(_loose(problem))) if any(one.one_day for one in problem.options) else frozenset()
    found: dict[str, str] = {}
    for option in facts.options:
        reason = _alone(facts, option, late, half) or _together(facts, option)
        if reason:
            found[option.id] = reason
    return dict(sorted(_passed_on(facts, found).items()))


def _loose(problem: Problem) -> Problem:
    """The same problem where everything may be left half done overnight."""
    return replace(problem, options=tuple(replace(one, one_day=False) for one in problem.options))


def _alone(facts: Facts, option: Option, late: frozenset[str], half: frozenset[str]) -> str | None:
    if any(not facts.crews(step) for step in option.steps):
        return "too-few-people"
    if facts.problem.sessions is not None:
        for step in option.steps:
            if step.minutes and not _fits_anywhere(facts, step, hushed=False):
                return "step-too-long"
            if step.minutes and not _fits_anywhere(facts, step, hushed=True):
                return "too-loud"
        if option.id in late:
            return "half-done" if option.id in half else "too-late"
    tools = {tool.id: tool for tool in facts.problem.tools}
    for id in option.tools:
        tool = tools.get(id)
        if tool is None or (not tool.owned and tool.buy_minor is None and not tool.for_hire):
            return "tool-not-to-be-had"
    return None


def _fits_anywhere(facts: Facts, step: Step, *, hushed: bool) -> bool:
    """True where some session is long enough; `hushed`: and not too quiet."""
    return any(
        any(
            all(session.minutes[one] - setup >= step.minutes_in(place) for place, one in enumerate(crew))
            for crew in facts.crews(step)
        )
        for session, setup in zip(facts.problem.sessions or (), setups(facts.problem), strict=True)
        if not (hushed and step.loud and session.quiet)
    )


def _late(facts: Facts) -> frozenset[str]:
    """Options with goods that come too late or waits that outlast the last session."""
    if not facts.problem.sessions:
        return frozenset()
    found = {one.id for one in facts.options if one.first_session >= facts.horizon and (one.steps or one.first_session)}
    for (id, _), (first, last) in windows(facts).items():
        if first >= facts.horizon or last < first:
            found.add(id)
    return frozenset(found)


def _closure(facts: Facts, option: Option) -> tuple[Option, ...] | None:
    """The option with everything it needs; None where something is not there."""
    seen: dict[str, Option] = {}
    stack = [option.id]
    while stack:
        id = stack.pop()
        if id not in facts.by_id:
            return None
        if id not in seen:
            seen[id] = facts.by_id[id]
            stack.extend(facts.by_id[id].needs)
    return tuple(seen[id] for id in sorted(seen))


def _together(facts: Facts, option: Option) -> str | None:
    everything = _closure(facts, option)
    if everything is None:
        return "needs-clash"
    ids = frozenset(one.id for one in everything)
    if any(not facts.against[id].isdisjoint(ids) for id in ids):
        return "needs-clash"
    if too_many(facts, ids):
        return "not-enough-there"
    if too_heavy(facts, ids):
        return "too-heavy"
    budget = facts.problem.budget_minor
    if budget is not None and _least_money(facts, everything) - _rounding(facts) > budget:
        return "over-budget"
    if option.id in facts.last_phases:
        there = facts.phases[facts.last_phases[option.id]].most_minor
        if there is not None and _least_money(facts, (option,)) - _rounding(facts) > there:
            return "money-too-late"
    for limit in facts.problem.limits:
        if _negative(facts, limit.id):
            continue
        if sum(amount for one in everything for name, amount in one.spends if name == limit.id) > limit.most:
            return "over-limit"
    return None


def _negative(facts: Facts, limit: str) -> bool:
    return any(amount < 0 for one in facts.options for name, amount in one.spends if name == limit)


def _least_money(facts: Facts, options: Iterable[Option]) -> int:
    """A sum below which these cannot be had: delivery left out where ordering more could make it free."""
    packs: dict[str, int] = {}
    listed: set[str] = set()
    for one in options:
        listed.update(one.tools)
        for product, amount in one.uses:
            packs[product] = packs.get(product, 0) + amount
    counts = {
        id: -(-max(0, used - facts.products[id].on_hand) // facts.products[id].pack) for id, used in packs.items()
    }
    goods = goods_minor(facts, counts) - _delivery_that_may_fall_away(facts, counts)
    tools = sum(facts.tools[id].least_minor or 0 for id in sorted(listed) if id in facts.tools)
    return sum(one.cost_minor for one in options) + goods + tools


def _rounding(facts: Facts) -> int:
    """How much lines and taxes can be rounded down by, where they are spread over phases: under one unit each."""
    return len(facts.phases) * (len(facts.problem.products) + len(facts.problem.shops))


def _delivery_that_may_fall_away(facts: Facts, counts: dict[str, int]) -> int:
    ordered = {facts.products[id].shop for id, count in counts.items() if count > 0}
    return sum(
        shop.delivery_minor
        for shop in facts.problem.shops
        if shop.id in ordered
        and shop.free_over_minor is not None
        and sum(counts[id] * facts.products[id].price_minor for id in counts if facts.products[id].shop == shop.id)
        < shop.free_over_minor
    )


def _passed_on(facts: Facts, found: dict[str, str]) -> dict[str, str]:
    """Reasons of what is needed, handed on to what needs it."""
    known = dict(found)
    changed = True
    while changed:
        changed = False
        for option in facts.options:
            reason = next((known[need] for need in sorted(option.needs) if need in known), None)
            if reason is not None and option.id not in known:
                known[option.id] = reason
                changed = True
    return known
