"""Free floor beside a seat, for a table. Millimetres."""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.kind import Site, set_on
from budgetfix.remedies.moves import inside
from budgetfix.room.items import Piece
from budgetfix.room.places import extent, turned
from budgetfix.room.survey import Change, moved

GAP_MM = 50.0


def beside(site: Site, seat: Piece, table: Piece) -> Iterator[Piece]:
    """The table at free places beside both ends of a seat along its wall, and at its arms where it stands turned."""
    along, off = extent(seat, site.lines)
    wide, deep = table.width, table.depth
    inner = seat.gap + max(0.0, (off - deep) / 2)
    places = [(seat.from_left - wide - GAP_MM, inner), (seat.from_left + along + GAP_MM, inner)]
    if turned(seat, site.lines):
        middle = seat.from_left + max(0.0, (along - wide) / 2)
        places += [(middle, seat.gap - deep - GAP_MM), (middle, seat.gap + off + GAP_MM)]
    for at, gap in places:
        if at < 0 or gap < 0 or at + wide > site.lines[seat.wall].length:
            continue
        spot = moved(table, wall=seat.wall, from_left=site.tape(at), gap=site.tape(gap), faces="")
        if inside(site, spot) and site.fits((standing(site, spot),)):
            yield spot


def standing(site: Site, table: Piece) -> Change:
    """The change that stands a table there: moved if the survey knows it, else added."""
    if table.name in site.survey.named:
        return set_on(
            "furniture", table.name, wall=table.wall, from_left=table.from_left, gap=table.gap, faces=table.faces
        )
    return Change("furniture", table.name, add=table)
