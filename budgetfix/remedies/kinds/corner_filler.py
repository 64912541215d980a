"""Stand a plant or a basket in the empty corners of a large room.

Fits: corners that the rule finds empty; a plant or basket in the catalogue, one for each corner that needs it, 6 in
(150 mm) off both walls, on free floor and before no door.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.moves import edges, inside
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Piece
from budgetfix.room.survey import Change

OFF_IN, OFF_MM = 6.0, 150.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    return best(KIND, site, _offers(site), 2)


def _offers(site: Site) -> Iterator[Offer]:
    for product in of_sort(site, "plant", "basket"):
        things = _needed(site, list(_in_corners(site, product)))
        changes = tuple(_change(one) for one in things)
        if not changes or site.severity(changes) >= site.severity(()):
            continue
        count = f"{len(things)} of " if len(things) > 1 else ""
        where = "; ".join(edges(site, one) for one in things)
        use = ((product.product, Fraction(len(things))),)
        name = f"{count}{called(product)} in the empty {'corners' if len(things) > 1 else 'corner'}"
        yield Offer(name, changes, f"Stand it in the corner: {where}", product.product, use)


def _in_corners(site: Site, product: Product) -> Iterator[Piece]:
    wide, off = product.width or 0.0, site.mm(OFF_IN, OFF_MM)
    for letter in sorted(site.lines) if wide else ():
        piece = Piece(
            name=f"new {called(product)} at {letter}", room=site.room, what=product.what, wall=letter,
            from_left=site.tape(off), gap=site.tape(off), width=wide, depth=product.depth or wide,
            height=product.height or 500.0, surface=False,
        )  # fmt: skip
        if inside(site, piece) and site.fits((_change(piece),)):
            yield piece


def _needed(site: Site, things: list[Piece]) -> list[Piece]:
    """Without those that change nothing."""
    kept = list(things)
    for one in things:
        fewer = [each for each in kept if each is not one]
        if site.severity([_change(each) for each in fewer]) <= site.severity([_change(each) for each in kept]):
            kept = fewer
    return kept


def _change(thing: Piece) -> Change:
    return Change("furniture", thing.name, add=thing)


KIND = Kind(
    "corner-filler", "Stand a plant in an empty corner", ("floor-left-empty",), (5, 10, 20), 12, _fit, bought=True,
    whats=("plant", "basket"), leaves="nothing", done_when="no corner in the picture is bare",
)  # fmt: skip
