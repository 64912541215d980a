"""First plans by plain rules, so that there is one in hand however early the clock stops."""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.optimize import recount
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.problem import Extra, Option


def beginnings(facts: Facts, growth: Growth, extra: Extra, money: int | None) -> Iterator[frozenset[str]]:
    """What must be chosen and nothing else, each must by its quickest, then by its cheapest option."""
    del growth, money
    yield _musts(facts, extra, lambda one: (recount.minutes_of(facts, [one.id]), one.cost_minor))
    yield _musts(facts, extra, lambda one: (one.cost_minor, recount.minutes_of(facts, [one.id])))


def _musts(facts: Facts, extra: Extra, key: object) -> frozenset[str]:
    chosen: set[str] = set()
    for id in extra.chosen:
        _with_needs(facts, id, chosen)
    for must in facts.problem.must:
        if chosen.isdisjoint(must):
            able = [facts.by_id[id] for id in sorted(must) if id in facts.by_id]
            fine = [one for one in able if facts.against[one.id].isdisjoint(chosen)] or able
            if fine:
                _with_needs(facts, min(fine, key=key).id, chosen)  # type: ignore[call-overload]
    return frozenset(chosen)


def _with_needs(facts: Facts, id: str, chosen: set[str]) -> None:
    stack = [id]
    while stack:
        one = stack.pop()
        if one in facts.by_id and one not in chosen:
            chosen.add(one)
            stack.extend(facts.needs[one])


Key = Option
