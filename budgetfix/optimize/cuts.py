"""Why a set could not be placed, as a row that keeps it, and everything harder, from being chosen again."""

from __future__ import annotations

from collections.abc import Callable

from budgetfix.optimize.choice_rows import x
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.money_rows import b, v
from budgetfix.optimize.placing import Hands, Placer
from budgetfix.optimize.problem import Option
from budgetfix.optimize.recount import SolverDisagrees
from budgetfix.optimize.solver import Row


def conflict(placer: Placer, facts: Facts, chosen: frozenset[str], hands: Hands, number: int) -> Row:
    """Not all of a smallest unplaceable part of the set, unless more sessions of hire are paid for.

    Dropping an option never makes placing harder, so every set that holds the part fails too; so does one that
    holds, for any member, another option of its group that takes at least as much.
    """
    horizon = facts.horizon
    free = placer.can(chosen, horizon, {})
    limited: Hands = {} if free is False else hands
    if free is not False and placer.can(chosen, horizon, hands):
        raise SolverDisagrees(f"{sorted(chosen)} can be placed after all")
    part = _smallest(chosen, lambda ids: placer.can(ids, horizon, limited) is False)
    tools = {tool for id in part for tool in facts.by_id[id].tools} & set(limited)
    for tool in sorted(tools):
        fewer = {name: count for name, count in limited.items() if name in tools and name != tool}
        if placer.can(part, horizon, fewer) is False:
            tools.discard(tool)
    return conflict_row(facts, part, {tool: limited[tool] for tool in sorted(tools)}, number)


def conflict_row(facts: Facts, part: frozenset[str], hands: Hands, number: int) -> Row:
    """At most all but one of the part (or of what dominates its members), unless more of its tools is paid for."""
    terms: dict[str, int] = {}
    for id in sorted(part):
        terms[x(id)] = 1
        for other in _dominating(facts, facts.by_id[id], part, bool(hands)):
            terms[x(other)] = 1
    for tool, count in sorted(hands.items()):
        if count >= 0 and facts.tools[tool].buy_minor is not None:
            terms[b(tool)] = -1
        if 0 <= count < facts.hirable[tool]:
            terms[v(tool, count + 1)] = -1
    return Row(f"conflict_{number}", tuple((by, name) for name, by in terms.items()), "<=", len(part) - 1)


def _smallest(chosen: frozenset[str], fails: Callable[[frozenset[str]], bool]) -> frozenset[str]:
    """A part that fails and of which no single member can be spared; large pieces are tried first."""
    kept = sorted(chosen)
    size = max(1, len(kept) // 2)
    while True:
        start = 0
        while start < len(kept):
            fewer = kept[:start] + kept[start + size :]
            if fewer and fails(frozenset(fewer)):
                kept = fewer
            else:
                start += size
        if size == 1:
            return frozenset(kept)
        size = max(1, size // 2)


def _dominating(facts: Facts, option: Option, part: frozenset[str], with_tools: bool) -> list[str]:
    """Members of the option's group that are at least as hard to place; none where a member needs the option."""
    if option.group is None or any(option.id in facts.needs[id] for id in part):
        return []
    return [
        other.id
        for other in facts.options
        if other.group == option.group
        and other.id != option.id
        and other.id not in part
        and _harder(facts, other, option)
        and (not with_tools or set(other.tools) >= set(option.tools) & set(facts.tools))
    ]


def _harder(facts: Facts, one: Option, than: Option) -> bool:
    if len(one.steps) != len(than.steps) or one.first_session < than.first_session:
        return False
    if than.last_session is not None and (one.last_session is None or one.last_session > than.last_session):
        return False
    if one.one_day < than.one_day or not set(facts.needs[one.id]) >= set(facts.needs[than.id]):
        return False
    return all(
        mine.minutes >= yours.minutes
        and mine.people == yours.people
        and mine.help >= yours.help
        and set(mine.no_help) >= set(yours.no_help)
        and set(mine.barred) >= set(yours.barred)
        and mine.wait_sessions >= yours.wait_sessions
        and mine.wait_minutes >= yours.wait_minutes
        and mine.loud >= yours.loud
        and mine.first_session >= yours.first_session
        for mine, yours in zip(one.steps, than.steps, strict=True)
    )
