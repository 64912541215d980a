"""Where a lamp can stand: by a seat, within its lead of a socket, no lead over a way; and lamps of one white."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from shapely.geometry import LineString

from budgetfix.catalog.models import Product
from budgetfix.remedies.kind import Kind, Offer, Site, set_on
from budgetfix.remedies.moves import inside, slide
from budgetfix.remedies.products import of_sort
from budgetfix.room.items import SEATS, TABLES_TO_REACH, Light, Piece
from budgetfix.room.places import extent, middle
from budgetfix.room.sides import straight_ways
from budgetfix.room.stretches import Stretch, along_wall, cloth_of, lead_run, overlap
from budgetfix.room.survey import Change, moved

SLACK_MM, GAP_MM, OFF_WALL_MM = 150.0, 60.0, 50.0
"""Slack that a lead needs, and how far a lamp stands from a seat and from a wall (common practice)."""
SHADE_SHARE = 0.75
"""Lower edge of a floor lamp's shade over its height (common practice)."""
SPREAD_K = 300.0
"""Lamps within this of each other look alike (lamp-colors-mixed)."""
BESIDE_MM, SOCKET_MM = 100.0, 300.0
"""How far a wall light hangs beside a piece, and how high sockets usually are (common practice)."""
HIDDEN_IN, HIDDEN_MM, LEAST_MM, UNDER_CEILING_MM = 12.0, 300.0, 20.0, 300.0
"""How much cord a pendant's grip usually hides, and what is not worth the ladder (common practice)."""
USUAL_LEAD_MM = 1500.0
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
        long = lead_run(site.lines, spot, socket.wall, socket.from_left, doors)
        if long <= lead - SLACK_MM and not any(way.intersects(run) for way in ways):
            near.append((long, socket.name))
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


def pendant_at(site: Site) -> tuple[Light, Piece | None] | None:
    """The pendant that the site names, and the table below it."""
    light = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(light, Light) or light.what != "pendant" or light.wall not in site.lines:
        return None
    table = site.survey.named.get(light.over, (None, None))[1]
    return light, table if isinstance(table, Piece) and table.wall in site.lines else None


def pendant_aim(site: Site, table: Piece | None) -> float:
    """Where a pendant's lower edge goes: 32 in (815 mm) above its table and 3 in (75) more a foot (305) of ceiling
    above 8 ft; without a table 82 in (2085) above the floor.
    """
    if table is None:
        return site.tape(site.mm(82, 2085))
    higher = max(0.0, site.survey.facts(site.room).ceiling - site.mm(96, 2440)) / site.mm(12, 305) * site.mm(3, 75)
    return site.tape(table.height + site.mm(32, 815) + higher)


def by_cord(site: Site, light: Light, table: Piece | None) -> float | None:
    """Where a pendant's lower edge goes by setting its cord; None where that is nothing, or more than a grip hides."""
    bottom = site.said("bottom", pendant_aim(site, table))
    down, most = light.bottom - bottom, site.survey.facts(site.room).ceiling - UNDER_CEILING_MM
    if light.bottom <= 0 or abs(down) < LEAST_MM or down > site.mm(HIDDEN_IN, HIDDEN_MM) or bottom > most:
        return None
    return bottom


def plug_reaches(site: Site) -> bool:
    """True where the longest lead of a lamp that is sold reaches a socket from a seat, a bed or a table."""
    leads = [one.lead or USUAL_LEAD_MM for one in of_sort(site, "floor lamp", "table lamp", "sconce")]
    near = (*SEATS, *TABLES_TO_REACH, "bed", "desk", "sideboard", "dresser", "chest of drawers")
    pieces = [one for one in site.survey.furniture if one.room == site.room and one.what in near]
    spots = [middle(one, site.lines) for one in pieces if one.wall in site.lines]
    return bool(leads) and any(socket_for(site, spot, max(leads)) is not None for spot in spots)


def off_pendant(site: Site, light: Light, table: Piece) -> Point:
    """From a table's middle to the middle of all pendants over it, on plan."""
    spots, (x, y) = [middle(one, site.lines) for one in _over(site, light)], middle(table, site.lines)
    return sum(at for at, _ in spots) / len(spots) - x, sum(at for _, at in spots) / len(spots) - y


def over_middle(site: Site, light: Light, table: Piece) -> tuple[tuple[Change, ...], float]:
    """All pendants of a table moved together so that their middle is over its middle; and how far that is."""
    dx, dy = off_pendant(site, light, table)
    return tuple(slide(site, one, -dx, -dy) for one in _over(site, light)), (dx * dx + dy * dy) ** 0.5


def _over(site: Site, light: Light) -> tuple[Light, ...]:
    """The pendants over the same table, by name."""
    group = [one for one in site.survey.lights if one.what == "pendant" and one.over == light.over]
    return tuple(sorted((one for one in group if one.wall in site.lines), key=lambda one: one.name))


def free_wall(site: Site, wall: str, across: Stretch, up: Stretch) -> bool:
    """True where nothing hangs, opens, or stands tall in that part of a wall."""
    line = site.lines[wall]
    if across[0] < 0 or across[1] > line.length or up[1] > site.survey.facts(site.room).ceiling:
        return False
    openings = [one for one in site.survey.openings if one.room == site.room and one.wall == wall]
    hung = [one for one in site.survey.pictures if one.room == site.room and one.wall == wall]
    names = {one.name for one in openings}
    cloth = [end for one in site.survey.curtains if one.window in names for end in cloth_of(one)]
    tall = []
    for piece in site.survey.furniture:
        if piece.room == site.room and piece.wall in site.lines and piece.height > up[0]:
            start, end, near = along_wall(piece, site.lines, wall)
            tall += [(start, end)] if near <= OFF_WALL_MM else []
    boxes = [(one.from_left, one.from_left + one.width) for one in openings if overlap((one.bottom, one.top), up) > 0]
    boxes += [
        (one.from_left, one.from_left + one.width)
        for one in hung
        if one.what not in ("old holes", "mark") and overlap((one.bottom, one.bottom + one.height), up) > 0
    ]
    return all(overlap(across, box) <= 0 for box in (*boxes, *cloth, *tall))


def beside_at_wall(site: Site, piece: Piece, lamp: Light, tall: float) -> tuple[Light, ...]:
    """The lamp on the wall left and right of a piece, where the wall is free and its lead reaches a socket.

    The lead comes straight down before it runs along the floor.
    """
    along, _ = extent(piece, site.lines)
    found = []
    for at in (piece.from_left - lamp.width - BESIDE_MM, piece.from_left + along + BESIDE_MM):
        spot = moved(lamp, wall=piece.wall, from_left=site.tape(at), gap=0.0)
        across, up = (spot.from_left, spot.from_left + spot.width), (spot.bottom, spot.bottom + tall)
        lead = (lamp.lead or 0.0) - max(0.0, lamp.bottom - SOCKET_MM)
        socket = socket_for(site, site.lines[piece.wall].point(sum(across) / 2), lead)
        if socket is not None and free_wall(site, piece.wall, across, up):
            found.append(moved(spot, socket=socket))
    return tuple(found)
