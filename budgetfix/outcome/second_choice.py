"""What to take where the shop has not got a product: what the best plan without it buys in its place, and its price."""

from __future__ import annotations

from collections.abc import Iterable

from budgetfix.base.money import write_money
from budgetfix.catalog.models import Product
from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.options import ERRAND
from budgetfix.optimize.ceilings import Ceiling
from budgetfix.optimize.problem import Plan
from budgetfix.optimize.recount import charged, marks_of
from budgetfix.outcome.take_along import sort_of
from budgetfix.remedies.candidate import Candidate

SHORT_LABEL = 24
"""Labels up to this long stand beside a name."""


def second_choice(base: Ground, framed: Framed, plan: Plan, price: Ceiling) -> str:
    """In words; empty where that was not worked out.

    For example "Rug 200 x 300, 149.00, with Non-slip pad, 34.00: 39 points less"; where no other of its sort is bought,
    "instead: Turn the rug and add a pad (12.00): 42 points less" or "nothing in its place: 902 points less".
    """
    if price.nothing:
        return "nothing: no plan keeps your wishes without it"
    if price.without is None:
        return ""
    then = price.without
    loss = _loss(plan, then, base.brief.hazards_first)
    if marks_of(framed.problem, then.chosen) > marks_of(framed.problem, plan.chosen):
        loss += ", more left in the walls"
    mine = [framed.candidates[id] for id in plan.chosen if not id.startswith(ERRAND)]
    users = [one for one in mine if price.id in dict(one.uses)]
    fresh = [framed.candidates[id] for id in then.chosen if id not in plan.chosen and not id.startswith(ERRAND)]
    instead = [one for one in fresh if any(_same_place(one, user) for user in users)]
    goods = _goods(base, plan, then, instead)
    products = {one.product: one for one in base.catalog.products}
    of_sort = [id for id in goods if _alike(products[id], products[price.id])]
    money = {one.id: charged(one, goods[one.id]) for one in framed.problem.products if one.id in goods}

    def sum_of(id: str) -> str:
        return write_money(money[id], base.brief.currency)

    if of_sort:
        order = [*of_sort, *(id for id in goods if id not in of_sort)]
        words = [f"{_called(products[id])}, {_packs(goods[id])}{sum_of(id)}" for id in order]
        return f"{', with '.join(words)}: {loss}"
    if not instead:
        return f"nothing in its place: {loss}"
    cost = f" ({write_money(sum(money.values()), base.brief.currency)})" if goods else ""
    return f"instead: {', '.join(one.name for one in instead)}{cost}: {loss}"


def _same_place(one: Candidate, user: Candidate) -> bool:
    """True where one stands for the other: of one remedy, of one group, or a change to the same thing."""
    for name, other in ((one.key, user.key), (one.pick_one, user.pick_one)):
        if name and name == other:
            return True
    return bool(one.subject) and (one.subject, one.room) == (user.subject, user.room)


def _goods(base: Ground, plan: Plan, then: Plan, instead: Iterable[Candidate]) -> dict[str, int]:
    """Packs of what is bought for them beyond what the plan in hand buys, by product in the catalogue's order."""
    before, after = dict(plan.packs), dict(then.packs)
    wanted = {id for one in instead for id, _ in one.uses}
    return {
        one.product: after[one.product]
        for one in base.catalog.products
        if one.product in wanted and after.get(one.product, 0) > before.get(one.product, 0)
    }


def _alike(one: Product, other: Product) -> bool:
    """True where both are of one sort, as the catalogue or their names tell."""
    return sort_of(one) == sort_of(other) if sort_of(one) else one.name == other.name


def _packs(count: int) -> str:
    return f"{count} packs, " if count > 1 else ""


def _called(product: Product) -> str:
    """Its name, with a label that is short and says more."""
    name = product.name or product.product
    label = product.label if len(product.label) <= SHORT_LABEL and product.label not in name else ""
    return f"{name}, {label}" if label else name


def _loss(plan: Plan, then: Plan, hazards_first: bool) -> str:
    """How much less the best plan without it does."""
    hazards, points = then.hazards - plan.hazards, then.points - plan.points
    if not hazards_first:
        hazards, points = 0, hazards + points
    words = [f"{_some(hazards, 'hazard point')} stay"] if hazards > 0 else []
    if points:
        words.append(f"{_some(abs(points), 'point')} {'less' if points > 0 else 'more'}")
    return ", ".join(words) or "as many points"


def _some(count: int, word: str) -> str:
    return f"{count:,} {word}{'' if count == 1 else 's'}"
