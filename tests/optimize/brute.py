"""The right answer the slow way: every subset in every placing, all wishes compared. Shares no code with `solve`."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations, permutations

from budgetfix.optimize.problem import Load, Option, Problem, Step
from tests.optimize.worlds import World, against

Where = dict[tuple[str, int], tuple[int, tuple[str, ...]]]
"""(session, people) of each (option, step)."""


@dataclass(frozen=True)
class Best:
    """What the slow way found. `where`: (option, step, session, people) in order."""

    chosen: tuple[str, ...]
    hazards: int
    points: int
    spent: int
    minutes: int
    last: int
    where: tuple[tuple[str, int, int, tuple[str, ...]], ...]


def subsets(problem: Problem) -> Iterator[frozenset[str]]:
    """Sets that keep groups, excludes, needs, musts, limits and stock."""
    ids = sorted(one.id for one in problem.options)
    by_id = {one.id: one for one in problem.options}
    foes = against(problem.options)
    for size in range(len(ids) + 1):
        for some in combinations(ids, size):
            chosen = frozenset(some)
            if any(not foes[id].isdisjoint(chosen) or not chosen.issuperset(by_id[id].needs) for id in some):
                continue
            if any(chosen.isdisjoint(must) for must in problem.must):
                continue
            spent: dict[str, int] = {}
            for id in some:
                for name, amount in by_id[id].spends:
                    spent[name] = spent.get(name, 0) + amount
            if all(spent.get(limit.id, 0) <= limit.most for limit in problem.limits) and _there(problem, by_id, some):
                if problem.sessions and any(by_id[id].first_session >= max(1, _end(problem)) for id in some):
                    continue
                yield chosen


def _there(problem: Problem, by_id: dict[str, Option], some: tuple[str, ...]) -> bool:
    """Whether all that is used is on hand, or in the packs that there are."""
    used = [pair for id in some for pair in by_id[id].uses]
    return all(
        one.most is None or sum(amount for id, amount in used if id == one.id) <= one.on_hand + one.most * one.pack
        for one in problem.products
    ) and all(_weight(problem, load, used) <= load.most for load in problem.loads)


def _weight(problem: Problem, load: Load, used: list[tuple[str, int]]) -> int:
    """What the packs weigh that have to be had."""
    total = 0
    for one in problem.products:
        short = sum(amount for id, amount in used if id == one.id) - one.on_hand
        packs = 0
        while packs * one.pack < short:
            packs += 1
        total += packs * dict(load.weights).get(one.id, 0)
    return total


def _end(problem: Problem) -> int:
    """How many sessions may be used."""
    count = len(problem.sessions or ())
    return count if problem.last_session is None else min(count, problem.last_session + 1)


def placings(problem: Problem, chosen: frozenset[str]) -> Iterator[Where]:
    """Every way to place a set."""
    by_id = {one.id: one for one in problem.options}
    steps = [(id, index) for id in _needed_first(by_id, chosen) for index in range(len(by_id[id].steps))]
    yield from _place(problem, by_id, chosen, steps, {})


def _needed_first(by_id: dict[str, Option], chosen: frozenset[str]) -> list[str]:
    order: list[str] = []
    while len(order) < len(chosen):
        order += [id for id in sorted(chosen) if id not in order and set(by_id[id].needs) & chosen <= set(order)]
    return order


def _place(
    problem: Problem, by_id: dict[str, Option], chosen: frozenset[str], steps: list[tuple[str, int]], where: Where
) -> Iterator[Where]:
    if len(where) == len(steps):
        yield dict(where)
        return
    id, index = steps[len(where)]
    option, step = by_id[id], by_id[id].steps[index]
    end = _end(problem)
    before = (
        [(id, index - 1)]
        if index
        else [(need, len(by_id[need].steps) - 1) for need in option.needs if by_id[need].steps]
    )
    end = end if option.last_session is None else min(end, option.last_session + 1)
    for session in range(max(option.first_session, step.first_session), end):
        if step.loud and (problem.sessions or ())[session].quiet:
            continue
        if option.one_day and index and _day(problem, session) != _day(problem, where[id, 0][0]):
            continue
        for crew in crews(problem, step):
            if all(_may_follow(problem, step, _still_there(by_id, where, key), (session, crew)) for key in before):
                where[id, index] = (session, crew)
                if _hours_kept(problem, by_id, where, session):
                    yield from _place(problem, by_id, chosen, steps, where)
                del where[id, index]


def _day(problem: Problem, session: int) -> int:
    """The day on which a session begins."""
    return (problem.sessions or ())[session].start_minute // 1440


def crews(problem: Problem, step: Step) -> list[tuple[str, ...]]:
    """Who could do a step: some people at once, or one who does it and one who helps."""
    able = [name for name in problem.people if name not in step.barred]
    if not step.help:
        return list(combinations(able, step.people))
    return [
        pair for pair in permutations(problem.people, 2) if pair[0] not in step.barred and pair[1] not in step.no_help
    ]


def _still_there(by_id: dict[str, Option], where: Where, key: tuple[str, int]) -> tuple[int, tuple[str, ...]]:
    """Where a step stands, with those who are at it when it ends: a helper has gone."""
    session, crew = where[key]
    return session, crew[:1] if by_id[key[0]].steps[key[1]].help else crew


def _may_follow(
    problem: Problem, step: Step, first: tuple[int, tuple[str, ...]], then: tuple[int, tuple[str, ...]]
) -> bool:
    sessions = problem.sessions or ()
    starts = sum(not one.continues for one in sessions[first[0] + 1 : then[0] + 1])
    if then[0] < first[0] or starts < step.wait_sessions:
        return False
    if step.wait_minutes > 0 and sessions[then[0]].start_minute < sessions[first[0]].end_minute + step.wait_minutes:
        return False
    return then[0] > first[0] or (step.wait_minutes <= 0 and set(then[1]) <= set(first[1]))


def _hours_kept(problem: Problem, by_id: dict[str, Option], where: Where, session: int) -> bool:
    there = (problem.sessions or ())[session].minutes
    joint = 0
    used = dict.fromkeys(problem.people, 0)
    for (id, index), (place, crew) in where.items():
        if place == session:
            step = by_id[id].steps[index]
            joint += (step.help or step.minutes) if len(crew) > 1 else 0
            for name in crew:
                helps = step.help > 0 and name == crew[1]
                used[name] += step.help if helps else step.minutes
    setup = problem.setup_minutes
    for part in range(_begun(problem, session), session):
        setup = max(0, setup - max((problem.sessions or ())[part].minutes))
    rows = zip(used.values(), there, strict=True)
    longest = max(minutes - setup for minutes in there)
    return joint <= max(0, longest) and all(not work or work + setup <= minutes for work, minutes in rows)


def spent(problem: Problem, chosen: frozenset[str], where: Where) -> int | None:
    """Money for a placed set; None where a tool cannot be had."""
    by_id = {one.id: one for one in problem.options}
    total = sum(by_id[id].cost_minor for id in chosen)
    used: dict[str, int] = {}
    for id in chosen:
        for name, amount in by_id[id].uses:
            used[name] = used.get(name, 0) + amount
    goods: dict[str | None, int] = {}
    for product in problem.products:
        packs = 0
        while packs * product.pack + product.on_hand < used.get(product.id, 0):
            packs += 1
        if packs:
            goods[product.shop] = goods.get(product.shop, 0) + packs * product.price_minor
            line = Fraction(packs * product.price_minor * product.charge_numerator, product.charge_denominator)
            total += (line + Fraction(1, 2)) // 1
    for shop in problem.shops:
        if shop.id in goods:
            tax = Fraction(goods[shop.id] * shop.tax_numerator, shop.tax_denominator) + Fraction(1, 2)
            free = shop.free_over_minor is not None and goods[shop.id] >= shop.free_over_minor
            total += tax.numerator // tax.denominator + (0 if free else shop.delivery_minor)
    for tool in problem.tools:
        users = [id for id in chosen if tool.id in by_id[id].tools]
        if users and not tool.owned:
            begun = {place: _begun(problem, place) for (id, _), (place, _) in where.items() if id in users}
            days = max(1, len({*begun.values(), *tool.held}))
            ways = [] if tool.buy_minor is None else [tool.buy_minor]
            if days <= tool.prepaid:
                ways += [0]
            elif tool.hire_minor is not None:
                ways += [tool.hire_minor * (days - tool.prepaid)]
            if not ways:
                return None
            total += min(ways)
    return total


def _begun(problem: Problem, session: int) -> int:
    """The session that a part goes on from."""
    while (problem.sessions or ())[session].continues:
        session -= 1
    return session


def best(world: World) -> Best | None:
    """The best set with its best placing, by the wishes in their order."""
    problem = world.problem
    by_id = {one.id: one for one in problem.options}
    found: tuple[tuple[object, ...], frozenset[str], Where] | None = None
    for chosen in subsets(problem):
        left = world.left(chosen)
        if left is None:
            continue
        minutes = sum(step.minutes * step.people + step.help for id in chosen for step in by_id[id].steps)
        flags = tuple(one not in chosen for one in sorted(by_id))
        back = _worths(world, chosen, left)
        for where in placings(problem, chosen):
            money = spent(problem, chosen, where)
            if money is None or (problem.budget_minor is not None and money > problem.budget_minor):
                continue
            last = max((place for place, _ in where.values()), default=-1)
            worth = left if problem.hazards_first else (sum(left),)
            marks = sum(by_id[id].marks for id in chosen)
            usual = (worth, marks, money, minutes, last)
            order = (last, marks, money, worth, minutes) if problem.must_all else usual
            key = (*order, flags, *_early(problem, by_id, chosen, where, back))
            if found is None or key < found[0]:
                found = (key, chosen, where)
    return None if found is None else _told(world, found[1], found[2])


def _worths(world: World, chosen: frozenset[str], left: tuple[int, int]) -> dict[str, tuple[int, int]]:
    back: dict[str, tuple[int, int]] = {}
    for id in chosen:
        more = world.left_anyway(chosen - {id})
        pair = (max(0, more[0] - left[0]), max(0, more[1] - left[1]))
        back[id] = pair if world.problem.hazards_first else (0, max(0, sum(more) - sum(left)))
    return back


def _early(
    problem: Problem, by_id: dict[str, Option], chosen: frozenset[str], where: Where, back: dict[str, tuple[int, int]]
) -> tuple[object, ...]:
    totals = []
    for session in range(len(problem.sessions or ())):
        done = [id for id in chosen if by_id[id].steps and where[id, len(by_id[id].steps) - 1][0] <= session]
        totals.append(tuple(-sum(back[id][part] for id in done) for part in (0, 1)))
    order = sorted(where)
    ranks = []
    for id, index in order:
        ranks.append(crews(problem, by_id[id].steps[index]).index(where[id, index][1]))
    return tuple(totals), tuple(where[key][0] for key in order), tuple(ranks)


def _told(world: World, chosen: frozenset[str], where: Where) -> Best:
    problem = world.problem
    by_id = {one.id: one for one in problem.options}
    left = world.left(chosen) or (0, 0)
    return Best(
        tuple(sorted(chosen)),
        *left,
        spent(problem, chosen, where) or 0,
        sum(step.minutes * step.people + step.help for id in chosen for step in by_id[id].steps),
        max((place for place, _ in where.values()), default=-1),
        tuple((id, index, *where[id, index]) for id, index in sorted(where)),
    )
