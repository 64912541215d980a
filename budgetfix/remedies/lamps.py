"""Where a lamp can stand: by a seat, within its lead of a socket, no lead over a way; and lamps of one white."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from shapely.geometry import LineString

from budgetfix.catalog.models import Product
from budgetfix.remedies.kind import Kind, Offer, Site, set_on
from budgetfix.remedies.moves import inside
from budgetfix.remedies.products import of_sort
from budgetfix.room.items import Light, Piece
from budgetfix.room.places import extent, middle
from budgetfix.room.sides import straight_ways
from budgetfix.room.survey import Change, moved

SLACK_MM, GAP_MM, OFF_WALL_MM = 150.0, 60.0, 50.0
"""Slack that a lead needs, and how far a lamp stands from a seat and from a wall (common practice)."""
SHADE_SHARE = 0.75
"""Lower edge of a floor lamp's shade over its height (common practice)."""
SPREAD_K = 300.0
"""Lamps within this of each other look alike (lamp-colors-mixed)."""
EACH_MINUTES = (3, 5, 10)
"""Changing one lamp: our judgement."""
Point = tuple[float, float]
Goods = tuple[tuple[str, Fraction], ...]


def alike(site: Site, kelvin: float, lamps: tuple[Product, ...]) -> tuple[tuple[Change, ...], Goods] | None:
    """Every light of the room that is off by more than 150 K changed for the smallest bulb of about that color.

    At least 0.9 of its light, else the brightest bulb; None where nothing is off or no such bulb is sold.
    """
    near = [one for one in lamps if abs((one.kelvin or 0.0) - kelvin) <= SPREAD_K / 2]
    near.sort(key=lambda one: (one.lumens or 0.0, one.price_minor, one.product))
    off = [one for one in site.survey.lights if one.room == site.room and abs(one.kelvin - kelvin) > SPREAD_K / 2]
    if not near or not off:
        return None
    changes, used = [], Counter[str]()
    for light in sorted(off, key=lambda one: one.name):
        bulb = next((one for one in near if (one.lumens or 0.0) >= light.lumens * 0.9), near[-1])
        changes.append(set_on("lights", light.name, kelvin=bulb.kelvin, lumens=bulb.lumens))
        used[bulb.product] += 1
    return tuple(changes), tuple((product, Fraction(count)) for product, count in sorted(used.items()))


def with_alike(kind: Kind, site: Site, offer: Offer, kelvin: float) -> Iterator[Offer]:
    """The offer, and where the other lamps of the room are of another white, the offer with all of them changed."""
    yield offer
    kelvins = [one.kelvin for one in site.survey.lights if one.room == site.room]
    others = alike(site, kelvin, of_sort(site, "lamp"))
    if others is None or not any(abs(one - kelvin) > SPREAD_K for one in kelvins):
        return
    changes, goods = others
    total: dict[str, Fraction] = dict(offer.uses)
    for product, units in goods:
        total[product] = total.get(product, Fraction(0)) + units
    low, likely, high = (one + len(changes) * each for one, each in zip(kind.minutes, EACH_MINUTES, strict=True))
    yield replace(
        offer, name=f"{offer.name}, the same white all round", changes=(*offer.changes, *changes),
        text=f"{offer.text}; change the lamps of: {', '.join(change.item for change in changes)}",
        variant=f"{offer.variant}~alike", uses=tuple(sorted(total.items())), minutes=(low, likely, high),
        hazards=("lamp", "ladder"),
    )  # fmt: skip


def socket_for(site: Site, spot: Point, lead: float) -> str | None:
    """The nearest socket that a lead reaches from a point without crossing a straight way between two doors."""
    doors = [one for one in site.survey.openings if one.room == site.room and one.what in ("door", "opening")]
    ways = straight_ways(doors, site.lines)
    near = []
    for socket in site.survey.sockets:
        line = site.lines.get(socket.wall)
        if socket.room != site.room or line is None:
            continue
        end = line.point(socket.from_left)
        run = LineString((spot, end))
        if run.length <= lead - SLACK_MM and not any(way.intersects(run) for way in ways):
            near.append((run.length, socket.name))
    return min(near)[1] if near else None


def by_seat(site: Site, seat: Piece, lamp: Light) -> Iterator[Light]:
    """The lamp at free places beside a seat from which its lead reaches a socket, the nearer to the wall first."""
    along, off = extent(seat, site.lines)
    wide = lamp.width
    sides = (seat.from_left - wide - GAP_MM, seat.from_left + along + GAP_MM)
    gaps = (seat.gap + OFF_WALL_MM, seat.gap + off / 2, max(0.0, seat.gap + off - lamp.depth))
    places = [(at, gap) for gap in gaps for at in sides]
    if seat.gap > lamp.depth + GAP_MM:
        places.append((seat.from_left + along / 2 - wide / 2, seat.gap - lamp.depth - GAP_MM))
    for at, gap in places:
        if at < 0 or gap < 0 or at + wide > site.lines[seat.wall].length:
            continue
        spot = moved(lamp, wall=seat.wall, from_left=site.tape(at), gap=site.tape(gap))
        socket = socket_for(site, middle(spot, site.lines), lamp.lead or 0.0)
        if socket is not None and inside(site, spot):
            yield moved(spot, socket=socket)


def on_piece(site: Site, piece: Piece, lamp: Light) -> Light | None:
    """The lamp on a piece's top from where its lead reaches a socket; None where none is near."""
    spot = middle(piece, site.lines)
    socket = socket_for(site, spot, lamp.lead or 0.0)
    if socket is None:
        return None
    along, off = extent(piece, site.lines)
    return moved(
        lamp, wall=piece.wall, from_left=site.tape(piece.from_left + (along - lamp.width) / 2),
        gap=site.tape(max(0.0, piece.gap + (off - lamp.depth) / 2)), on=piece.name, socket=socket,
    )  # fmt: skip
