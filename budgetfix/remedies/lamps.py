"""Where a lamp can stand: free floor by a seat, within its lead of a socket, and no lead over a way. Millimetres."""

from __future__ import annotations

from collections.abc import Iterator

from shapely.geometry import LineString

from budgetfix.remedies.kind import Site
from budgetfix.remedies.moves import inside
from budgetfix.room.items import Light, Piece
from budgetfix.room.places import extent, middle
from budgetfix.room.sides import straight_ways
from budgetfix.room.survey import moved

SLACK_MM, GAP_MM, OFF_WALL_MM = 150.0, 60.0, 50.0
"""Slack that a lead needs, and how far a lamp stands from a seat and from a wall (common practice)."""
SHADE_SHARE = 0.75
"""Lower edge of a floor lamp's shade over its height (common practice)."""
Point = tuple[float, float]


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
