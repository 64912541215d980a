"""Rows about money. All of it lives in the choosing program; amounts are minor units.

`q[product]` packs, `o[shop]` an order, `w[shop]` free delivery, `t[shop]` tax, `b[tool]` bought,
`v[tool,n]` hired for an n-th session, `l[product]` a line that is rounded.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import gcd

from budgetfix.base.numbers import ceil_div
from budgetfix.optimize.choice_rows import x
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.hire_counts import least_sessions
from budgetfix.optimize.problem import Extra, Product, Shop
from budgetfix.optimize.solver import Program, Row, Terms


def q(product: str) -> str:
    """Name of the packs of a product."""
    return f"q[{product}]"


def b(tool: str) -> str:
    """Name of whether a tool is bought."""
    return f"b[{tool}]"


def v(tool: str, count: int) -> str:
    """Name of whether a tool is hired for so many sessions at least."""
    return f"v[{tool},{count}]"


def line(product: str) -> str:
    """Name of the money of a product's line, where it is not a whole multiple of its packs."""
    return f"l[{product}]"


def uneven(product: Product) -> bool:
    """True where a pack's charge is no whole number: the line is rounded, not the pack."""
    return product.price_minor * product.charge_numerator % product.charge_denominator != 0


def most_packs(facts: Facts) -> dict[str, int]:
    """Packs of each product that all options together could use, as far as there are; without those that have none."""
    used: dict[str, int] = {}
    for one in facts.options:
        for product, amount in one.uses:
            used[product] = used.get(product, 0) + amount
    most = {id: ceil_div(used[id] - facts.products[id].on_hand, facts.products[id].pack) for id in sorted(used)}
    most = {id: min(count, _there(facts, id, count)) for id, count in most.items()}
    return {id: count for id, count in most.items() if count}


def _there(facts: Facts, id: str, otherwise: int) -> int:
    most = facts.products[id].most
    return otherwise if most is None else most


def shops_of(facts: Facts) -> list[tuple[Shop, list[Product]]]:
    """Shops in which any option could have something bought, with those products."""
    goods = most_packs(facts)
    rows = [
        (shop, [facts.products[id] for id in goods if facts.products[id].shop == shop.id])
        for shop in sorted(facts.problem.shops, key=lambda shop: shop.id)
    ]
    return [(shop, products) for shop, products in rows if products]


def delivers(shop: Shop) -> bool:
    """Whether an order can cost delivery."""
    return shop.delivery_minor > 0 and not (shop.free_over_minor is not None and shop.free_over_minor <= 0)


def money_variables(facts: Facts, program: Program) -> None:
    """Packs, orders, taxes and tools of the options."""
    for id, most in most_packs(facts).items():
        program.integer(q(id), most)
        if uneven(facts.products[id]):
            program.integer(line(id), most_line(facts.products[id], most))
    for shop, products in shops_of(facts):
        if delivers(shop):
            program.binary(f"o[{shop.id}]")
            if shop.free_over_minor is not None:
                program.binary(f"w[{shop.id}]")
                for product in products:
                    if product.on_hand:
                        program.binary(f"z[{product.id}]")
        if shop.tax_numerator:
            program.integer(f"t[{shop.id}]", most_tax(shop, products, most_packs(facts)))
    for id, tool in facts.tools.items():
        if tool.buy_minor is not None:
            program.binary(b(id))
        for count in range(1, facts.hirable.get(id, 0) + 1):
            program.binary(v(id, count))


def most_line(product: Product, packs: int) -> int:
    """A line of goods costs no more than this, however it is rounded."""
    return ceil_div(packs * product.price_minor * product.charge_numerator, product.charge_denominator)


def most_tax(shop: Shop, products: list[Product], packs: Mapping[str, int]) -> int:
    """Tax is no more than this on all packs that there could be of a shop's goods."""
    goods = sum(packs[product.id] * product.price_minor for product in products)
    return ceil_div(goods * shop.tax_numerator, shop.tax_denominator)


def _use(facts: Facts, product: str) -> Terms:
    return tuple(
        (amount, x(one.id)) for one in facts.options for name, amount in one.uses if name == product and amount
    )


def enough_packs(facts: Facts) -> Iterator[Row]:
    """Packs and what is on hand cover what the chosen options use."""
    for id in most_packs(facts):
        product = facts.products[id]
        terms = ((product.pack, q(id)), *((-amount, name) for amount, name in _use(facts, id)))
        yield smaller(Row(f"packs_{id}", terms, ">=", -product.on_hand))


