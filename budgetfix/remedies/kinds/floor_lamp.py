"""Stand a floor lamp beside a seat, within its lead of a socket.

Fits: a floor lamp in the catalogue; a place beside or behind a seat of the group that no piece takes and from which the lead
reaches a socket (straight distance on plan, less a hand's width).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.remedies.moves import edges, inside
from budgetfix.remedies.products import called, of_sort
from budgetfix.remedies.rugs import seats_of
from budgetfix.room.items import Light, Piece
from budgetfix.room.places import extent, footprint, middle
from budgetfix.room.survey import Change

SLACK_MM, GAP_MM, SHADE_SHARE = 150.0, 60.0, 0.75
MOST = 4


def _fit(site: Site) -> tuple[Candidate, ...]:
    offers: list[Offer] = []
    seats = sorted(seats_of(site), key=lambda seat: (not seat.reading, seat.what == "sofa", seat.name))
    for product in of_sort(site, "floor lamp"):
        for seat in seats:
            for lamp in list(_places(site, seat, product))[:1]:
                change = Change("lights", lamp.name, add=lamp)
                text = f"Stand the lamp by the {seat.name}: {edges(site, lamp)}; plug it in at {lamp.socket}"
                use = ((product.product, Fraction(1)),)
                offers.append(
                    Offer(
                        f"{called(product)} by the {seat.name}", (change,), text, f"{product.product}~{seat.name}", use
                    )
                )
    return tuple(candidate(KIND, site, offer) for offer in offers[:MOST])


def _places(site: Site, seat: Piece, product: Product) -> Iterator[Light]:
    along, off = extent(seat, site.lines)
    foot = product.width or 280.0
    for at, gap in (
        (seat.from_left - foot - GAP_MM, seat.gap + 50.0),
        (seat.from_left + along + GAP_MM, seat.gap + 50.0),
        (seat.from_left - foot - GAP_MM, seat.gap + off / 2),
        (seat.from_left + along + GAP_MM, seat.gap + off / 2),
    ):
        if at < 0 or at + foot > site.lines[seat.wall].length:
            continue
        lamp = Light(
            name=f"new {product.product} by the {seat.name}", room=site.room, what="floor lamp",
            switch=f"new {product.product} by the {seat.name}", lumens=product.lumens or 806.0, kelvin=product.kelvin or 2700.0,
            wall=seat.wall, from_left=site.tape(at), gap=site.tape(gap), width=foot, depth=foot,
            bottom=(product.height or 1500.0) * SHADE_SHARE, lead=product.lead or 1500.0,
        )  # fmt: skip
        socket = _socket(site, lamp)
        if socket is not None and inside(site, lamp) and _free(site, lamp):
            yield lamp.__class__.model_validate({**dict(lamp), "socket": socket})


def _socket(site: Site, lamp: Light) -> str | None:
    spot = middle(lamp, site.lines)
    reach = (lamp.lead or 0.0) - SLACK_MM
    near = []
    for socket in site.survey.sockets:
        line = site.lines.get(socket.wall)
        if socket.room == site.room and line is not None:
            apart = math.dist(spot, line.point(socket.from_left))
            if apart <= reach:
                near.append((apart, socket.name))
    return min(near)[1] if near else None


def _free(site: Site, lamp: Light) -> bool:
    spot = footprint(lamp, site.lines)
    pieces = [one for one in site.survey.furniture if one.room == site.room and one.wall in site.lines]
    return all(spot.intersection(footprint(one, site.lines)).area < 1.0 for one in pieces)


KIND = Kind(
    "floor-lamp", "Stand a floor lamp by a seat", ("seat-dim-for-reading", "one-light-only", "room-dim"), (10, 20, 40), 12, _fit,
    hazards=("cord",), bought=True, whats=("floor lamp",), done_when="the page is bright and no lead lies where you walk",
)  # fmt: skip
