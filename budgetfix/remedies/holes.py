"""Old holes: where they show, and what filling and painting them takes."""

from __future__ import annotations

import math
from collections.abc import Iterable
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.kind import Site
from budgetfix.remedies.products import cheapest
from budgetfix.room.items import Hung

PINS_A_PLUG = 4
"""Pin holes that take as much filler as one plug hole (common practice)."""
PLUGS_A_TUB, PLUGS_A_TIN = 25, 25
"""Plug holes that a small tub of filler fills, and a small tin touches up (common practice)."""
PINS = ("nail", "strips")
"""What leaves a pin hole; all else is taken for a plug hole."""
SQ_FT_A_GALLON, GALLON_L, QUARTS = 350.0, 3.785411784, 4
"""Coverage of one coat (published value P7: about 350 sq ft a gallon; the sources span 250 to 450, P1 to P6)."""
SQ_FT_MM2 = 304.8**2
LITRES = {"l": 1.0, "litre": 1.0, "liter": 1.0, "gal": GALLON_L, "gallon": GALLON_L, "qt": GALLON_L / QUARTS,
          "quart": GALLON_L / QUARTS}  # fmt: skip
Goods = tuple[tuple[str, Fraction], ...]


def patches(site: Site) -> tuple[Hung, ...]:
    """The patches of old holes at walls of the room, by name; only the one that a user's remedy names."""
    found = [one for one in site.survey.pictures if one.room == site.room and one.what == "old holes" and one.things]
    placed = sorted((one for one in found if one.wall in site.lines), key=lambda one: one.name)
    named = [one for one in placed if one.name == site.subject]
    return tuple(named or placed)


def counted(holes: Iterable[Hung]) -> tuple[int, int]:
    """(plug holes, pin holes) of these patches."""
    all_of = tuple(holes)
    pins = sum(one.things for one in all_of if one.fixing in PINS)
    return sum(one.things for one in all_of) - pins, pins


def repair(site: Site, plugs: int = 0, pins: int = 0) -> Goods:
    """Filler and paint for so many old holes, as shares of a tub and a tin; what is not sold is left out."""
    holes = plugs + Fraction(pins, PINS_A_PLUG)
    goods = ((cheapest(site, "filler"), PLUGS_A_TUB), (cheapest(site, "paint"), PLUGS_A_TIN))
    return tuple((product.product, holes / enough) for product, enough in goods if product is not None and holes)


def litres(area_mm2: float, coats: int = 1) -> float:
    """Paint for an area, openings taken solid (published value P3), at 350 sq ft a gallon and coat (P7)."""
    return area_mm2 / SQ_FT_MM2 / SQ_FT_A_GALLON * GALLON_L * coats


def paint_for(product: Product, area_mm2: float, coats: int) -> Fraction | None:
    """Units of a paint that is sold by volume, a hundredth of its unit up; None where its unit is no volume."""
    each = LITRES.get(product.unit.lower())
    return None if each is None else Fraction(math.ceil(litres(area_mm2, coats) / each * 100 - 1e-6), 100)