def one_pack_at_least(facts: Facts) -> Iterator[Row]:
    """Whoever alone uses more than is on hand needs as many packs as that takes."""
    for id in most_packs(facts):
        product = facts.products[id]
        for amount, name in _use(facts, id):
            least = ceil_div(amount - product.on_hand, product.pack)
            if least:
                yield Row(f"packs_{id}_{name[2:-1]}", ((1, q(id)), (-least, name)), ">=", 0)


def packs_at_most(facts: Facts, extra: Extra) -> Iterator[Row]:
    """What is chosen uses no more of a product than is on hand and in the packs that there are, or are asked for."""
    asked = dict(extra.packs_at_most)
    scarce = {one.id: one.most for one in facts.problem.products if one.most is not None}
    for id in sorted({**asked, **scarce}):
        count = min(there[id] for there in (asked, scarce) if id in there)
        terms = _use(facts, id)
        if terms:
            product = facts.products[id]
            yield smaller(Row(f"at_most_{id}", terms, "<=", product.on_hand + product.pack * count))


def loads(facts: Facts) -> Iterator[Row]:
    """All packs together weigh no more than each load allows."""
    goods = most_packs(facts)
    for load in facts.problem.loads:
        terms = tuple((each, q(id)) for id, each in load.weights if id in goods and each)
        if terms:
            yield smaller(Row(f"load_{load.id}", terms, "<=", load.most))


def no_spare_pack(facts: Facts) -> Iterator[Row]:
    """Where delivery can be free, no pack is bought only to reach that."""
    for shop, products in shops_of(facts):
        if not delivers(shop) or shop.free_over_minor is None:
            continue
        for product in products:
            terms = ((product.pack, q(product.id)), *((-amount, name) for amount, name in _use(facts, product.id)))
            spare = product.pack - 1 - product.on_hand
            if product.on_hand:
                slack = max(0, -spare)
                switch = f"z[{product.id}]"
                most = most_packs(facts)[product.id]
                yield Row(f"spare_{product.id}_on", ((1, q(product.id)), (-most, switch)), "<=", 0)
                switched = ((slack, switch),) if slack else ()
                yield Row(f"spare_{product.id}", (*terms, *switched), "<=", spare + slack)
            else:
                yield Row(f"spare_{product.id}", terms, "<=", spare)


def one_order(facts: Facts) -> Iterator[Row]:
    """Whatever is bought in a shop with delivery is part of its one order."""
    for shop, products in shops_of(facts):
        if delivers(shop):
            for product in products:
                most = most_packs(facts)[product.id]
                yield Row(f"order_{shop.id}_{product.id}", ((1, q(product.id)), (-most, f"o[{shop.id}]")), "<=", 0)


def free_delivery(facts: Facts) -> Iterator[Row]:
    """Delivery is free only for an order of enough goods."""
    for shop, products in shops_of(facts):
        if delivers(shop) and shop.free_over_minor is not None:
            goods = tuple((product.price_minor, q(product.id)) for product in products)
            free, order = f"w[{shop.id}]", f"o[{shop.id}]"
            yield smaller(Row(f"free_{shop.id}", (*goods, (-shop.free_over_minor, free)), ">=", 0))
            yield Row(f"free_{shop.id}_order", ((1, free), (-1, order)), "<=", 0)


