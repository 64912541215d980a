"""Slide the rug that is there under the front of the main seat.

Fits: a rug of the seating group that stays in the room where it lands. The near edge goes 8 in (200 mm) under the
seat, as the rug lies now; where its middle is off the seat's middle, a second candidate moves that too.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.remedies.moves import after, edges, inside, slide
from budgetfix.remedies.rugs import UNDER_IN, UNDER_MM, seat_of
from budgetfix.room.items import Rug
from budgetfix.room.places import footprint
from budgetfix.room.seating import front_middle, look_direction


def _fit(site: Site) -> tuple[Candidate, ...]:
    rug = site.survey.named.get(site.subject, (None, None))[1]
    seat = seat_of(site)
    if not isinstance(rug, Rug) or seat is None or rug.wall not in site.lines or rug.under:
        return ()
    look, (x, y) = look_direction(seat, site.lines), front_middle(seat, site.lines)
    corners = footprint(rug, site.lines).exterior.coords[:-1]
    near = min((px - x) * look[0] + (py - y) * look[1] for px, py in corners)
    ahead = -site.mm(UNDER_IN, UNDER_MM) - near
    side = (look[1], -look[0])
    middle = sum((px - x) * side[0] + (py - y) * side[1] for px, py in corners) / 4
    offers = []
    for variant, aside in (("", 0.0), ("centred", -middle)):
        change = slide(site, rug, look[0] * ahead + side[0] * aside, look[1] * ahead + side[1] * aside)
        if (variant and abs(middle) < 50) or not inside(site, after(site, change)):
            continue
        text = f"Slide the {rug.name}: {edges(site, after(site, change))}"
        offers.append(Offer(f"Slide the {rug.name} under the {seat.name}", (change,), text, variant))
    return tuple(candidate(KIND, site, offer) for offer in offers)


KIND = Kind(
    "slide-rug", "Slide the rug to the seats", ("rug-misses-seats", "rug-tight-to-walls"), (5, 10, 20), 7, _fit,
    people=1, done_when="the front feet of the main seat stand on the rug",
)  # fmt: skip
