"""Stock and hire: what a piece costs for the days of one job, and whether it is there on all of them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from budgetfix.base.days import day_words
from budgetfix.base.numbers import ceil_div
from budgetfix.brief.stay import Stay
from budgetfix.catalog.bill import packs_needed
from budgetfix.catalog.models import Catalog, Product


def staying(catalog: Catalog, stay: Stay | None) -> Catalog:
    """The catalog with the prices of this job: price x terms, for as long as the pieces stay. Once only.

    Errors: ValueError for a catalog whose prices are those of a job already.
    """
    if catalog.stay is not None:
        raise ValueError("these prices are those of a job already")
    if stay is None and not any(one.term_days for one in catalog.products):
        return catalog
    products = tuple(_priced(one, stay) for one in catalog.products)
    return Catalog(**{**dict(catalog), "products": products, "stay": stay})


def _priced(product: Product, stay: Stay | None) -> Product:
    if product.term_days is None:
        return product
    prices = ("price_minor", "price_low_minor", "price_likely_minor", "price_high_minor")
    times = terms(product, stay)
    given = {name: value for name in prices if (value := getattr(product, name)) is not None}
    return Product(**{**dict(product), **{name: value * times for name, value in given.items()}})


def paid_days(product: Product, stay: Stay | None) -> int:
    """The days that a price is for, the least charge counted in; 0 where the price is one for good."""
    return 0 if product.term_days is None else product.term_days * terms(product, stay)


def terms(product: Product, stay: Stay | None) -> int:
    """How often the price is charged: ceil(max(days of stay, least days) / days of a term), at least once."""
    if product.term_days is None:
        return 1
    days = max(0 if stay is None else stay.days, product.least_days or 0, 1)
    return ceil_div(days, product.term_days)


def away(product: Product, stay: Stay | None) -> str:
    """Why none of it can be had for the whole stay, in words; empty where it can."""
    if product.stock == 0:
        return product.elsewhere or "none is there"
    if stay is None:
        return ""
    if product.free_from is not None and product.free_from > stay.first:
        return f"not free before {day_words(product.free_from)}"
    if product.free_until is not None and product.free_until < stay.until:
        return f"free only until {day_words(product.free_until)}"
    return ""


def lent(catalog: Catalog, most: Mapping[str, int], elsewhere: Mapping[str, str]) -> Catalog:
    """The catalog as one job has it beside others: no more packs of a piece than `most` says.

    `elsewhere`: by product, where the others are, such as `stands in Elm Street until 4 July`.
    """
    products = tuple(_lent(one, most.get(one.product), elsewhere.get(one.product, "")) for one in catalog.products)
    return Catalog(**{**dict(catalog), "products": products})


def _lent(product: Product, most: int | None, elsewhere: str) -> Product:
    if most is None or product.stock is None or most >= product.stock:
        return product
    return Product(**{**dict(product), "stock": most, "elsewhere": elsewhere})


def most_packs(product: Product, stay: Stay | None) -> int | None:
    """Packs of it that this job can have; None where it is sold without limit."""
    return 0 if away(product, stay) else product.stock


def lacking(catalog: Catalog, uses: Iterable[tuple[str, Fraction]]) -> str:
    """Which goods of a remedy cannot be had, and why, in words; empty where all can."""
    words = [_lacks(catalog.product(id), units, catalog.stay) for id, units in uses]
    return "; ".join(word for word in words if word)


def _lacks(product: Product, units: Fraction, stay: Stay | None) -> str:
    packs, name = packs_needed(units, product.on_hand, product.pack), product.name or product.product
    why = away(product, stay)
    if packs and why:
        return f"{name}: {why}"
    if product.stock is not None and packs > product.stock:
        there = f"{name}: it takes {packs}, and {product.stock} {'is' if product.stock == 1 else 'are'} there"
        return f"{there}; the rest {product.elsewhere}" if product.elsewhere else there
    return ""
