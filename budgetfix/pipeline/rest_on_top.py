"""Delivery and tax of what was ordered: which goods they came with, and what of them is paid.

They are paid once anything of their order was bought, as planned or as typed. Where they are typed and nothing of the
order is said to have been bought, the order stands all the same: what is planned next at that shop comes with it, and
its delivery (its tax, where that was typed) is not asked for again until goods of that shop are bought or given back;
what is ordered after that is an order of its own.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction

from budgetfix.catalog.bill import tax_minor
from budgetfix.catalog.models import Catalog, Shop
from budgetfix.outcome.so_far import LineBack, PlannedLine

ON_TOP = ("delivery", "tax")
HAD = ("bought", "returned")
"""What was ordered, and so delivered."""


def cut(one: LineBack, minor: int) -> LineBack:
    """The line cut to the part of it that counts, planned and paid."""
    planned = one.planned
    line = replace(planned.line, line_minor=minor)
    return replace(one, planned=replace(planned, line=line, whole_minor=_whole_minor(planned)), paid_minor=minor)


def _whole_minor(planned: PlannedLine) -> int:
    return planned.line.line_minor if planned.whole_minor is None else planned.whole_minor


def on_top(one: LineBack, lines: Sequence[LineBack], catalog: Catalog) -> LineBack:
    """Delivery and tax of an order, as typed, else as far as anything of it was bought.

    What is paid stays with those goods of its order of which something is said; the others are ordered anew.
    """
    if one.planned.line.kind not in ON_TOP:
        return one
    order = _order(one, lines)
    paid = one if one.paid_minor is not None else _paid(one, order, catalog)
    said = tuple(line.planned.id for line in order if line.state is not None)
    return one if paid.paid_minor is None else replace(paid, planned=replace(paid.planned, goods=said))


def _paid(one: LineBack, order: Sequence[LineBack], catalog: Catalog) -> LineBack:
    bought = [line for line in order if line.state == "bought"]
    every = len(bought) == len(order) and all(line.planned.whole_minor is None for line in (*bought, one))
    had = one.planned.line.kind == "delivery" and any(line.state in HAD for line in order)
    if one.state == "bought" or had or (bought and every):
        return replace(one, paid_minor=one.planned.line.line_minor)
    if one.planned.line.kind == "delivery" or not bought:
        return one
    return cut(one, _tax(one, bought, catalog))


def _order(one: LineBack, lines: Iterable[LineBack]) -> list[LineBack]:
    """The goods that an on-top line comes with."""
    return [line for line in lines if line.planned.id in one.planned.goods]


def _tax(one: LineBack, bought: Iterable[LineBack], catalog: Catalog) -> int:
    """The rate on what was bought, half up, never more than the whole order's; as it stands for an unknown shop."""
    goods = sum((line.planned.line.packs or 0) * (line.planned.line.unit_price_minor or 0) for line in bought)
    rate = next((shop.tax for shop in catalog.shops if shop.shop == one.planned.line.shop), None)
    return one.planned.line.line_minor if rate is None else min(_whole_minor(one.planned), tax_minor(goods, rate))


def open_orders(lines: Sequence[LineBack]) -> tuple[tuple[str, str], ...]:
    """(delivery or tax, shop) of what is paid of an order of which nothing was had, nor of the shop since."""
    found = set()
    for at, one in enumerate(lines):
        line = one.planned.line
        if line.kind in ON_TOP and one.paid_minor is not None and line.shop is not None:
            since = [later for later in lines[at:] if later.planned.line.kind == "product"]
            goods = [*_order(one, lines), *(later for later in since if later.planned.line.shop == line.shop)]
            if not any(each.state in HAD for each in goods):
                found.add((line.kind, line.shop))
    return tuple(sorted(found))


def with_orders(catalog: Catalog, orders: Iterable[tuple[str, str]]) -> Catalog:
    """The catalogue in which the shops ask no more for what is paid of open orders."""
    known = frozenset(orders)
    if not known:
        return catalog
    return Catalog(**{**dict(catalog), "shops": tuple(_shop(one, known) for one in catalog.shops)})


def _shop(one: Shop, orders: frozenset[tuple[str, str]]) -> Shop:
    delivery = 0 if ("delivery", one.shop) in orders else one.delivery_minor
    tax = Fraction(0) if ("tax", one.shop) in orders else one.tax
    return Shop(**{**dict(one), "delivery_minor": delivery, "tax": tax})
