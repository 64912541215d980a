"""Money by phases counted again from a set, its placing and what is bought when: whole numbers, no program."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from itertools import accumulate

from budgetfix.base.numbers import ceil_div
from budgetfix.optimize.facts import Facts, ending
from budgetfix.optimize.problem import Placed, Problem
from budgetfix.optimize.recount import Bill, SolverDisagrees, charged, delivery_and_tax, hire_sessions
from budgetfix.optimize.setting_up import wholes

Buys = Mapping[str, int]
"""The phase in which each option is bought; what is not there costs nothing and counts as bought in the first one."""
Where = Mapping[tuple[str, int], Placed]


def all_at_once(problem: Problem) -> Problem:
    """The same problem with no phases of money: options need the rounds of the first phase."""
    options = tuple(
        replace(one, needs=(*one.needs, *(each[0] for each in one.rounds)), rounds=()) if one.rounds else one
        for one in problem.options
    )
    return replace(problem, phases=(), options=options)


def counted(facts: Facts, chosen: Iterable[str], placed: Iterable[Placed], buys: Buys, bought: Iterable[str]) -> Bill:
    """The bill of a set that is bought so, with these tools bought and all other tools hired."""
    ids, steps, mine = sorted(chosen), tuple(placed), sorted(bought)
    sessions = hire_sessions(facts, steps)
    due = {id: max(1, sessions[id]) - facts.tools[id].prepaid for id in used_tools(facts, ids) if id not in mine}
    hired = tuple((id, count) for id, count in due.items() if count > 0)
    packs = packs_by(facts, ids, buys, len(facts.phases) - 1)
    return Bill(
        tuple((id, count) for id, count in sorted(packs.items()) if count),
        tuple(mine),
        hired,
        sum(spent_in(facts, ids, steps, buys, mine)),
        tuple((id, buys[id]) for id in ids if id in buys),
    )


def used_tools(facts: Facts, ids: Iterable[str]) -> list[str]:
    """Tools that are not owned and that some of these list."""
    return sorted({tool for id in ids for tool in facts.by_id[id].tools if tool in facts.tools})


def packs_by(facts: Facts, ids: Iterable[str], buys: Buys, phase: int) -> dict[str, int]:
    """Packs bought by the end of a phase, with what is left of earlier ones used up first."""
    used: dict[str, int] = {}
    for id in ids:
        for product, amount in facts.by_id[id].uses if buys.get(id, 0) <= phase else ():
            used[product] = used.get(product, 0) + amount
    return {id: max(0, ceil_div(used[id] - facts.products[id].on_hand, facts.products[id].pack)) for id in sorted(used)}


def spent_in(
    facts: Facts, ids: Iterable[str], placed: Iterable[Placed], buys: Buys, bought: Iterable[str]
) -> tuple[int, ...]:
    """What is spent in each phase."""
    mine, steps, tools = tuple(ids), tuple(placed), frozenset(bought)
    found = []
    before: dict[str, int] = {}
    for phase in range(len(facts.phases)):
        now = packs_by(facts, mine, buys, phase)
        fresh = {id: count - before.get(id, 0) for id, count in now.items()}
        cost = sum(facts.by_id[id].cost_minor for id in mine if buys.get(id, 0) == phase)
        found.append(cost + _ordered(facts, fresh))
        before = now
    for tool in used_tools(facts, mine):
        users = [id for id in mine if tool in facts.by_id[id].tools]
        first = min(buys.get(id, 0) for id in users)
        if tool in tools:
            found[first] += _price(facts.tools[tool].buy_minor, tool)
            continue
        held = facts.tools[tool].held
        phases = _hired_in(facts, steps, tool) or ([] if held else [first])
        for phase in phases[facts.tools[tool].prepaid - len(held) :]:
            found[phase] += _price(facts.tools[tool].hire_minor, tool)
    return tuple(found)


def _price(minor: int | None, tool: str) -> int:
    if minor is None:
        raise SolverDisagrees(f"{tool} cannot be had so")
    return minor


def _ordered(facts: Facts, packs: Mapping[str, int]) -> int:
    """Goods bought in one phase, with delivery and tax of one order a shop."""
    goods: dict[str, int] = {}
    total = 0
    for id, count in packs.items():
        product = facts.products[id]
        if count > 0:
            total += charged(product, count)
            if product.shop is not None:
                goods[product.shop] = goods.get(product.shop, 0) + count * product.price_minor
    return total + sum(delivery_and_tax(shop, goods[shop.id]) for shop in facts.problem.shops if shop.id in goods)


def _hired_in(facts: Facts, placed: Iterable[Placed], tool: str) -> list[int]:
    """The phase of each whole session in which a tool is hired, besides those for which it is hired anyhow."""
    whole = wholes(facts.problem.sessions or ())
    numbers = {
        whole[one.session] for one in placed if one.session is not None and tool in facts.by_id[one.option].tools
    }
    return [facts.phase_of(whole.index(number)) for number in sorted(numbers - set(facts.tools[tool].held))]


def can_be_bought(facts: Facts, chosen: frozenset[str], where: Where, id: str, phase: int) -> bool:
    """Whether an option, standing where it does, can be bought in a phase: goods come and rounds are run in time."""
    option = facts.by_id[id]
    begun = where.get((id, 0))
    if phase > facts.last_phases[id]:
        return False
    if begun is not None and begun.session is not None and begun.session < option.arrivals[phase]:
        return False
    return all(
        any(one in chosen and _run_before(facts, where, one, id) for one in wanted[phase:]) for wanted in option.rounds
    )


def _run_before(facts: Facts, where: Where, errand: str, id: str) -> bool:
    steps = facts.by_id[errand].steps
    last, first = where.get((errand, len(steps) - 1)), where.get((id, 0))
    if last is None or first is None or last.session is None or first.session is None:
        return True
    ready = facts.next_session(steps[-1], facts.by_id[id].steps[0], last.session)
    same = last.session == first.session
    return ready <= first.session and (not same or set(first.people) <= set(ending(steps[-1], last.people)))


def phases_broken(facts: Facts, chosen: Iterable[str], placed: Iterable[Placed], bill: Bill) -> tuple[str, ...]:
    """Every promise about money by date that a plan does not keep, in words."""
    ids, steps, buys = frozenset(chosen), tuple(placed), dict(bill.buys)
    where = {(one.option, one.step): one for one in steps}
    words = [
        f"{id} cannot be bought in phase {buys.get(id)}"
        for id in sorted(ids & facts.last_phases.keys())
        if id not in buys or not can_be_bought(facts, ids, where, id, buys[id])
    ]
    spent = accumulate(spent_in(facts, sorted(ids), steps, buys, bill.bought))
    words += [
        f"{sum_} is spent by phase {phase}, and {most.most_minor} has come"
        for phase, (sum_, most) in enumerate(zip(spent, facts.phases, strict=True))
        if most.most_minor is not None and sum_ > most.most_minor
    ]
    return tuple(words)
