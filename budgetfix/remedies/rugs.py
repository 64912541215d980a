"""Laying a rug by the main seat: where it goes so that front feet stand on it."""

from __future__ import annotations

from budgetfix.catalog.models import Product
from budgetfix.remedies.kind import Site
from budgetfix.remedies.moves import inside
from budgetfix.remedies.products import of_sort
from budgetfix.room.items import SEATS, Piece, Rug
from budgetfix.room.places import footprint
from budgetfix.room.seating import front_middle, group, look_direction, main_seat

UNDER_SHARE = 0.85
"""How much of a rug's sides a pad reaches under."""
UNDER_IN, UNDER_MM = 8.0, 200.0
"""How far a rug goes under the front of the main seat: a little more than the 6 in (150 mm) that are asked."""


def seat_of(site: Site) -> Piece | None:
    """The main seat of the site's room."""
    seat = main_seat(piece for piece in site.survey.furniture if piece.room == site.room and piece.what in SEATS)
    return seat if seat is not None and seat.wall in site.lines else None


def seats_of(site: Site) -> tuple[Piece, ...]:
    """The seating group."""
    pieces = [piece for piece in site.survey.furniture if piece.room == site.room]
    return group(pieces, site.lines, site.metric)


def laid(site: Site, rug: Rug, wide: float, deep: float, shift: float = 0.0) -> Rug | None:
    """The rug with its side `wide` along the main seat's front and `deep` before it, middle on the seat's middle.

    `shift` moves it sideways (to the seat's left). None where it would leave the room.
    """
    seat = seat_of(site)
    if seat is None:
        return None
    spot = before(site, seat, -site.mm(UNDER_IN, UNDER_MM), (wide, deep), shift)
    placed = Rug.model_validate({**dict(rug), **spot})
    return placed if inside(site, placed) else None


def before(
    site: Site, seat: Piece, ahead: float, size: tuple[float, float], shift: float = 0.0
) -> dict[str, str | float]:
    """Place and extent at the seat's wall of a rectangle (`wide` along the seat's front, `deep`) `ahead` of that front.

    Its middle lies on the seat's middle, or `shift` to the seat's left.
    """
    (wide, deep), look, (x, y) = size, look_direction(seat, site.lines), front_middle(seat, site.lines)
    side = (look[1], -look[0])
    near = (x + look[0] * ahead + side[0] * shift, y + look[1] * ahead + side[1] * shift)
    corners = [
        (near[0] + side[0] * a * wide / 2 + look[0] * b * deep, near[1] + side[1] * a * wide / 2 + look[1] * b * deep)
        for a in (-1, 1)
        for b in (0, 1)
    ]
    line = site.lines[seat.wall]
    local = [line.local(*corner) for corner in corners]
    low_s, low_d = min(s for s, _ in local), min(d for _, d in local)
    high_s, high_d = max(s for s, _ in local), max(d for _, d in local)
    return {
        "wall": seat.wall,
        "from_left": site.tape(low_s),
        "gap": site.tape(max(0.0, low_d)),
        "width": high_s - low_s,
        "depth": high_d - low_d,
    }


def best_laid(site: Site, rug: Rug, wide: float, deep: float) -> tuple[Rug, ...]:
    """The rug centred on the main seat, and shifted towards the other seats where that reaches more of them."""
    found = [laid(site, rug, wide, deep)]
    for seat in seats_of(site):
        main = seat_of(site)
        if main is not None and seat.name != main.name:
            found += [laid(site, rug, wide, deep, shift) for shift in _shifts(site, main, seat, wide)]
    rugs = {(one.from_left, one.gap): one for one in found if one is not None}
    return tuple(rugs[key] for key in sorted(rugs))


def _shifts(site: Site, main: Piece, other: Piece, wide: float) -> list[float]:
    look, (x, y) = look_direction(main, site.lines), front_middle(main, site.lines)
    side = (look[1], -look[0])
    corners = footprint(other, site.lines).exterior.coords[:-1]
    reach = [(px - x) * side[0] + (py - y) * side[1] for px, py in corners]
    far = max(reach) if sum(reach) > 0 else min(reach)
    need = abs(far) - wide / 2
    if need <= 0:
        return []
    most = max(0.0, wide / 2 - main.width / 2 + 50.0)
    return [min(need, most) * (1 if far > 0 else -1)]


def reaches(pad: Product, rug: Rug) -> bool:
    """True where a pad lies under nearly all of a rug: 85 % of both sides or more; a larger one is cut to size."""
    if pad.width is None or pad.depth is None:
        return False
    long, short = max(rug.width, rug.depth), min(rug.width, rug.depth)
    return max(pad.width, pad.depth) >= UNDER_SHARE * long and min(pad.width, pad.depth) >= UNDER_SHARE * short


def pad_for(site: Site, rug: Rug) -> Product | None:
    """The cheapest pad that reaches under nearly all of the rug; None where there is none."""
    fits = [pad for pad in of_sort(site, "pad") if reaches(pad, rug)]
    return min(fits, key=lambda pad: (pad.price_minor, pad.product), default=None)


def rug_fields(rug: Rug) -> dict[str, str | float]:
    """The fields that lay a rug."""
    return {"wall": rug.wall, "from_left": rug.from_left, "gap": rug.gap, "width": rug.width, "depth": rug.depth}
