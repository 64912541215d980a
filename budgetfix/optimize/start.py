"""First plans by plain rules, so that there is one in hand however early the clock stops."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from budgetfix.optimize.buying import billed
from budgetfix.optimize.facts import Facts, with_needs
from budgetfix.optimize.greedy import Greedy
from budgetfix.optimize.placing import Placing
from budgetfix.optimize.problem import Extra, Option, Plan
from budgetfix.optimize.recount import minutes_of
from budgetfix.optimize.search import Search

MOST_TRIES = 400
"""Options tried one by one; in larger jobs the rest is left to the solver."""

GREEDY_SHARE = 0.5
"""Share of the seconds that are left after which the greedy plan of a large house is as good as it gets."""


def begin(search: Search, known: Iterable[Plan] = (), *, large: bool = False) -> None:
    """Put into the hand what must be and what is known, then add whatever still helps, most worth a minute first.

    `large`: measured rooms that could not be looked at whole; they get a greedy plan, in a share of the seconds.
    """
    facts = search.facts
    for plan in known:
        if facts.by_id.keys() >= set(plan.chosen):
            chosen = frozenset(plan.chosen)
            cost = billed(facts, chosen, plan.placed, search.engine)
            if cost is not None:
                search.try_placed(chosen, Placing(plan.placed, cost))

    def by_minutes(one: Option) -> tuple[int, int]:
        return minutes_of(facts, [one.id]), one.cost_minor

    def by_cost(one: Option) -> tuple[int, int]:
        return one.cost_minor, minutes_of(facts, [one.id])

    for key in (by_minutes, by_cost):
        search.try_set(least(facts, search.extra, key))
    wanted = not facts.problem.must_all and not search.extra.spend_first and not facts.phases
    if search.best is not None and wanted:
        _add(search)
        if large:
            until = search.clock() + GREEDY_SHARE * search.left()
            greedy = Greedy(search, lambda: search.clock() > until)
            search.try_set(greedy.add(search.best.chosen))


def least(facts: Facts, extra: Extra, key: Callable[[Option], tuple[int, int]]) -> frozenset[str]:
    """What must be chosen and what that needs, each must by the option with the smallest key."""
    chosen: frozenset[str] = frozenset()
    for id in extra.chosen:
        chosen |= with_needs(facts, id)
    for must in facts.problem.must:
        able = [facts.by_id[id] for id in sorted(must) if id in facts.by_id]
        if chosen.isdisjoint(must) and able:
            fine = [one for one in able if facts.against[one.id].isdisjoint(chosen)] or able
            chosen |= with_needs(facts, min(fine, key=key).id)
    return chosen


def _add(search: Search) -> None:
    """One pass over the options: each with its needs goes in where the plan gets better by it."""
    facts = search.facts
    cheap = all(tree.tree.cheap for tree in search.growth.trees)
    if not cheap or len(facts.options) > MOST_TRIES:
        return
    gain = {one.id: _gain(search, one.id) for one in facts.options}
    order = sorted(facts.options, key=lambda one: (-gain[one.id] / (1 + minutes_of(facts, [one.id])), one.id))
    for one in order:
        best = search.best
        if best is not None and one.id not in best.chosen and search.left() > 0:
            search.try_set(best.chosen | with_needs(facts, one.id))


def _gain(search: Search, id: str) -> int:
    """Hazard points and points that an option takes away by itself."""
    alone = search.left_over(frozenset({id}))
    nothing = search.left_over(frozenset())
    return sum(nothing) - sum(alone)
