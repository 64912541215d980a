"""Sliding things on plan, and finding where free floor and wall allow them. Millimetres."""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.kind import Site, set_on
from budgetfix.room.items import Light, Piece, Rug
from budgetfix.room.places import extent, footprint, middle, outline
from budgetfix.room.survey import Change, moved

Point = tuple[float, float]
Floor = Piece | Rug | Light
TABLE_OF = {Piece: "furniture", Rug: "rugs", Light: "lights"}


def shifted(site: Site, item: Floor, dx: float, dy: float) -> tuple[float, float]:
    """(from_left, gap) after a slide of (dx, dy) on plan."""
    line = site.lines[item.wall]
    along = dx * line.along[0] + dy * line.along[1]
    off = dx * line.inward[0] + dy * line.inward[1]
    return site.tape(item.from_left + along), site.tape(item.gap + off)


def slide(site: Site, item: Floor, dx: float, dy: float) -> Change:
    """The change that slides a thing."""
    from_left, gap = shifted(site, item, dx, dy)
    return set_on(TABLE_OF[type(item)], item.name, from_left=from_left, gap=gap)


def along_wall(site: Site, piece: Piece, step: float, reach: float) -> Iterator[Change]:
    """Slides of a piece along its own wall, shortest first, both ways, as far as the wall goes."""
    wide, _ = extent(piece, site.lines)
    length = site.lines[piece.wall].length
    for count in range(1, int(reach / step) + 1):
        for way in (-1.0, 1.0):
            at = site.tape(piece.from_left + way * count * step)
            if at >= 0 and at + wide <= length + 0.05:
                yield set_on("furniture", piece.name, from_left=at)


def off_wall(site: Site, piece: Piece, step: float, reach: float) -> Iterator[Change]:
    """Slides of a piece towards or away from its wall, shortest first."""
    for count in range(1, int(reach / step) + 1):
        for way in (-1.0, 1.0):
            gap = site.tape(piece.gap + way * count * step)
            if gap >= 0:
                yield set_on("furniture", piece.name, gap=gap)


def with_chairs(site: Site, piece: Piece, change: Change) -> tuple[Change, ...]:
    """The change of a piece, and the same slide for every chair that is pushed in under it."""
    (x0, y0), (x1, y1) = middle(piece, site.lines), middle(after(site, change), site.lines)
    chairs = [
        slide(site, chair, x1 - x0, y1 - y0)
        for chair in site.survey.furniture
        if chair.at == piece.name and chair.tucked and chair.wall in site.lines
    ]
    return (change, *chairs)


def edges(site: Site, item: Floor) -> str:
    """Where the edges go, in words: `left edge 1210 mm from the left corner of wall B, 700 mm off it`."""
    off = f", {site.words(item.gap)} off it" if item.gap > 1 else ", against it"
    return f"left edge {site.words(item.from_left)} from the left corner of wall {item.wall}{off}"


def after(site: Site, change: Change) -> Floor:
    """The thing as it stands after a change."""
    item = site.survey.named[change.item][1]
    assert isinstance(item, (Piece, Rug, Light))
    return moved(item, **dict(change.set))


def inside(site: Site, item: Floor) -> bool:
    """True where a footprint stays in the room."""
    spot = footprint(item, site.lines)
    return bool(spot.difference(outline(site.survey, site.room).buffer(1.0)).area < 1.0)


def before_opening(site: Site, piece: Piece) -> bool:
    """True where a piece would stand before a door, a closet, or a window whose sill is lower."""
    openings = [one for one in site.survey.openings if one.room == site.room and one.wall == piece.wall]
    return any(
        one.from_left < piece.from_left + piece.width and piece.from_left < one.from_left + one.width
        for one in openings
        if one.what != "window" or one.bottom < piece.height
    )