def tax_half_up(facts: Facts) -> Iterator[Row]:
    """Tax is on the order's goods, half up: D t >= a goods - ceil(D / 2) + 1 for a rate of a / D."""
    for shop, products in shops_of(facts):
        if shop.tax_numerator:
            part = gcd(shop.tax_numerator, shop.tax_denominator)
            rate, by = shop.tax_numerator // part, shop.tax_denominator // part
            goods = tuple((-rate * product.price_minor, q(product.id)) for product in products)
            yield Row(f"tax_{shop.id}", ((by, f"t[{shop.id}]"), *goods), ">=", 1 - (by + 1) // 2)


def line_half_up(facts: Facts) -> Iterator[Row]:
    """A marked-up line is charged half up: D l >= a packs - ceil(D / 2) + 1 for a charge of a / D a pack."""
    for id in most_packs(facts):
        product = facts.products[id]
        if uneven(product):
            charge, by = product.price_minor * product.charge_numerator, product.charge_denominator
            part = gcd(charge, by)
            charge, by = charge // part, by // part
            yield Row(f"line_{id}", ((by, line(id)), (-charge, q(id))), ">=", 1 - (by + 1) // 2)


def tool_at_hand(facts: Facts) -> Iterator[Row]:
    """A tool of a chosen option is bought, or hired for at least as many sessions as the option's waits need."""
    for id, tool in facts.tools.items():
        for one in facts.users(id):
            count = least_sessions(facts, one)
            terms = [(-1, b(id))] if tool.buy_minor is not None else []
            if count <= facts.hirable.get(id, 0):
                terms.append((-1, v(id, count)))
            yield Row(f"tool_{id}_{one.id}", ((1, x(one.id)), *terms), "<=", 0)


def hire_in_order(facts: Facts) -> Iterator[Row]:
    """A second session of hire comes only with a first."""
    for id, most in facts.hirable.items():
        for count in range(2, most + 1):
            yield Row(f"hire_{id}_{count}", ((1, v(id, count)), (-1, v(id, count - 1))), "<=", 0)


def hire_long_enough(facts: Facts) -> Iterator[Row]:
    """All work with a hired tool fits into as many of the longest sessions as are paid for."""
    whole = [0] * len(set(facts.whole))
    for number, row in zip(facts.whole, facts.minutes, strict=True):
        whole[number] += sum(row)
    longest = sorted(whole, reverse=True)
    for id, most in facts.hirable.items():
        work = tuple(
            (minutes, x(one.id))
            for one in facts.users(id)
            if (minutes := sum(step.person_minutes for step in one.steps))
        )
        total = sum(minutes for minutes, _ in work)
        if not longest or total <= longest[0]:
            continue
        bought = [(-total, b(id))] if facts.tools[id].buy_minor is not None else []
        hired = [(-longest[count - 1], v(id, count)) for count in range(1, most + 1)]
        yield smaller(Row(f"hire_{id}_minutes", (*work, *bought, *hired), "<=", 0))


def spend_terms(facts: Facts) -> Terms:
    """What the chosen options cost, with goods, delivery, tax and tools."""
    terms = [(one.cost_minor, x(one.id)) for one in facts.options if one.cost_minor]
    terms += [_line_term(facts.products[id]) for id in most_packs(facts) if facts.products[id].price_minor]
    for shop, _ in shops_of(facts):
        if delivers(shop):
            terms.append((shop.delivery_minor, f"o[{shop.id}]"))
            if shop.free_over_minor is not None:
                terms.append((-shop.delivery_minor, f"w[{shop.id}]"))
        if shop.tax_numerator:
            terms.append((1, f"t[{shop.id}]"))
    return (*terms, *tool_terms(facts))


def _line_term(product: Product) -> tuple[int, str]:
    """What a line of goods costs: by packs where a pack's charge is whole, else by the rounded line."""
    if uneven(product):
        return 1, line(product.id)
    return product.price_minor * product.charge_numerator // product.charge_denominator, q(product.id)


def tool_terms(facts: Facts) -> Terms:
    """What tools cost, bought or hired; sessions of hire that are paid for cost nothing more."""
    terms: list[tuple[int, str]] = []
    for id, tool in facts.tools.items():
        if tool.buy_minor:
            terms.append((tool.buy_minor, b(id)))
        if tool.hire_minor:
            first = tool.prepaid + 1
            terms += [(tool.hire_minor, v(id, count)) for count in range(first, facts.hirable.get(id, 0) + 1)]
    return tuple(terms)


def tools_budget(facts: Facts, ceiling: int) -> Row:
    """Tools cost no more than what is left for them."""
    return Row("tools", tool_terms(facts), "<=", ceiling)


def budget(facts: Facts, ceiling: int | None) -> Iterator[Row]:
    """What is spent stays within the budget."""
    if ceiling is not None:
        yield smaller(Row("budget", spend_terms(facts), "<=", ceiling))


def smaller(row: Row) -> Row:
    """The same row divided by what its coefficients share; the right side is rounded, all variables being whole."""
    by = gcd(*(coefficient for coefficient, _ in row.terms)) if row.terms else 1
    if by <= 1 or not isinstance(row.right, int):
        return row
    right = row.right // by if row.sense == "<=" else -(-row.right // by)
    return Row(row.name, tuple((coefficient // by, name) for coefficient, name in row.terms), row.sense, right)
