"""Buy a rug of the right size, with a pad, and lay it under the front of the main seat.

Fits: a rug in the catalogue whose long side is at least as long as the seat less 24 in (610 mm), which stays in the
room where it is laid: its middle on the seat's middle, or shifted so that it reaches another seat too. The cheapest
pad that reaches under 85 % of both its sides goes under it, a larger one cut to size. The sizes that do most are kept,
the cheaper first.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.moves import edges
from budgetfix.remedies.products import of_sort
from budgetfix.remedies.rugs import best_laid, pad_for, rug_fields, seat_of
from budgetfix.room.items import Rug
from budgetfix.room.survey import Change

SHORTER_MM = 610.0
TWO_PEOPLE_MM = 2450.0
"""Rugs longer than this take two people (8 ft, common practice)."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    seat = seat_of(site)
    if seat is None:
        return ()
    there = _old_rug(site)
    offers: list[Offer] = []
    for product in of_sort(site, "rug"):
        if product.width is None or product.depth is None:
            continue
        long, short = max(product.width, product.depth), min(product.width, product.depth)
        if long < seat.width - SHORTER_MM:
            continue
        blank = there or Rug(name="new rug", room=site.room, wall=seat.wall, depth=short)
        sized = Rug.model_validate({**dict(blank), "round": product.round})
        for number, laid in enumerate(best_laid(site, sized, long, short)):
            offers.append(_offer(site, product, there, laid, number))
    return best(KIND, site, offers)


def _old_rug(site: Site) -> Rug | None:
    """The rug that the site names, else the first of the seating group; None on a bare floor."""
    rugs = sorted(
        (rug for rug in site.survey.rugs if rug.room == site.room and not rug.under), key=lambda rug: rug.name
    )
    return next((rug for rug in rugs if rug.name == site.subject), rugs[0] if rugs else None)


def _offer(site: Site, product: Product, there: Rug | None, laid: Rug, number: int) -> Offer:
    pad = pad_for(site, laid)
    fields = {**rug_fields(laid), "round": product.round, "pad": pad is not None}
    if there is None:
        change = Change("rugs", laid.name, add=Rug.model_validate({**dict(laid), **fields}))
    else:
        change = set_on("rugs", there.name, **fields)
    uses = [(product.product, Fraction(1))] + ([(pad.product, Fraction(1))] if pad is not None else [])
    with_pad = " with a pad" if pad is not None else ""
    name = f"{product.name or product.product}{with_pad}, along the main seat"
    pad_first = "roll out the pad, " if pad is not None else ""
    text = f"Move the table off, {pad_first}lay the rug: {edges(site, laid)}; table back"
    return Offer(
        name,
        (change,),
        text,
        product.product + (f"~{number}" if number else ""),
        tuple(uses),
        accepts=f"{site.words(laid.width)} x {site.words(laid.depth)} or a little more",
        subject=laid.name,
        people=2 if max(laid.width, laid.depth) > TWO_PEOPLE_MM else 1,
    )


KIND = Kind(
    "lay-rug",
    "Lay a rug of the right size",
    ("floor-bare", "rug-misses-seats", "rug-shorter-than-sofa", "rug-across"),
    (25, 45, 75),
    7,
    _fit,
    people=2,
    hazards=("lifting",),
    bought=True,
    whats=("rug", "pad"),
    done_when="front feet of the seats stand on the rug and it lies flat",
)
