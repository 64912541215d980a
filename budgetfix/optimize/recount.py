"""Money, packs, minutes and every promise counted again from the chosen set, in whole numbers, without the program."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from budgetfix.base.numbers import ceil_div
from budgetfix.optimize.facts import Facts, ending
from budgetfix.optimize.problem import Load, Option, Placed, Problem, Product, Shop, Step
from budgetfix.optimize.setting_up import wholes


class SolverDisagrees(Exception):
    """The solver claims what does not come out again: our bug, never the user's."""


@dataclass(frozen=True, slots=True)
class Bill:
    """What a chosen set costs. All money in minor units."""

    packs: tuple[tuple[str, int], ...]
    bought: tuple[str, ...]
    hired: tuple[tuple[str, int], ...]
    spent_minor: int
    buys: tuple[tuple[str, int], ...] = ()
    """(option, phase in which it is bought), where money comes in phases."""


def bill(facts: Facts, chosen: Iterable[str], placed: Iterable[Placed]) -> Bill:
    """The cheapest bill of a set as it is placed: whole packs, one order a shop, tools bought or hired."""
    ids = sorted(chosen)
    packs = _packs(facts, ids)
    bought, hired = tool_choices(facts, ids, hire_sessions(facts, placed))
    spent = sum(facts.by_id[id].cost_minor for id in ids) + goods_minor(facts, packs)
    spent += tools_minor(facts, bought, hired)
    return Bill(tuple(sorted((id, count) for id, count in packs.items() if count)), bought, hired, spent)


def _packs(facts: Facts, ids: Iterable[str]) -> dict[str, int]:
    used: Counter[str] = Counter()
    for id in ids:
        for product, amount in facts.by_id[id].uses:
            used[product] += amount
    return {id: ceil_div(used[id] - facts.products[id].on_hand, facts.products[id].pack) for id in sorted(used)}


def marks_of(problem: Problem, chosen: Iterable[str]) -> int:
    """What a set leaves behind."""
    held = frozenset(chosen)
    return sum(one.marks for one in problem.options if one.id in held)


def goods_minor(facts: Facts, packs: Mapping[str, int]) -> int:
    """Goods with delivery and tax, shop by shop; goods without a shop have neither."""
    ordered: dict[str | None, int] = {}
    total = 0
    for id, count in packs.items():
        if count > 0:
            product = facts.products[id]
            ordered[product.shop] = ordered.get(product.shop, 0) + count * product.price_minor
            total += charged(product, count)
    shops = {shop.id: shop for shop in facts.problem.shops}
    for name, goods in ordered.items():
        if name is not None and name in shops:
            total += delivery_and_tax(shops[name], goods)
    return total


def charged(product: Product, packs: int) -> int:
    """What a line of goods is charged at, half up."""
    above, below = product.charge_numerator, product.charge_denominator
    return (2 * packs * product.price_minor * above + below) // (2 * below)


def delivery_and_tax(shop: Shop, goods: int) -> int:
    """What comes on top of one order's goods: tax half up on the goods, delivery unless enough is ordered."""
    free = shop.free_over_minor is not None and goods >= shop.free_over_minor
    tax = (2 * goods * shop.tax_numerator + shop.tax_denominator) // (2 * shop.tax_denominator)
    return tax + (0 if free else shop.delivery_minor)


def hire_sessions(facts: Facts, placed: Iterable[Placed]) -> dict[str, int]:
    """Sessions with any step of an option that lists a tool, and those for which it is hired anyhow, by tool."""
    found: dict[str, set[int]] = {id: set(tool.held) for id, tool in facts.tools.items()}
    whole = wholes(facts.problem.sessions or ())
    for one in placed:
        for tool in facts.by_id[one.option].tools:
            if tool in found and one.session is not None:
                found[tool].add(whole[one.session])
    return {id: len(sessions) for id, sessions in found.items()}


def tool_choices(
    facts: Facts, ids: Iterable[str], sessions: Mapping[str, int]
) -> tuple[tuple[str, ...], tuple[tuple[str, int], ...]]:
    """(bought, hired with the sessions still to be paid): the cheaper of both, bought where equal; at least one.

    Nothing is said of what is hired as often as is paid for already.
    """
    used = sorted({tool for id in ids for tool in facts.by_id[id].tools if tool in facts.tools})
    bought: list[str] = []
    hired: list[tuple[str, int]] = []
    for id in used:
        tool, count = facts.tools[id], max(1, sessions.get(id, 0))
        if not tool.for_hire and tool.buy_minor is None:
            raise SolverDisagrees(f"{id} cannot be had")
        hire = tool.hire_for(count)
        if count <= tool.prepaid:
            continue
        if hire is None and tool.buy_minor is None:
            raise SolverDisagrees(f"{id} cannot be hired so often")
        if hire is None or (tool.buy_minor is not None and tool.buy_minor <= hire):
            bought.append(id)
        else:
            hired.append((id, count - tool.prepaid))
    return tuple(bought), tuple(hired)


def tools_minor(facts: Facts, bought: Iterable[str], hired: Iterable[tuple[str, int]]) -> int:
    """Money for tools."""
    return sum(facts.tools[id].buy_minor or 0 for id in bought) + sum(
        (facts.tools[id].hire_minor or 0) * count for id, count in hired
    )


