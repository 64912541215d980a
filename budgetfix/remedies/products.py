"""Products of one sort that a kind may use at a site."""

from __future__ import annotations

from budgetfix.catalog.models import Product
from budgetfix.catalog.stay import away
from budgetfix.remedies.kind import Site


def of_sort(site: Site, *whats: str) -> tuple[Product, ...]:
    """Products of these sorts, by id; only those that the site allows, or that are there."""
    found = [product for what in whats for product in site.catalog.of(what)]
    allowed = site.products
    if allowed is None:
        found = [one for one in found if not away(one, site.catalog.stay)]
    return tuple(
        sorted((one for one in found if allowed is None or one.product in allowed), key=lambda one: one.product)
    )


def cheapest(site: Site, *whats: str) -> Product | None:
    """The product of these sorts with the lowest price, ties by id."""
    return min(of_sort(site, *whats), key=lambda one: (one.price_minor, one.product), default=None)


READING_LM = 450.0
"""A lamp to read by gives this much (seat-dim-for-reading)."""


def bulb_for(site: Site, fitting: Product) -> Product | None:
    """The cheapest bulb to read by for a fitting that has none; None where it has its own, or none is sold."""
    bulbs = [one for one in of_sort(site, "lamp") if (one.lumens or 0.0) >= READING_LM]
    if fitting.lumens is not None:
        return None
    return min(bulbs, key=lambda one: (one.price_minor / one.pack, one.product), default=None)


def called(product: Product) -> str:
    """What to call it."""
    return product.name or product.product
