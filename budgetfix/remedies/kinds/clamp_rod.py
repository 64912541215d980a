"""Clamp a rod into a bare window, with cloth on it: no drill, no hole, nothing left behind.

Fits: a bare window, or one that glares on a screen, whose frame width lies within a clamp rod's range, so that it
holds between the two reveals; panels in the catalogue that fill it (sheers too: it is for looks and for light) and
reach the sill; what is longer is cut and hemmed with iron-on tape. Where the rod says what it carries, the text tells.
Cloth in the reveal is dressing as a blind is: it is entered as a blind, for the rod rules speak of rods on the wall.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.products import called, cheapest, of_sort
from budgetfix.remedies.rods import CLEAR_MM, bare_windows, panels_for
from budgetfix.room.items import Opening

BELOW_HEAD_MM = 40.0
"""How far under the head of the frame the rod is clamped (common practice)."""
Goods = tuple[tuple[str, Fraction], ...]


def _fit(site: Site) -> tuple[Candidate, ...]:
    found: list[Candidate] = []
    for window in bare_windows(site):
        found += best(KIND, site, _offers(site, window), 2)
    return tuple(found)


def _offers(site: Site, window: Opening) -> Iterator[Offer]:
    for rod in of_sort(site, "clamp rod"):
        if not (rod.width or 0.0) - 0.1 <= window.width <= (rod.width_to or rod.width or 0.0) + 0.1:
            continue
        for panels in of_sort(site, "panels"):
            goods = _cloth(site, window, panels)
            if goods is not None:
                yield _offer(site, window, rod, panels, goods)


def _cloth(site: Site, window: Opening, panels: Product) -> Goods | None:
    """Panels, with hem tape where they are longer than the glass; None where they are too thin or too short."""
    count, drop = panels_for(panels, window.width), window.top - window.bottom - BELOW_HEAD_MM - CLEAR_MM
    if count is None or (panels.drop or 0.0) < drop:
        return None
    use = ((panels.product, Fraction(count, 2)),)
    tape = cheapest(site, "hem tape")
    if (panels.drop or 0.0) <= drop + CLEAR_MM:
        return use
    return None if tape is None else (*use, (tape.product, Fraction(1)))


def _offer(site: Site, window: Opening, rod: Product, panels: Product, goods: Goods) -> Offer:
    height, hem = window.top - BELOW_HEAD_MM, window.bottom + CLEAR_MM
    carries = f" (it carries {rod.carries:g} kg: weigh the cloth)" if rod.carries is not None else ""
    cut = "cut and hem the cloth, " if len(goods) > 1 else ""
    text = (
        f"Wipe the reveals of the {window.name}, clamp the rod between them {site.words(height)} above the floor, from "
        f"{site.words(window.from_left)} to {site.words(window.from_left + window.width)} from the left corner of wall "
        f"{window.wall}, turn it tight{carries}; {cut}hang the panels, hem {site.words(hem)} above the floor"
    )
    name = f"{called(rod)} with {called(panels)} ({window.name})"
    variant = f"{rod.product}~{panels.product}"
    return Offer(
        name, (set_on("openings", window.name, blind=True),), text, variant, ((rod.product, Fraction(1)), *goods),
        wall=window.wall, subject=window.name, accepts=f"any clamp rod that reaches {site.words(window.width)}",
    )  # fmt: skip


KIND = Kind(
    "clamp-rod", "Clamp a rod with cloth into a window", ("window-bare", "screen-glare"), (15, 25, 40), 9, _fit,
    bought=True, whats=("clamp rod", "panels", "hem tape"), leaves="nothing",
    done_when="a pull at the hem moves nothing, and nobody looks in",
)  # fmt: skip
