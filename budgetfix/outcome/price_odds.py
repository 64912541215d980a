"""What the chosen lines may come to, where prices have a range: the least, the most, and how often the money covers it.

Prices are drawn like minutes, under one common factor (`draws`): what makes one shop dear makes others dear. Packs stay
as planned; mark-up, tax, delivery and its threshold follow the prices that are drawn, to the fraction of a minor unit.
When money comes by date, all of it counts as if it were there.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from budgetfix.catalog.models import Product, Shop
from budgetfix.framing.frame import Framed, Ground
from budgetfix.optimize.problem import Plan
from budgetfix.outcome.draws import SEED_PRICES, drawn
from budgetfix.outcome.odds import MoneyOdds, PriceRange

if TYPE_CHECKING:
    from budgetfix.outcome.draws import Figures

CENT = 0.5
"""Minor units by which a sum may be over for its fractions alone."""


def price_odds(base: Ground, framed: Framed, plan: Plan) -> MoneyOdds | None:
    """What is told of the prices of a plan; None where none of its lines has a range."""
    found = _Lines.of(base, framed, plan)
    if not found.ranges:
        return None
    import numpy as np

    rows = [(float(one.low_minor), float(one.likely_minor), float(one.high_minor)) for one in found.ranges]
    planned, low, high = (
        round(float(found.more(np.array([[float(figure)] for figure in figures]))[0]))
        for figures in (
            [one.planned_minor for one in found.ranges],
            [one.low_minor for one in found.ranges],
            [one.high_minor for one in found.ranges],
        )
    )
    brief = base.brief
    spent = plan.spent_minor + brief.fixed_minor
    covered = None
    if brief.budget_minor is not None:
        sums = found.more(drawn(rows, SEED_PRICES)) - planned + spent
        covered = int((sums <= brief.budget_minor + CENT).sum())
    return MoneyOdds(
        spent + low - planned, spent + high - planned, high - planned, brief.held_back_minor(), covered, found.ranges
    )


@dataclass(frozen=True)
class _Lines:
    """The lines of a plan with a range: goods first, then remedies; and the goods that share their shops."""

    base: Ground
    packs: dict[str, int]
    goods: tuple[Product, ...]
    ranges: tuple[PriceRange, ...]

    @classmethod
    def of(cls, base: Ground, framed: Framed, plan: Plan) -> _Lines:
        """Goods that are bought, and chosen remedies with a cost, by id."""
        packs = dict(plan.packs)
        goods = tuple(sorted((one for one in base.catalog.products if packs.get(one.product)), key=lambda p: p.product))
        ranges = [_goods(one, packs[one.product]) for one in goods if one.price_low_minor is not None]
        chosen = {id for id in plan.chosen if id in framed.candidates and framed.candidates[id].cost_minor}
        for remedy in sorted(base.catalog.remedies, key=lambda one: one.remedy):
            three = (remedy.cost_low_minor, remedy.cost_likely_minor, remedy.cost_high_minor)
            if remedy.remedy in chosen and remedy.cost_low_minor is not None:
                low, likely, high = (figure or 0 for figure in three)
                ranges.append(PriceRange(remedy.remedy, remedy.name, 0, low, likely, high, remedy.cost_minor))
        return cls(base, packs, goods, tuple(ranges))

    def more(self, prices: Figures) -> Figures:
        """All goods with a shop's tax and delivery, and the remedies with a range, at these prices: a row a range."""
        import numpy as np

        row = {one.id: at for at, one in enumerate(self.ranges) if one.packs}
        total = np.zeros(prices.shape[1])
        for at, one in enumerate(self.ranges):
            total += 0 if one.packs else prices[at]
        shops = {shop.shop: shop for shop in self.base.catalog.shops}
        by_shop: dict[str, Figures] = {}
        for product in self.goods:
            each = prices[row[product.product]] if product.product in row else float(product.price_minor)
            goods = self.packs[product.product] * each + np.zeros(prices.shape[1])
            shop = shops.get(product.shop or "")
            total += goods * (1 + float(shop.markup)) if shop is not None else goods
            if shop is not None:
                by_shop[shop.shop] = by_shop.get(shop.shop, np.zeros(prices.shape[1])) + goods
        for name in sorted(by_shop):
            total += _on_top(shops[name], by_shop[name])
        return total


def _goods(product: Product, packs: int) -> PriceRange:
    three = (product.price_low_minor, product.price_likely_minor, product.price_high_minor)
    low, likely, high = (figure or 0 for figure in three)
    return PriceRange(product.product, product.name or product.product, packs, low, likely, high, product.price_minor)


def _on_top(shop: Shop, goods: Figures) -> Figures:
    """Tax and delivery of one order."""
    import numpy as np

    free = goods >= shop.free_over_minor if shop.free_over_minor is not None else np.zeros(goods.shape, dtype=bool)
    return goods * float(shop.tax) + np.where(free, 0.0, float(shop.delivery_minor))
