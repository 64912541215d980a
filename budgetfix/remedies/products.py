"""Products of one sort that a kind may use at a site."""

from __future__ import annotations

from budgetfix.catalog.models import Product
from budgetfix.remedies.kind import Site


def of_sort(site: Site, *whats: str) -> tuple[Product, ...]:
    """Products of these sorts, by id; only those that the site allows."""
    found = [product for what in whats for product in site.catalog.of(what)]
    allowed = site.products
    return tuple(
        sorted((one for one in found if allowed is None or one.product in allowed), key=lambda one: one.product)
    )


def cheapest(site: Site, *whats: str) -> Product | None:
    """The product of these sorts with the lowest price, ties by id."""
    return min(of_sort(site, *whats), key=lambda one: (one.price_minor, one.product), default=None)


def called(product: Product) -> str:
    """What to call it."""
    return product.name or product.product
