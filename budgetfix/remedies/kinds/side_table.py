"""Buy a side table and stand it beside a seat that has none.

Fits: a side table in the catalogue and free floor beside an arm of the seat, 2 in (50 mm) away. For each seat of the
group the tables that do most are kept.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.moves import edges
from budgetfix.remedies.products import called, of_sort
from budgetfix.remedies.rugs import seats_of
from budgetfix.remedies.tables import beside, standing
from budgetfix.room.items import Piece


def _fit(site: Site) -> tuple[Candidate, ...]:
    return best(KIND, site, (offer for seat in seats_of(site) for offer in _offers(site, seat)))


def _offers(site: Site, seat: Piece) -> Iterator[Offer]:
    for product in of_sort(site, "side table"):
        table = Piece(
            name=f"new {called(product)} by the {seat.name}", room=site.room, what="side table", wall=seat.wall,
            width=product.width or 400.0, depth=product.depth or product.width or 400.0, height=product.height or 550.0,
            round=product.round,
        )  # fmt: skip
        for spot in list(beside(site, seat, table))[:1]:
            text = f"Stand it beside the {seat.name}: {edges(site, spot)}"
            use = ((product.product, Fraction(1)),)
            name = f"{called(product)} by the {seat.name}"
            yield Offer(name, (standing(site, spot),), text, product.product, use, subject=seat.name)


KIND = Kind(
    "side-table", "Stand a new side table by a seat", ("seat-without-table",), (10, 20, 40), 8, _fit, bought=True,
    whats=("side table",), done_when="a cup can be put down from the seat",
)  # fmt: skip
