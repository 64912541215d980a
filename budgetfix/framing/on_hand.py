"""Who may have what is on hand: goods that are there need no new order, as far as they go round."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from budgetfix.catalog.models import Catalog
from budgetfix.remedies.candidate import Candidate

Pairs = tuple[tuple[str, str], ...]
"""(candidate, product)."""


def covered(
    candidates: Iterable[Candidate], catalog: Catalog, bought: frozenset[tuple[str, str]], chosen: frozenset[str]
) -> Pairs:
    """(candidate, product) of all that may have its goods from what is on hand, whatever else is chosen with them.

    First come those that the goods were bought for, then those that the earlier plan chose, then the others, each by
    id. Of a pick-one group at most one is chosen, so its members share. Whoever would need more than is left waits for
    an order.
    """
    ones = sorted(candidates, key=lambda one: one.id)
    found: list[tuple[str, str]] = []
    for product in sorted(catalog.products, key=lambda one: one.product):
        name = product.product
        users = [(one, dict(one.goods)[name]) for one in ones if dict(one.goods).get(name, Fraction(0)) > 0]
        users.sort(key=lambda pair: ((pair[0].id, name) not in bought, pair[0].id not in chosen, pair[0].id))
        found += [(one.id, name) for one in _served(users, product.on_hand)]
    return tuple(sorted(found))


def _served(users: Iterable[tuple[Candidate, Fraction]], on_hand: Fraction) -> list[Candidate]:
    """Those that can have their share, in this order; a group takes what its largest share is."""
    found, taken, left = [], dict[str, Fraction](), on_hand
    for one, units in users:
        before = taken.get(one.pick_one, Fraction(0)) if one.pick_one else Fraction(0)
        more = max(Fraction(0), units - before)
        if more <= left:
            found.append(one)
            left -= more
            taken |= {one.pick_one: before + more} if one.pick_one else {}
    return found
