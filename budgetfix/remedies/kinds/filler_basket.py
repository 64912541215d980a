"""Stand something right beside the bench: a basket as tall as the bench, or a plant taller than the screen's middle.

Fits: a basket in the catalogue within 6 in (150 mm) of the bench's height, which counts to its width; where the wall
beside the screen is flat, a plant or basket as high as the screen's middle. Free floor beside the bench is needed.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.products import called, of_sort
from budgetfix.remedies.screens import screen_and_bench
from budgetfix.room.items import Hung, Piece
from budgetfix.room.survey import Change

APART_MM = 20.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    found = screen_and_bench(site)
    return () if found is None else best(KIND, site, _offers(site, *found))


def _offers(site: Site, screen: Hung, bench: Piece) -> Iterator[Offer]:
    flat = site.finding is not None and site.finding.rule == "console-flank-flat"
    for product in of_sort(site, "basket", "plant"):
        wide, tall = product.width, product.height
        high_enough = tall is not None and tall >= screen.bottom + screen.height / 2
        as_high = tall is not None and abs(tall - bench.height) <= site.mm(6, 150)
        if wide is None or tall is None or not (high_enough if flat else as_high):
            continue
        low, high = bench.from_left, bench.from_left + bench.width
        if tall > screen.bottom:
            low, high = min(low, screen.from_left), max(high, screen.from_left + screen.width)
        places = (("left", low - wide - APART_MM), ("right", high + APART_MM))
        for side, at in places:
            offer = _beside(site, bench, product, side, at)
            if offer is not None:
                yield offer


def _beside(site: Site, bench: Piece, product: Product, side: str, at: float) -> Offer | None:
    wide = product.width or 0.0
    if at < 0 or at + wide > site.lines[bench.wall].length:
        return None
    piece = Piece(
        name=f"new {called(product)}",
        room=site.room,
        what=product.what,
        wall=bench.wall,
        from_left=at,
        width=wide,
        depth=product.depth or wide,
        height=product.height or bench.height,
        surface=False,
    )
    change = Change("furniture", piece.name, add=piece)
    if not site.fits((change,)):
        return None
    text = (
        f"Stand it right beside the {bench.name}, on its {side}: left edge {site.words(at)} from the left corner of "
        f"wall {bench.wall}"
    )
    name = f"{called(product)} on the {side} of the {bench.name}"
    return Offer(name, (change,), text, f"{product.product}~{side}", ((product.product, Fraction(1)),))


KIND = Kind(
    "filler-basket",
    "Stand a basket or a plant beside the bench",
    ("console-too-narrow", "console-flank-flat"),
    (5, 10, 20),
    12,
    _fit,
    bought=True,
    whats=("basket", "plant"),
    done_when="bench and screen do not stand alone on the wall",
)
