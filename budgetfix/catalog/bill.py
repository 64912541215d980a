"""Taking off the money of a chosen set: whole packs, tools, delivery, tax. Exact, and by its own path.

The chooser counts money in its program; this bill counts it again from the set, in fractions, for the outputs
and for the check that the two agree to the penny.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from budgetfix.base.numbers import half_up
from budgetfix.catalog.models import Catalog

MoneyKind = Literal["product", "tool", "hire", "remedy", "labour", "fixed", "delivery", "tax"]


@dataclass(frozen=True, slots=True)
class BillLine:
    """One line of money in minor units. `id`: the product, tool, remedy or shop that it belongs to."""

    kind: MoneyKind
    id: str
    shop: str | None
    packs: int | None
    unit_price_minor: int | None
    line_minor: int
    phase: int = 0
    """The phase of money in which it is paid, where money comes by date."""


def packs_needed(use: Fraction, on_hand: Fraction, pack: Fraction) -> int:
    """Whole packs after what is on hand: ceil((use - on_hand) / pack), 0 when enough is there."""
    return max(0, math.ceil((use - on_hand) / pack))


def tax_minor(goods_minor: int, tax: Fraction) -> int:
    """Tax on one shop's goods, half up (Kansas Statutes 79-3676: third decimal over 4 rounds up)."""
    return half_up(goods_minor * tax)


def bill(
    catalog: Catalog,
    costs: Iterable[tuple[str, int]],
    uses: Mapping[str, Fraction],
    bought_tools: Iterable[str],
    hired_tools: Iterable[tuple[str, int]],
    labour: Iterable[tuple[str, int]] = (),
    fixed: Iterable[tuple[str, int]] = (),
) -> tuple[BillLine, ...]:
    """Every line of money of a chosen set, in a fixed order.

    `costs`: (remedy id, cost without shared goods); `uses`: product id to units; `hired_tools`: (tool, sessions);
    `labour`: (remedy id, its paid minutes in money); `fixed`: (name, money spent whatever is chosen).
    """
    lines = goods_lines(catalog, packs_for(catalog, uses))
    lines += delivery_lines(catalog, lines)
    lines += tool_lines(catalog, bought_tools, hired_tools)
    lines += [BillLine("remedy", remedy, None, None, None, cost) for remedy, cost in sorted(costs) if cost]
    lines += [BillLine("labour", remedy, None, None, None, cost) for remedy, cost in sorted(labour) if cost]
    lines += [BillLine("fixed", name, None, None, None, cost) for name, cost in fixed]
    return tuple(lines)


def tool_lines(catalog: Catalog, bought: Iterable[str], hired: Iterable[tuple[str, int]]) -> list[BillLine]:
    """Tools that are bought, then tools that are hired for so many sessions."""
    tools, lines = {tool.tool: tool for tool in catalog.tools}, []
    for tool in sorted(bought):
        price = tools[tool].buy_minor or 0
        lines.append(BillLine("tool", tool, None, 1, price, price))
    for tool, sessions in sorted(hired):
        price = tools[tool].hire_minor or 0
        lines.append(BillLine("hire", tool, None, sessions, price, price * sessions))
    return lines


def marked_up(goods_minor: int, markup: Fraction) -> int:
    """One line of goods with its mark-up, half up."""
    return half_up(goods_minor * (1 + markup))


def packs_for(catalog: Catalog, uses: Mapping[str, Fraction]) -> dict[str, int]:
    """Packs of each product that is used, after what is on hand."""
    return {
        one.product: packs_needed(uses[one.product], one.on_hand, one.pack)
        for one in catalog.products
        if one.product in uses
    }


def goods_lines(catalog: Catalog, packs_of: Mapping[str, int]) -> list[BillLine]:
    """A line for each product of which packs are bought, shop by shop."""
    lines = []
    markups = {shop.shop: shop.markup for shop in catalog.shops}
    for product in sorted(catalog.products, key=lambda product: (product.shop or "", product.product)):
        packs = packs_of.get(product.product, 0)
        if packs:
            price = product.price_minor
            line = marked_up(packs * price, markups.get(product.shop or "", Fraction(0)))
            lines.append(BillLine("product", product.product, product.shop, packs, price, line))
    return lines


def delivery_lines(catalog: Catalog, goods: list[BillLine]) -> list[BillLine]:
    """Delivery and tax of one order a shop."""
    lines = []
    for shop in sorted(catalog.shops, key=lambda shop: shop.shop):
        bought = [(line.packs or 0) * (line.unit_price_minor or 0) for line in goods if line.shop == shop.shop]
        if not bought:
            continue
        free = shop.free_over_minor is not None and sum(bought) >= shop.free_over_minor
        if shop.delivery_minor:
            fee = 0 if free else shop.delivery_minor
            lines.append(BillLine("delivery", shop.shop, shop.shop, None, None, fee))
        if shop.tax:
            lines.append(BillLine("tax", shop.shop, shop.shop, None, None, tax_minor(sum(bought), shop.tax)))
    return lines


def total_minor(lines: Iterable[BillLine]) -> int:
    """The sum of all lines."""
    return sum(line.line_minor for line in lines)