def minutes_of(facts: Facts, chosen: Iterable[str]) -> int:
    """Person-minutes of a set, without setting up."""
    return sum(step.person_minutes for id in sorted(chosen) for step in facts.by_id[id].steps)


def broken(facts: Facts, chosen: Iterable[str], placed: Iterable[Placed]) -> tuple[str, ...]:
    """Every promise that a set and its placing do not keep, in words; empty when all is well."""
    ids = frozenset(chosen)
    where = {(one.option, one.step): one for one in placed}
    words = [*choice_broken(facts, ids), *_hours_broken(facts, where)]
    for id in sorted(ids):
        steps = facts.by_id[id].steps
        if facts.problem.sessions == ():
            continue
        for index in range(len(steps)):
            words += [] if (id, index) in where else [f"{id} step {index} is nowhere"]
        words += _order_broken(facts, id, where)
    return tuple(words)


def choice_broken(facts: Facts, ids: frozenset[str]) -> list[str]:
    """What a set alone breaks: groups, excludes, needs, musts, limits, stock, loads."""
    words = [f"{id} against {other}" for id in sorted(ids) for other in sorted(facts.against[id] & ids) if id < other]
    words += [f"{id} needs {need}" for id in sorted(ids) for need in facts.by_id[id].needs if need not in ids]
    words += [f"must {','.join(must)}" for must in facts.problem.must if ids.isdisjoint(must)]
    for limit in facts.problem.limits:
        spent = sum(amount for id in ids for name, amount in facts.by_id[id].spends if name == limit.id)
        words += [f"limit {limit.id}"] if spent > limit.most else []
    words += [f"more of {id} than there is" for id in too_many(facts, ids)]
    words += [f"too heavy for {load.id}" for load in too_heavy(facts, ids)]
    return words


def too_heavy(facts: Facts, ids: Iterable[str]) -> list[Load]:
    """Loads that all packs of a set together are too heavy for."""
    packs = _packs(facts, sorted(ids))
    return [
        load for load in facts.problem.loads if sum(packs.get(id, 0) * each for id, each in load.weights) > load.most
    ]


def too_many(facts: Facts, ids: Iterable[str]) -> list[str]:
    """Products of which a set takes more packs than there are."""
    packs = _packs(facts, sorted(ids))
    return [id for id, count in packs.items() if (most := facts.products[id].most) is not None and count > most]


def _hours_broken(facts: Facts, where: Mapping[tuple[str, int], Placed]) -> list[str]:
    used: Counter[tuple[int, str]] = Counter()
    joint: Counter[int] = Counter()
    words: list[str] = []
    for (id, index), one in where.items():
        step = facts.by_id[id].steps[index]
        doing, helping = (one.people[:1], one.people[1:]) if step.help else (one.people, ())
        wrong = not set(step.barred).isdisjoint(doing) or not set(step.no_help).isdisjoint(helping)
        if len(set(one.people)) != step.hands or len(one.people) != step.hands or wrong:
            words.append(f"{id} step {index} has the wrong people")
        if one.session is None:
            continue
        if not _allowed(facts, facts.by_id[id], step, one.session):
            words.append(f"{id} step {index} is in a wrong session")
            continue
        if facts.hushed(step, one.session):
            words.append(f"{id} step {index} is too loud for its session")
        joint[one.session] += step.joint_minutes
        for place, person in enumerate(one.people):
            used[one.session, person] += step.minutes_in(place)
    for session, row in enumerate(facts.minutes):
        words += [
            f"{name} works too long in {session}"
            for name, there in zip(facts.problem.people, row, strict=True)
            if used[session, name] > there
        ]
        words += [f"joint work is too long in {session}"] if joint[session] > max(row, default=0) else []
    return words


def _allowed(facts: Facts, option: Option, step: Step, session: int) -> bool:
    first = max(option.first_session, step.first_session)
    last = facts.horizon - 1 if option.last_session is None else min(option.last_session, facts.horizon - 1)
    return first <= session <= last


def _order_broken(facts: Facts, id: str, where: Mapping[tuple[str, int], Placed]) -> list[str]:
    option = facts.by_id[id]
    pairs = [((id, index - 1), (id, index)) for index in range(1, len(option.steps))]
    if option.steps:
        pairs += [
            ((need, len(facts.by_id[need].steps) - 1), (id, 0)) for need in facts.needs[id] if facts.by_id[need].steps
        ]
    days = {
        facts.days[one.session]
        for index in range(len(option.steps))
        if (one := where.get((id, index))) is not None and one.session is not None and one.session < facts.horizon
    }
    words = [f"{id} is left half done overnight"] if option.one_day and len(days) > 1 else []
    for first, then in pairs:
        before, after = where.get(first), where.get(then)
        if before is None or after is None or before.session is None or after.session is None:
            continue
        earlier, later = facts.by_id[first[0]].steps[first[1]], facts.by_id[then[0]].steps[then[1]]
        ready = facts.next_session(earlier, later, before.session)
        shared = before.session == after.session and not set(after.people) <= set(ending(earlier, before.people))
        if after.session < ready or shared:
            words.append(f"{then[0]} step {then[1]} comes too early")
    return words
