"""Goods that done work has used up though nobody said that they were bought: as many whole packs count as bought.

What was on hand before, and what lines say that were ticked, is used first; only what is short then was bought.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from budgetfix.base.numbers import half_up
from budgetfix.catalog.models import Catalog
from budgetfix.outcome.so_far import LineBack
from budgetfix.pipeline.rest_done import Done


def with_used(lines: Iterable[LineBack], done: Done, catalog: Catalog) -> list[LineBack]:
    """The lines, those of goods that must have been bought ticked; cut to the packs that done work has used of them."""
    found = list(lines)
    short = _short(found, done, catalog)
    for at, one in enumerate(found):
        product = one.planned.line.product
        if _unsaid(one) and product is not None and not done.ids.isdisjoint(one.planned.users):
            packs = _packs(one, short.get(product, Fraction(0)))
            if packs:
                found[at] = _bought(one, packs)
                short[product] -= found[at].planned.units
    return found


def _unsaid(one: LineBack) -> bool:
    return one.state is None and one.paid_minor is None


def _short(lines: Iterable[LineBack], done: Done, catalog: Catalog) -> dict[str, Fraction]:
    """Units that done work has used above what was there and what somebody says was bought, by product."""
    short = {one.product: -one.on_hand for one in catalog.products}
    for planned in done.done:
        for product, units in planned.candidate.goods:
            short[product] = short.get(product, Fraction(0)) + units
    for one in lines:
        product = one.planned.line.product
        if product is not None and (one.state == "bought" or (one.state is None and one.paid_minor is not None)):
            short[product] = short.get(product, Fraction(0)) - one.planned.units
    return short


def _packs(one: LineBack, short: Fraction) -> int:
    """Whole packs of a line that cover what is short, as far as the line goes."""
    packs = one.planned.line.packs or 0
    if short <= 0 or not packs or not one.planned.units:
        return 0
    return min(packs, math.ceil(short * packs / one.planned.units))


def _bought(one: LineBack, packs: int) -> LineBack:
    """The line with so many packs of it, bought as planned; the others are planned anew."""
    planned, line = one.planned, one.planned.line
    every = line.packs or 0
    if packs == every:
        return replace(one, state="bought", paid_minor=line.line_minor)
    minor = half_up(Fraction(line.line_minor * packs, every))
    part = replace(
        planned,
        line=replace(line, packs=packs, line_minor=minor),
        units=planned.units * packs / every,
        whole_minor=line.line_minor if planned.whole_minor is None else planned.whole_minor,
    )
    return LineBack(part, "bought", minor)
