"""Which of a remedy's products is the thing whose sizes it sets: told by the label, by real sizes, or by its sort."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from budgetfix.base.tape import MM_PER
from budgetfix.catalog.models import Product
from budgetfix.outcome.take_along import FURNITURE, RODS, sort_of
from budgetfix.room.items import Table

SIZES: dict[Table, tuple[tuple[str, ...], ...]] = {
    "rugs": (("width", "depth"),),
    "furniture": (("width", "depth", "height"),),
    "pictures": (("width", "height"),),
    "curtains": (("rod_width",), ("panel_width",)),
}
"""Sizes that one product has, by table."""
SORTS = {
    "rugs": ("rug",),
    "furniture": tuple(sort for sort in FURNITURE if sort != "rug"),
    "pictures": ("picture", "print"),
    "rod_width": RODS,
    "panel_width": ("panels",),
}
"""What a lone product must be, where neither its label nor its sizes tell."""
CLOSE_MM = 3.0
"""Labels are rounded to whole centimetres, eighths of an inch, or less."""

_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_SPAN = re.compile(r"(\d+(?:\.\d+)?)\s*(?:-|–|to)\s*(\d+(?:\.\d+)?)")
_UNIT = re.compile(r"\d\s*(mm|cm|in)\b|\b(mm|cm|in)\b")


def sized_by(used: Iterable[Product], table: Table, sizes: Mapping[str, float], unit: str) -> Product | None:
    """The one product that has these sizes (mm), by survey field; None where that is not clear.

    `unit`: of labels that name none.
    """
    if not sizes:
        return None
    products = tuple(used)
    holding = [one for one in products if all(_holds(one, name, size, unit) for name, size in sizes.items())]
    if len(holding) == 1:
        return holding[0]
    sorts = SORTS.get(next(iter(sizes)), SORTS.get(table, ()))
    lone = [one for one in products if sort_of(one) in sorts]
    return lone[0] if not holding and len(lone) == len(products) == 1 else None


def _holds(product: Product, name: str, size: float, unit: str) -> bool:
    """True where a product has a size, in its own fields or on its label; a rod extends between two."""
    own = [product.width, product.depth, product.height]
    if any(one is not None and abs(one - size) <= CLOSE_MM for one in own):
        return True
    if name == "rod_width" and product.width is not None and product.width_to is not None:
        return product.width <= size <= product.width_to
    found = _UNIT.search(product.label)
    by = float(MM_PER[(found[1] or found[2]) if found else unit])
    if name == "rod_width":
        return any(float(low) * by <= size <= float(high) * by for low, high in _SPAN.findall(product.label))
    return any(abs(float(number) * by - size) <= CLOSE_MM for number in _NUMBER.findall(product.label))
