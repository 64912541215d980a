"""Buy a coffee table of the right length, and stand it 16 in (400 mm) before the main seat.

Fits: a table in the catalogue of 0.45 to 0.70 of the sofa's length (round ones from 0.35) on free floor.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.moves import Floor, after, edges
from budgetfix.remedies.products import called, of_sort
from budgetfix.remedies.rugs import before, seat_of
from budgetfix.room.items import Piece
from budgetfix.room.survey import Change, Value


def _fit(site: Site) -> tuple[Candidate, ...]:
    seat = seat_of(site)
    if seat is None:
        return ()
    tables = [one for one in site.survey.furniture if one.room == site.room and one.what == "coffee table"]
    old = min(tables, key=lambda one: (one.name != site.subject, one.name), default=None)
    offers = []
    for product in of_sort(site, "coffee table"):
        share = (product.width or 0.0) / seat.width
        if product.depth is None or not (0.35 if product.round else 0.45) <= share <= 0.70:
            continue
        wide, deep, tall = product.width or 0.0, product.depth, product.height or 420.0
        spot = before(site, seat, site.mm(16, 400), (wide, deep))
        fields: dict[str, Value] = {**spot, "height": tall, "round": product.round, "faces": ""}
        if old is None:
            new = Piece.model_validate(
                {"name": "new coffee table", "room": site.room, "what": "coffee table", **fields}
            )
            change = Change("furniture", new.name, add=new)
            where: Floor = new
        else:
            change = set_on("furniture", old.name, **fields)
            where = after(site, change)
        if site.fits((change,)):
            use = ((product.product, Fraction(1)),)
            text = f"Stand it before the {seat.name}: {edges(site, where)}"
            name = f"{called(product)} before the {seat.name}"
            offers.append(Offer(name, (change,), text, product.product, use, subject=where.name))
    return best(KIND, site, offers, 3)


KIND = Kind(
    "new-coffee-table",
    "Stand a coffee table of the right length",
    ("table-off-length", "table-out-of-reach", "seat-without-table", "table-off-height"),
    (20, 35, 60),
    8,
    _fit,
    bought=True,
    whats=("coffee table",),
    done_when="a cup can be put down from every place on the sofa",
)
