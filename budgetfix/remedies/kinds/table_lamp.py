"""Stand a new table lamp on a table, a nightstand or a low piece, within its lead of a socket.

Fits: a table lamp in the catalogue; a piece of 16 to 36 in (400 to 900 mm) with room on top (not one that bears a
screen or a lamp already) from which the lead reaches a socket and does not cross the straight way between two doors.
For a bed: one on each nightstand that has none.
Where the other lamps of the room are of another white, a second candidate changes them too.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.lamps import on_piece, with_alike
from budgetfix.remedies.products import bulb_for, called, of_sort
from budgetfix.room.items import Light, Piece
from budgetfix.room.survey import Change

ON = (
    "side table",
    "nightstand",
    "desk",
    "sideboard",
    "dresser",
    "chest of drawers",
    "console table",
    "cabinet",
    "shelf unit",
)
LOWEST_MM, HIGHEST_MM = 400.0, 900.0
SHADE_SHARE = 0.55
"""Lower edge of a table lamp's shade over its height (common practice)."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    tops = [one for one in site.survey.furniture if one.room == site.room and _bears(site, one)]
    if site.finding is not None and site.finding.rule == "bedroom-light-not-at-bed":
        tops = [one for one in tops if one.what == "nightstand"]
        return best(KIND, site, _at_bed(site, tops))
    return best(KIND, site, _each(site, tops))


def _bears(site: Site, piece: Piece) -> bool:
    taken = {one.on for one in site.survey.lights} | {one.on for one in site.survey.pictures}
    right = piece.what in ON and LOWEST_MM <= piece.height <= HIGHEST_MM and piece.surface
    return right and piece.wall in site.lines and piece.name not in taken


def _each(site: Site, tops: list[Piece]) -> Iterator[Offer]:
    for product in of_sort(site, "table lamp"):
        for piece in sorted(tops, key=lambda one: one.name):
            yield from _offer(site, product, [piece])


def _at_bed(site: Site, stands: list[Piece]) -> Iterator[Offer]:
    for product in of_sort(site, "table lamp"):
        for piece in stands:
            yield from _offer(site, product, [piece])
        if len(stands) == 2:
            yield from _offer(site, product, stands)


def _offer(site: Site, product: Product, tops: list[Piece]) -> Iterator[Offer]:
    bulb = bulb_for(site, product)
    lamps = [on_piece(site, piece, _lamp(site, piece, product, bulb)) for piece in tops]
    lit = [lamp for lamp in lamps if lamp is not None]
    if len(lit) < len(tops):
        return
    count = Fraction(len(lit))
    uses = [(product.product, count)] + ([(bulb.product, count)] if bulb is not None else [])
    where = " and the ".join(piece.name for piece in tops)
    text = f"Stand it on the {where}; plug it in at {' and '.join(lamp.socket for lamp in lit)}"
    changes = tuple(Change("lights", lamp.name, add=lamp) for lamp in lit)
    offer = Offer(f"{called(product)} on the {where}", changes, text, product.product, tuple(uses), subject=where)
    yield from with_alike(KIND, site, offer, lit[0].kelvin)


def _lamp(site: Site, piece: Piece, product: Product, bulb: Product | None) -> Light:
    lit, foot, name = bulb or product, product.width or 250.0, f"new {called(product)} on the {piece.name}"
    return Light(
        name=name,
        room=site.room,
        what="table lamp",
        switch=name,
        lumens=lit.lumens or 806.0,
        kelvin=lit.kelvin or 2700.0,
        wall=piece.wall,
        width=foot,
        depth=product.depth or foot,
        lead=product.lead or 1500.0,
        bottom=piece.height + (product.height or 500.0) * SHADE_SHARE,
    )


KIND = Kind(
    "table-lamp",
    "Stand a new table lamp",
    ("one-light-only", "bedroom-light-not-at-bed", "seat-dim-for-reading", "room-dim"),
    (10, 20, 40),
    12,
    _fit,
    hazards=("cord",),
    bought=True,
    whats=("table lamp", "lamp"),
    done_when="it can be switched from the seat or the bed, and no lead lies where you walk",
)
