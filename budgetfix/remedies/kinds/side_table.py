"""Stand a side table beside a seat that has none: one that is there but serves nobody, or a bought one.

Fits: free floor beside an arm, within reach (a gap of 2 in, 50 mm).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.moves import edges, inside
from budgetfix.remedies.products import called, of_sort
from budgetfix.remedies.rugs import seats_of
from budgetfix.room.items import Piece
from budgetfix.room.places import extent
from budgetfix.room.survey import Change, moved

GAP_MM = 50.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    offers: list[Offer] = []
    owned = [one for one in site.survey.furniture if one.room == site.room and one.what == "side table"]
    for seat in seats_of(site):
        for table in owned:
            for spot in list(_beside(site, seat, table))[:1]:
                change = set_on(
                    "furniture", table.name, wall=spot.wall, from_left=spot.from_left, gap=spot.gap, faces=""
                )
                text = f"Move the {table.name} beside the {seat.name}: {edges(site, spot)}"
                offers.append(
                    Offer(f"Move the {table.name} to the {seat.name}", (change,), text, f"{table.name}~{seat.name}")
                )
        for product in of_sort(site, "side table"):
            offers += list(_bought(site, seat, product.product, called(product)))[:1]
    return tuple(candidate(KIND, site, offer) for offer in offers[:6])


def _bought(site: Site, seat: Piece, product: str, name: str) -> Iterator[Offer]:
    sized = site.catalog.product(product)
    table = Piece(
        name=f"new {product} by the {seat.name}", room=site.room, what="side table", wall=seat.wall,
        width=sized.width or 400.0, depth=sized.depth or sized.width or 400.0, height=sized.height or 550.0, round=sized.round,
    )  # fmt: skip
    for spot in _beside(site, seat, table):
        text = f"Stand it beside the {seat.name}: {edges(site, spot)}"
        change = Change("furniture", spot.name, add=spot)
        yield Offer(f"{name} by the {seat.name}", (change,), text, f"{product}~{seat.name}", ((product, Fraction(1)),))


def _beside(site: Site, seat: Piece, table: Piece) -> Iterator[Piece]:
    """Free places at both ends of a seat along its wall, and before and behind it where it stands turned."""
    along, off = extent(seat, site.lines)
    wide, deep = table.width, table.depth
    inner = seat.gap + max(0.0, (off - deep) / 2)
    places = [
        (seat.from_left - wide - GAP_MM, inner),
        (seat.from_left + along + GAP_MM, inner),
    ]
    if seat.faces not in ("", seat.wall):
        places += [(seat.from_left + max(0.0, (along - wide) / 2), seat.gap - deep - GAP_MM),
                   (seat.from_left + max(0.0, (along - wide) / 2), seat.gap + off + GAP_MM)]  # fmt: skip
    for at, gap in places:
        if at < 0 or gap < 0 or at + wide > site.lines[seat.wall].length:
            continue
        spot = moved(table, wall=seat.wall, from_left=site.tape(at), gap=site.tape(gap), faces="")
        known = table.name in site.survey.named
        change = (
            set_on("furniture", table.name, wall=spot.wall, from_left=spot.from_left, gap=spot.gap, faces="")
            if known
            else Change("furniture", spot.name, add=spot)
        )
        if inside(site, spot) and site.fits((change,)):
            yield spot


KIND = Kind(
    "side-table", "Stand a side table by a seat", ("seat-without-table",), (10, 20, 40), 8, _fit, bought=True,
    whats=("side table",), done_when="a cup can be put down from the seat",
)  # fmt: skip
