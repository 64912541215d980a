"""Rows about money that comes in phases: what is bought by when, and nothing spent before it is there.

`x[id]` is 1 where an option is chosen, `by[id,phase]` where it is bought by the end of a phase; packs
`q[product,phase]` are counted up to a phase, orders `o[shop,phase]`, free deliveries `w[shop,phase]`, taxes
`t[shop,phase]` and rounded lines `l[product,phase]` within one. A tool is bought `b[tool]` (by a phase:
`b[tool,phase]`) or hired `h[tool]`; its sessions `u[tool,session]` are paid for in the phase in which they lie.
`n[tool,phase]`: a hire that no session asks for;
`r[tool,phase]`: hires to be paid beyond those that are paid for already.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import gcd

from budgetfix.base.numbers import ceil_div
from budgetfix.optimize.choice_rows import x
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.money_rows import b, delivers, most_line, most_packs, most_tax, q, shops_of, smaller, uneven
from budgetfix.optimize.place_rows import u
from budgetfix.optimize.problem import Product, Shop
from budgetfix.optimize.solver import Program, Row, Terms


def by(facts: Facts, id: str, phase: int) -> str:
    """Name of whether an option is bought by the end of a phase."""
    return f"by[{id},{phase}]" if phase < facts.last_phases.get(id, 0) else x(id)


def packs(facts: Facts, product: str, phase: int) -> str:
    """Name of the packs bought by the end of a phase."""
    return q(product) if phase == len(facts.phases) - 1 else f"q[{product},{phase}]"


def bought(facts: Facts, tool: str, phase: int) -> str:
    """Name of whether a tool is bought by the end of a phase."""
    return b(tool) if phase == len(facts.phases) - 1 else f"b[{tool},{phase}]"


def hired(tool: str) -> str:
    """Name of whether a tool is hired for all its sessions, not bought."""
    return f"h[{tool}]"


def idle(tool: str, phase: int) -> str:
    """Name of whether a hire is paid by a phase although no session holds work with the tool."""
    return f"n[{tool},{phase}]"


def due(tool: str, phase: int) -> str:
    """Name of the sessions of hire to be paid by a phase, beyond those that are paid for already."""
    return f"r[{tool},{phase}]"


def _numbers(facts: Facts) -> range:
    return range(len(facts.phases))


def stepless(facts: Facts, tool: str) -> tuple[str, ...]:
    """Users of a tool that take no time."""
    return tuple(one.id for one in facts.users(tool) if not one.steps)


def variables(facts: Facts, program: Program) -> None:
    """What is bought by when, packs, orders, taxes and tools."""
    for id, last in facts.last_phases.items():
        for phase in range(last):
            program.binary(by(facts, id, phase))
    for phase in _numbers(facts):
        for id, most in most_packs(facts).items():
            program.integer(packs(facts, id, phase), most)
            if uneven(facts.products[id]):
                program.integer(f"l[{id},{phase}]", most_line(facts.products[id], most))
            if facts.products[id].on_hand:
                program.binary(f"z[{id},{phase}]")
        for shop, products in shops_of(facts):
            if delivers(shop):
                program.binary(f"o[{shop.id},{phase}]")
                if shop.free_over_minor is not None:
                    program.binary(f"w[{shop.id},{phase}]")
            if shop.tax_numerator:
                program.integer(f"t[{shop.id},{phase}]", most_tax(shop, products, most_packs(facts)))
        for id, tool in facts.tools.items():
            if tool.buy_minor is not None:
                program.binary(bought(facts, id, phase))
            if tool.for_hire:
                program.binary(hired(id))
                if tool.hire_minor is not None and tool.prepaid:
                    program.integer(due(id, phase))
                if stepless(facts, id):
                    program.binary(idle(id, phase))


def bought_for_good(facts: Facts) -> Iterator[Row]:
    """What is bought by a phase is bought by the next one, too; options and tools."""
    for id, last in facts.last_phases.items():
        for phase in range(last):
            yield Row(f"by_{id}_{phase}", ((1, by(facts, id, phase)), (-1, by(facts, id, phase + 1))), "<=", 0)
    for id, tool in facts.tools.items():
        for phase in _numbers(facts)[:-1] if tool.buy_minor is not None else ():
            yield Row(f"b_{id}_{phase}", ((1, bought(facts, id, phase)), (-1, bought(facts, id, phase + 1))), "<=", 0)


def _use(facts: Facts, product: str, phase: int) -> Terms:
    """What everything bought by a phase uses of a product."""
    return tuple(
        (amount, by(facts, one.id, phase))
        for one in facts.options
        for name, amount in one.uses
        if name == product and amount
    )


def enough_packs_by(facts: Facts) -> Iterator[Row]:
    """By each phase, packs and what is on hand cover what is bought by then uses; of one user alone as well."""
    for id in most_packs(facts):
        product = facts.products[id]
        for phase in _numbers(facts):
            mine, use = packs(facts, id, phase), _use(facts, id, phase)
            terms = ((product.pack, mine), *((-amount, name) for amount, name in use))
            yield smaller(Row(f"packs_{id}_{phase}", terms, ">=", -product.on_hand))
            for place, (amount, name) in enumerate(use):
                least = ceil_div(amount - product.on_hand, product.pack)
                if least:
                    yield Row(f"packs_{id}_{phase}_{place}", ((1, mine), (-least, name)), ">=", 0)


def no_pack_ahead(facts: Facts) -> Iterator[Row]:
    """In no phase a pack is bought that is not opened for what is bought by then."""
    for id, most in most_packs(facts).items():
        product = facts.products[id]
        spare = product.pack - 1 - product.on_hand
        slack = max(0, -spare)
        for phase in _numbers(facts):
            mine, switch = packs(facts, id, phase), f"z[{id},{phase}]"
            terms = ((product.pack, mine), *((-amount, name) for amount, name in _use(facts, id, phase)))
            if product.on_hand:
                yield Row(f"ahead_{id}_{phase}_on", ((1, mine), (-most, switch)), "<=", 0)
            switched = ((slack, switch),) if slack else ()
            yield Row(f"ahead_{id}_{phase}", (*terms, *switched), "<=", spare + slack)


def _more(facts: Facts, product: str, phase: int, times: int = 1) -> Terms:
    """Packs that are bought in a phase, times something."""
    mine = ((times, packs(facts, product, phase)),)
    return (*mine, (-times, packs(facts, product, phase - 1))) if phase else mine


def one_order_a_phase(facts: Facts) -> Iterator[Row]:
    """Whatever is bought in a phase in a shop with delivery is part of its one order of that phase."""
    for shop, products in shops_of(facts):
        for product in products if delivers(shop) else ():
            most = most_packs(facts)[product.id]
            for phase in _numbers(facts):
                terms = (*_more(facts, product.id, phase), (-most, f"o[{shop.id},{phase}]"))
                yield Row(f"order_{shop.id}_{product.id}_{phase}", terms, "<=", 0)


def free_delivery_a_phase(facts: Facts) -> Iterator[Row]:
    """Delivery is free only for an order of enough goods, phase by phase."""
    for shop, products in shops_of(facts):
        if not delivers(shop) or shop.free_over_minor is None:
            continue
        for phase in _numbers(facts):
            free, order = f"w[{shop.id},{phase}]", f"o[{shop.id},{phase}]"
            terms = (*_goods(facts, products, phase), (-shop.free_over_minor, free))
            yield smaller(Row(f"free_{shop.id}_{phase}", terms, ">=", 0))
            yield Row(f"free_{shop.id}_{phase}_order", ((1, free), (-1, order)), "<=", 0)


def _goods(facts: Facts, products: list[Product], phase: int, times: int = 1) -> Terms:
    """Money for the goods of one order, times something."""
    found: list[tuple[int, str]] = []
    for product in products:
        found += _more(facts, product.id, phase, times * product.price_minor)
    return tuple(found)


def tax_half_up_a_phase(facts: Facts) -> Iterator[Row]:
    """Tax is on each phase's order, half up: D t >= a goods - ceil(D / 2) + 1 for a rate of a / D."""
    for shop, products in shops_of(facts):
        if shop.tax_numerator:
            part = gcd(shop.tax_numerator, shop.tax_denominator)
            rate, below = shop.tax_numerator // part, shop.tax_denominator // part
            for phase in _numbers(facts):
                terms = ((below, f"t[{shop.id},{phase}]"), *_goods(facts, products, phase, -rate))
                yield Row(f"tax_{shop.id}_{phase}", terms, ">=", 1 - (below + 1) // 2)


def line_half_up_a_phase(facts: Facts) -> Iterator[Row]:
    """A marked-up line is charged half up, phase by phase: D l >= a packs - ceil(D / 2) + 1."""
    for id in most_packs(facts):
        product = facts.products[id]
        if uneven(product):
            charge, below = product.price_minor * product.charge_numerator, product.charge_denominator
            part = gcd(charge, below)
            charge, below = charge // part, below // part
            for phase in _numbers(facts):
                terms = ((below, f"l[{id},{phase}]"), *_more(facts, id, phase, -charge))
                yield Row(f"line_{id}_{phase}", terms, ">=", 1 - (below + 1) // 2)


def tool_in_its_phase(facts: Facts) -> Iterator[Row]:
    """A tool is bought by the phase in which the first of its users is, or hired all along: one or the other."""
    for id, tool in facts.tools.items():
        hire = ((-1, hired(id)),) if tool.for_hire else ()
        for one in facts.users(id):
            for phase in range(facts.last_phases.get(one.id, 0) + 1):
                buy = ((-1, bought(facts, id, phase)),) if tool.buy_minor is not None else ()
                yield Row(f"tool_{id}_{one.id}_{phase}", ((1, by(facts, one.id, phase)), *buy, *hire), "<=", 0)
        if tool.buy_minor is not None and hire:
            yield Row(f"tool_{id}", ((1, b(id)), (1, hired(id))), "<=", 1)


def hire_without_work(facts: Facts) -> Iterator[Row]:
    """A hired tool costs a session at least, also where only options without steps list it: in their first phase."""
    for id, tool in facts.tools.items():
        if not tool.for_hire:
            continue
        working = tuple((-1, x(one.id)) for one in facts.users(id) if one.steps)
        for user in stepless(facts, id):
            for phase in _numbers(facts):
                buy = ((-1, b(id)),) if tool.buy_minor is not None else ()
                terms = ((1, by(facts, user, phase)), (-1, idle(id, phase)), *buy, *working)
                yield Row(f"idle_{id}_{user}_{phase}", terms, "<=", 0)


def spend_through(facts: Facts, phase: int) -> Terms:
    """What is spent by the end of a phase."""
    terms = [(one.cost_minor, by(facts, one.id, phase)) for one in facts.options if one.cost_minor]
    earlier = range(phase + 1)
    for id in most_packs(facts):
        product = facts.products[id]
        if uneven(product):
            terms += [(1, f"l[{id},{one}]") for one in earlier]
        elif product.price_minor:
            each = product.price_minor * product.charge_numerator // product.charge_denominator
            terms.append((each, packs(facts, id, phase)))
    for shop, _ in shops_of(facts):
        terms += [term for one in earlier for term in _on_top(shop, one)]
    return (*terms, *_tools_through(facts, phase))


def _on_top(shop: Shop, phase: int) -> Iterator[tuple[int, str]]:
    if delivers(shop):
        yield shop.delivery_minor, f"o[{shop.id},{phase}]"
        if shop.free_over_minor is not None:
            yield -shop.delivery_minor, f"w[{shop.id},{phase}]"
    if shop.tax_numerator:
        yield 1, f"t[{shop.id},{phase}]"


def _tools_through(facts: Facts, phase: int) -> Iterator[tuple[int, str]]:
    """Tools bought by a phase, and sessions of hire that lie before the next one."""
    for id, tool in facts.tools.items():
        if tool.buy_minor:
            yield tool.buy_minor, bought(facts, id, phase)
        if tool.hire_minor and tool.prepaid:
            yield tool.hire_minor, due(id, phase)
        elif tool.hire_minor:
            yield from ((tool.hire_minor, name) for name in _hires_through(facts, id, phase))


def _hires_through(facts: Facts, tool: str, phase: int) -> Iterator[str]:
    """Sessions of hire that lie before the next phase, or the one that no session asks for.

    Those for which it is hired anyhow are left out, and do for what no session asks for.
    """
    held = facts.tools[tool].held
    if stepless(facts, tool) and not held:
        yield idle(tool, phase)
    if any(one.steps for one in facts.users(tool)):
        for number in sorted(set(facts.whole) - set(held)):
            if facts.phase_of(facts.whole.index(number)) <= phase:
                yield u(tool, number)


def hire_beyond_prepaid(facts: Facts) -> Iterator[Row]:
    """By each phase, as many sessions of hire are paid as lie before the next one, less those paid for already."""
    for id, tool in facts.tools.items():
        for phase in _numbers(facts) if tool.prepaid else ():
            more = ((1, due(id, phase)),) if tool.hire_minor is not None else ()
            terms = (*more, *((-1, name) for name in _hires_through(facts, id, phase)))
            yield Row(f"due_{id}_{phase}", terms, ">=", len(tool.held) - tool.prepaid)


def money_by_date(facts: Facts, ceiling: int | None) -> Iterator[Row]:
    """By the end of each phase no more is spent than has come; in all, no more than `ceiling` as well."""
    last = len(facts.phases) - 1
    for phase, one in enumerate(facts.phases):
        known = (one.most_minor, ceiling if phase == last else None)
        most = min((each for each in known if each is not None), default=None)
        if most is not None:
            yield smaller(Row(f"money_{phase}", spend_through(facts, phase), "<=", most))


def all_rows(facts: Facts, ceiling: int | None) -> Iterator[Row]:
    """Every sentence above."""
    yield from bought_for_good(facts)
    yield from enough_packs_by(facts)
    yield from no_pack_ahead(facts)
    yield from one_order_a_phase(facts)
    yield from free_delivery_a_phase(facts)
    yield from tax_half_up_a_phase(facts)
    yield from line_half_up_a_phase(facts)
    yield from tool_in_its_phase(facts)
    yield from hire_without_work(facts)
    yield from hire_beyond_prepaid(facts)
    yield from money_by_date(facts, ceiling)
