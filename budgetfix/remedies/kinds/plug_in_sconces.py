"""Screw plug-in wall lights beside the bed, or one beside a seat, within their leads of a socket.

Fits: plug-in wall lights in the catalogue; free wall beside the head of a bed that stands at its wall (lower edge 22
in, 560 mm, above the mattress), or beside a seat at a wall (lower edge 42 in, 1065 mm, above the floor, to read by);
a socket that the lead reaches, straight down and then along the floor, not over the straight way between two doors.
At a bed: the pair, or one where the other side has its light. Where the other lamps of the room are of another white,
a second candidate changes them too. What is sold as a pair or a set is one unit for two.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.lamps import beside_at_wall, with_alike
from budgetfix.remedies.products import bulb_for, called, of_sort
from budgetfix.remedies.rugs import seats_of
from budgetfix.room.items import Light, Piece
from budgetfix.room.places import turned
from budgetfix.room.survey import Change

MATTRESS_IN, MATTRESS_MM, READ_IN, READ_MM, AT_WALL_IN, AT_WALL_MM = 22.0, 560.0, 42.0, 1065.0, 12.0, 300.0
WIDE_MM, TALL_MM, LEAD_MM = 150.0, 300.0, 1500.0
ONE_MINUTES = (25, 45, 70)
"""A single one of them: our judgement."""
PAIRS = ("pair", "set")


def _fit(site: Site) -> tuple[Candidate, ...]:
    beds = [one for one in site.survey.furniture if one.room == site.room and one.what == "bed"]
    pieces = [*sorted(beds, key=lambda one: one.name), *seats_of(site)]
    named = [one for one in pieces if one.name == site.subject]
    return best(KIND, site, (offer for piece in named or pieces for offer in _offers(site, piece)), 2)


def _offers(site: Site, piece: Piece) -> Iterator[Offer]:
    at_wall = piece.gap <= site.mm(AT_WALL_IN, AT_WALL_MM) and piece.wall in site.lines
    if not at_wall or turned(piece, site.lines):
        return
    for product in of_sort(site, "sconce"):
        bulb, tall = bulb_for(site, product), product.height or TALL_MM
        lamps = beside_at_wall(site, piece, _lamp(site, piece, product, bulb), tall)
        sets = [lamps] if piece.what == "bed" and len(lamps) == 2 else []
        for few in [*sets, *((lamp,) for lamp in lamps)]:
            yield from _offer(site, piece, product, bulb, few)


def _offer(
    site: Site, piece: Piece, product: Product, bulb: Product | None, lamps: tuple[Light, ...]
) -> Iterator[Offer]:
    count = Fraction(len(lamps))
    uses = [(product.product, Fraction(1) if product.unit in PAIRS else count)]
    uses += [(bulb.product, count)] if bulb is not None else []
    side = "pair" if len(lamps) == 2 else "left" if lamps[0].from_left < piece.from_left else "right"
    named = [_named(lamp, piece, at) for at, lamp in enumerate(lamps, 1)]
    places = "; ".join(
        f"left edge {site.words(lamp.from_left)} from the left corner of wall {lamp.wall}, lower edge "
        f"{site.words(lamp.bottom)} above the floor, plugged in at {lamp.socket}"
        for lamp in named
    )
    offer = Offer(
        f"{'Two of ' if len(lamps) == 2 else ''}{called(product)} beside the {piece.name}",
        tuple(Change("lights", lamp.name, add=lamp) for lamp in named),
        f"Mark with a level, drill, plug, screw: {places}; clip the leads to the skirting",
        f"{product.product}~{side}",
        tuple(uses), holes=2 * len(lamps), wall=piece.wall, subject=piece.name,
        minutes=None if len(lamps) == 2 else ONE_MINUTES,
    )  # fmt: skip
    yield from with_alike(KIND, site, offer, lamps[0].kelvin)


def _named(lamp: Light, piece: Piece, number: int) -> Light:
    name = f"new wall light {number} by the {piece.name}"
    return Light.model_validate({**dict(lamp), "name": name, "switch": name})


def _lamp(site: Site, piece: Piece, product: Product, bulb: Product | None) -> Light:
    lit = bulb or product
    mattress = piece.height if piece.seat is None else piece.seat
    low = mattress + site.mm(MATTRESS_IN, MATTRESS_MM) if piece.what == "bed" else site.mm(READ_IN, READ_MM)
    return Light(
        name=f"new wall light by the {piece.name}", room=site.room, what="wall light", lumens=lit.lumens or 806.0,
        kelvin=lit.kelvin or 2700.0, wall=piece.wall, width=product.width or WIDE_MM, depth=product.depth or WIDE_MM,
        bottom=site.tape(low), lead=product.lead or LEAD_MM,
    )  # fmt: skip


KIND = Kind(
    "plug-in-sconces", "Screw plug-in wall lights beside the bed or a seat",
    ("bedroom-light-not-at-bed", "one-light-only", "seat-dim-for-reading", "bed-lopsided"), (45, 75, 120), 12, _fit,
    holes=4, hazards=("drill", "cord"), tools=("drill",), bought=True, whats=("sconce", "lamp"), leaves="plugs",
    done_when="each can be switched from where one lies or sits, and no lead lies where you walk",
)  # fmt: skip
