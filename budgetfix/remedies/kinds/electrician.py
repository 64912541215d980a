"""Have a licensed electrician move a hard-wired light, or add one: the lease asks first, the trade does the work.

Fits: a visit in the catalogue (one unit; usually 90 to 250). A pendant goes over the middle of its table, or to the
right height where its cord cannot be set by hand; both in one visit. Where a room has too few lights and no lead
of a lamp that is sold reaches a socket, a wall light from the catalogue is added by the main seat or the bed, with a
switch of its own. The minutes are your own, for letting in, showing the marks and sweeping up; the trade's hours are
in the price.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.lamps import by_cord, free_wall, over_middle, pendant_aim, pendant_at, plug_reaches
from budgetfix.remedies.products import called, cheapest
from budgetfix.remedies.rugs import seat_of
from budgetfix.room.items import Light, Piece
from budgetfix.room.places import extent, turned
from budgetfix.room.survey import Change

LIGHT_IN, LIGHT_MM, WIDE_MM, TALL_MM, AT_WALL_MM = 60.0, 1520.0, 200.0, 250.0, 300.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    visit = cheapest(site, "electrician visit")
    if visit is None:
        return ()
    if pendant_at(site) is not None:
        return best(KIND, site, _pendant(site, visit), 1)
    return () if site.subject != "room" or plug_reaches(site) else best(KIND, site, _added(site, visit), 1)


def _pendant(site: Site, visit: Product) -> Iterator[Offer]:
    found = pendant_at(site)
    if found is None:
        return
    light, table = found
    off_height = site.finding is None or site.finding.rule == "pendant-off-height"
    if off_height and by_cord(site, light, table) is not None:
        return
    bottom = pendant_aim(site, table)
    moves, aside = over_middle(site, light, table) if table is not None else ((), 0.0)
    if aside < 1.0:
        moves = (Change("lights", light.name, ()),)
    changes = tuple(replace(one, set=tuple(sorted({**dict(one.set), "bottom": bottom}.items()))) for one in moves)
    after = site.survey.changed(changes)
    places = "; ".join(_place(site, one) for one in after.lights if one.name in {change.item for change in changes})
    text = f"Ask the landlord where you rent; mark the place on the ceiling; licensed electrician: {places}"
    uses = ((visit.product, Fraction(1)),)
    yield Offer(f"{called(visit)}: move the {light.name}", changes, text, "", uses, subject=light.name)


def _place(site: Site, light: Light) -> str:
    across, off = light.from_left + light.width / 2, light.gap + light.depth / 2
    return (
        f"{light.name}: middle {site.words(across)} from the left corner of wall {light.wall} and {site.words(off)} "
        f"off it, lower edge {site.words(light.bottom)} above the floor"
    )


def _added(site: Site, visit: Product) -> Iterator[Offer]:
    fitting = cheapest(site, "wall light")
    beds = [one for one in site.survey.furniture if one.room == site.room and one.what == "bed"]
    seat = seat_of(site)
    pieces = [*([seat] if seat is not None else []), *sorted(beds, key=lambda one: one.name)]
    for piece in pieces if fitting is not None else ():
        light = _light(site, piece, fitting) if fitting is not None else None
        if light is None or fitting is None:
            continue
        text = (
            f"Ask the landlord where you rent; mark the place; licensed electrician: a wall light with a switch of its "
            f"own. {_place(site, light)}"
        )
        uses = ((visit.product, Fraction(1)), (fitting.product, Fraction(1)))
        change = Change("lights", light.name, add=light)
        yield Offer(f"{called(visit)}: {called(fitting)} by the {piece.name}", (change,), text, "", uses)
        return


def _light(site: Site, piece: Piece, product: Product) -> Light | None:
    """A wall light over a free stretch beside a piece that stands at its wall."""
    if piece.wall not in site.lines or turned(piece, site.lines) or piece.gap > AT_WALL_MM:
        return None
    wide, tall = product.width or WIDE_MM, product.height or TALL_MM
    low, along = site.tape(site.mm(LIGHT_IN, LIGHT_MM)), extent(piece, site.lines)[0]
    for at in (piece.from_left - wide - 100.0, piece.from_left + along + 100.0):
        if free_wall(site, piece.wall, (at, at + wide), (low, low + tall)):
            name = f"new wall light by the {piece.name}"
            return Light(
                name=name, room=site.room, what="wall light", switch=name, lumens=product.lumens or 806.0,
                kelvin=product.kelvin or 2700.0, wall=piece.wall, from_left=site.tape(at), width=wide,
                depth=product.depth or 100.0, bottom=low,
            )  # fmt: skip
    return None


KIND = Kind(
    "electrician", "Have an electrician move or add a light",
    ("pendant-off-center", "pendant-off-height", "one-light-only"), (15, 30, 60), 4, _fit, hazards=("wire",),
    bought=True, whats=("electrician visit", "wall light"), leaves="asks leave",
    done_when="it hangs where it was marked, and the electrician's paper is filed",
)  # fmt: skip
