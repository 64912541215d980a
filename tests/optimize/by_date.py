"""Money by date the slow way: every subset, every placing, every phase of buying. Shares no code with `solve`."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import product

from budgetfix.optimize.problem import Instalment, Option, Problem, Shop, Step, Tool
from tests.optimize import brute
from tests.optimize.worlds import World, _with_options

Buys = dict[str, int]
Bought = tuple[Buys, frozenset[str]]
"""(phase by option, tools that are bought)."""
NEVER = 10**9
"""Minor units that nobody has: the price of hire that is not to be had."""


def end_of(problem: Problem) -> int:
    """How many sessions may be used."""
    count = len(problem.sessions or ())
    return count if problem.last_session is None else min(count, problem.last_session + 1)


def phase_of(problem: Problem, session: int) -> int:
    """The phase whose money is there in a session; of a part of one, in the session that it goes on from."""
    while (problem.sessions or ())[session].continues:
        session -= 1
    return sum(one.first_session <= session for one in problem.phases) - 1


def ways(problem: Problem, chosen: frozenset[str], where: brute.Where) -> Iterator[Bought]:
    """Every way to buy a placed set: a phase for whatever costs money, and each tool bought or hired."""
    by_id = {one.id: one for one in problem.options}
    paid = [id for id in sorted(chosen) if by_id[id].arrivals]
    open_to = [
        [phase for phase in range(len(problem.phases)) if in_time(problem, chosen, where, by_id[id], phase)]
        for id in paid
    ]
    used = {tool for id in chosen for tool in by_id[id].tools}
    tools = [one for one in problem.tools if one.id in used and not one.owned]
    kinds = [
        [bought for bought in (True, False) if (one.buy_minor is not None if bought else one.for_hire)] for one in tools
    ]
    for phases in product(*open_to):
        for kind in product(*kinds):
            bought = frozenset(one.id for one, yes in zip(tools, kind, strict=True) if yes)
            yield dict(zip(paid, phases, strict=True)), bought


def in_time(problem: Problem, chosen: frozenset[str], where: brute.Where, option: Option, phase: int) -> bool:
    """Whether what stands there can be bought in a phase."""
    if option.arrivals[phase] >= end_of(problem):
        return False
    begins = where.get((option.id, 0))
    if begins is not None and begins[0] < option.arrivals[phase]:
        return False
    by_id = {one.id: one for one in problem.options}
    for errand in option.rounds:
        run = [one for one in errand[phase:] if one in chosen]
        ends = [brute._still_there(by_id, where, (one, len(by_id[one].steps) - 1)) for one in run]
        if begins is not None:
            ends = [then for then in ends if brute._may_follow(problem, option.steps[0], then, begins)]
        if not ends:
            return False
    return True


def spends(problem: Problem, chosen: frozenset[str], where: brute.Where, way: Bought) -> list[int]:
    """What is spent in each phase."""
    by_id = {one.id: one for one in problem.options}
    buys, bought = way
    found = [0] * len(problem.phases)
    there = {one.id: one.on_hand for one in problem.products}
    for phase in range(len(problem.phases)):
        mine = [id for id in chosen if buys.get(id, 0) == phase]
        found[phase] += sum(by_id[id].cost_minor for id in mine)
        goods: dict[str | None, int] = {}
        for article in problem.products:
            there[article.id] -= sum(amount for id in mine for name, amount in by_id[id].uses if name == article.id)
            packs = 0
            while there[article.id] < 0:
                there[article.id] += article.pack
                packs += 1
            if packs:
                plain = packs * article.price_minor
                goods[article.shop] = goods.get(article.shop, 0) + plain
                line = Fraction(plain * article.charge_numerator, article.charge_denominator)
                found[phase] += (line + Fraction(1, 2)).__floor__()
        for shop in problem.shops:
            if shop.id in goods:
                tax = Fraction(goods[shop.id] * shop.tax_numerator, shop.tax_denominator)
                found[phase] += (tax + Fraction(1, 2)).__floor__()
                if shop.free_over_minor is None or goods[shop.id] < shop.free_over_minor:
                    found[phase] += shop.delivery_minor
    for tool in problem.tools:
        users = [id for id in chosen if tool.id in by_id[id].tools]
        if not users or tool.owned:
            continue
        first = min(buys.get(id, 0) for id in users)
        if tool.id in bought:
            found[first] += tool.buy_minor or 0
            continue
        begun = {brute._begun(problem, place) for (id, _), (place, _) in where.items() if id in users}
        hired = [phase_of(problem, session) for session in sorted(begun - set(tool.held))]
        phases = hired if hired or tool.held else [first]
        for phase in phases[tool.prepaid - len(tool.held) :]:
            found[phase] += NEVER if tool.hire_minor is None else tool.hire_minor
    return found


def kept(problem: Problem, spent: list[int]) -> bool:
    """Whether no money is spent before it is there."""
    total = 0
    for one, minor in zip(problem.phases, spent, strict=True):
        total += minor
        if minor >= NEVER:
            return False
        if one.most_minor is not None and total > one.most_minor:
            return False
    return problem.budget_minor is None or total <= problem.budget_minor


def best_way(
    problem: Problem, chosen: frozenset[str], where: brute.Where
) -> tuple[int, tuple[tuple[str, int], ...], frozenset[str]] | None:
    """(spend, phase by option, tools bought): the cheapest way, then bought tools, then each option late, by id."""
    by_id = {one.id: one for one in problem.options}
    found = None
    for way in ways(problem, chosen, where):
        spent = spends(problem, chosen, where, way)
        if kept(problem, spent):
            hired = tuple(one.id not in way[1] for one in sorted(problem.tools, key=lambda one: one.id))
            late = tuple(-way[0][id] if by_id[id].steps else way[0][id] for id in sorted(way[0]))
            key = (sum(spent), hired, late)
            if found is None or key < found[0]:
                found = key, tuple(sorted(way[0].items())), way[1]
    return None if found is None else (found[0][0], found[1], found[2])


def best(world: World) -> tuple[brute.Best, tuple[tuple[str, int], ...], frozenset[str]] | None:
    """The best set with its best placing and buying, by the wishes in their order."""
    problem = world.problem
    by_id = {one.id: one for one in problem.options}
    found = None
    for chosen in brute.subsets(problem):
        left = world.left(chosen)
        if left is None:
            continue
        minutes = sum(step.minutes * step.people + step.help for id in chosen for step in by_id[id].steps)
        flags = tuple(one not in chosen for one in sorted(by_id))
        back = brute._worths(world, chosen, left)
        for where in brute.placings(problem, chosen):
            last = max((place for place, _ in where.values()), default=-1)
            worth = left if problem.hazards_first else (sum(left),)
            marks = sum(by_id[id].marks for id in chosen)
            if found is not None and not problem.must_all and (worth, marks) > found[0][:2]:
                break
            way = best_way(problem, chosen, where)
            if way is None:
                continue
            usual = (worth, marks, way[0], minutes, last)
            order = (last, marks, way[0], worth, minutes) if problem.must_all else usual
            key = (*order, flags, *brute._early(problem, by_id, chosen, where, back))
            if found is None or key < found[0]:
                told = brute.Best(
                    tuple(sorted(chosen)),
                    *left,
                    way[0],
                    minutes,
                    last,
                    tuple((id, index, *where[id, index]) for id, index in sorted(where)),
                )
                found = key, told, way[1], way[2]
    return None if found is None else found[1:]


def by_date(world: World, number: int) -> World:
    """The same job with its money coming in two or three phases, goods that take their days, and rounds of a shop."""
    dice = random.Random(f"dates {number}")
    problem = world.problem
    sessions = len(problem.sessions or ())
    count = dice.choice((2, 2, 3))
    firsts = [0, *sorted(dice.choice((1, 1, 2, sessions)) for _ in range(count - 1))]
    sums = [dice.choice((0, 400, 900, 1600, 2600)) for _ in range(count)]
    most = [sum(sums[: place + 1]) for place in range(count)]
    phases = tuple(
        Instalment(None if place == count - 1 and dice.random() < 0.2 else each, first)
        for place, (each, first) in enumerate(zip(most, firsts, strict=True))
    )
    options = tuple(_dated(dice, one, phases, sessions) for one in problem.options)
    rounds = tuple(
        Option(f"round{place}", steps=(Step(dice.choice((10, 20))),), cost_minor=dice.choice((0, 0, 50)))
        for place in range(count)
    )
    if number % 4 == 0:
        rounds = tuple(
            replace(one, first_session=first, arrivals=tuple(max(first, each) for each in firsts))
            for one, first in zip(rounds, firsts, strict=True)
        )
        options = tuple(
            replace(one, rounds=(tuple(f"round{place}" for place in range(count)),))
            if any(name == "paint" for name, _ in one.uses)
            else one
            for one in options
        )
        options = (*options, *rounds)
    found = _with_options(world, options)
    return World(replace(found.problem, phases=phases, budget_minor=None), world.tables)


def eager(world: World, number: int) -> World:
    """The same job where each option is worth its while, little stands in the way, and goods and tools are shared."""
    dice = random.Random(f"eager {number}")
    problem = world.problem
    options = tuple(
        replace(
            one,
            group=None,
            excludes=(),
            spends=(),
            cost_minor=dice.choice((0, 0, 150, 300)),
            uses=tuple((name, dice.randint(1, 3)) for name in ("paint", "tape", "rug") if dice.random() < 0.4),
            tools=("drill",) if dice.random() < 0.4 else (),
            steps=one.steps if dice.random() < 0.2 else (Step(dice.choice((20, 30, 60))),),
            first_session=0,
        )
        for one in problem.options
    )
    tables = tuple(
        ((one.id,), {frozenset[str](): (0, dice.randint(20, 60)), frozenset({one.id}): (0, 0)}) for one in options
    )
    cheaper = {"paint": 330, "tape": 70, "rug": 410}
    goods = tuple(replace(one, price_minor=cheaper[one.id], most=None) for one in problem.products)
    hire, prepaid = dice.choice((None, 200)), dice.choice((0, 0, 1))
    held = (0,) if prepaid and sum(one.cost_minor for one in options) // 50 % 2 else ()
    tools = (Tool("drill", False, dice.choice((250, 450)), hire, prepaid, held), *problem.tools[1:])
    shops = (Shop("mill", dice.choice((0, 120)), dice.choice((None, 700)), dice.choice((0, 33)), 400),)
    made = replace(problem, products=goods, tools=tools, shops=shops, must=(), must_all=False, loads=())
    return _with_options(World(made, tables), options)


def _dated(dice: random.Random, one: Option, phases: tuple[Instalment, ...], sessions: int) -> Option:
    """An option that costs something arrives with its money, or some sessions later."""
    if not (one.cost_minor or one.uses or set(one.tools) & {"drill", "saw"}):
        return one
    lead = dice.choice((0, 0, 0, 1))
    arrivals = [max(one.first_session, min(sessions, phase.first_session + lead)) for phase in phases]
    return replace(one, first_session=arrivals[0], arrivals=tuple(arrivals))
