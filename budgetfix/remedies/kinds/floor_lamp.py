"""Stand a new floor lamp beside a seat, within its lead of a socket.

Fits: a floor lamp in the catalogue; a free place beside or behind a seat of the group from which the lead reaches a
socket (to a wall and along the walls, past no door, with 6 in, 150 mm, of slack) and does not cross the straight way
between two doors.
A lamp that is sold without its bulb takes the cheapest one in the catalogue that is bright enough to read by.
Where the other lamps of the room are of another white, a second candidate changes them too.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.lamps import SHADE_SHARE, by_seat, with_alike
from budgetfix.remedies.moves import edges
from budgetfix.remedies.products import bulb_for, called, of_sort
from budgetfix.remedies.rugs import seats_of
from budgetfix.room.items import Light, Piece
from budgetfix.room.survey import Change


def _fit(site: Site) -> tuple[Candidate, ...]:
    return best(KIND, site, (offer for seat in seats_of(site) for offer in _offers(site, seat)))


def _offers(site: Site, seat: Piece) -> Iterator[Offer]:
    for product in of_sort(site, "floor lamp"):
        bulb = bulb_for(site, product)
        places = by_seat(site, seat, _lamp(site, seat, product, bulb))
        free = (lamp for lamp in places if site.fits((Change("lights", lamp.name, add=lamp),)))
        for lamp in list(free)[:1]:
            text = f"Stand the lamp by the {seat.name}: {edges(site, lamp)}; plug it in at {lamp.socket}"
            uses = [(product.product, Fraction(1))]
            uses += [(bulb.product, Fraction(1))] if bulb is not None else []
            name, change = f"{called(product)} by the {seat.name}", Change("lights", lamp.name, add=lamp)
            offer = Offer(name, (change,), text, product.product, tuple(uses), subject=seat.name)
            yield from with_alike(KIND, site, offer, lamp.kelvin)


def _lamp(site: Site, seat: Piece, product: Product, bulb: Product | None) -> Light:
    lit, foot, name = bulb or product, product.width or 280.0, f"new {called(product)} by the {seat.name}"
    return Light(
        name=name,
        room=site.room,
        what="floor lamp",
        switch=name,
        lumens=lit.lumens or 806.0,
        kelvin=lit.kelvin or 2700.0,
        wall=seat.wall,
        width=foot,
        depth=product.depth or foot,
        bottom=(product.height or 1500.0) * SHADE_SHARE,
        lead=product.lead or 1500.0,
    )


KIND = Kind(
    "floor-lamp",
    "Stand a new floor lamp by a seat",
    ("seat-dim-for-reading", "one-light-only", "room-dim"),
    (10, 20, 40),
    12,
    _fit,
    hazards=("cord",),
    bought=True,
    whats=("floor lamp", "lamp"),
    done_when="the page is bright and no lead lies where you walk",
)
