"""Slide the coffee table to where it is in reach of the sofa.

Fits: a low table in front of the main seat. It goes to 16 in (400 mm) before the seat's front, and where it stands
aside, to the seat's middle; nothing may be in the way.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.remedies.moves import after, edges, slide
from budgetfix.remedies.rugs import seat_of
from budgetfix.room.items import Piece
from budgetfix.room.places import footprint
from budgetfix.room.seating import front_middle, look_direction


def _fit(site: Site) -> tuple[Candidate, ...]:
    table = site.survey.named.get(site.subject, (None, None))[1]
    seat = seat_of(site)
    if not isinstance(table, Piece) or seat is None or table.wall not in site.lines or table.name == seat.name:
        return ()
    look, (x, y) = look_direction(seat, site.lines), front_middle(seat, site.lines)
    side = (look[1], -look[0])
    corners = footprint(table, site.lines).exterior.coords[:-1]
    ahead = site.mm(16, 400) - min((px - x) * look[0] + (py - y) * look[1] for px, py in corners)
    aside = -sum((px - x) * side[0] + (py - y) * side[1] for px, py in corners) / 4
    found = []
    for variant, across in (("", 0.0), ("centred", aside)):
        change = slide(site, table, look[0] * ahead + side[0] * across, look[1] * ahead + side[1] * across)
        moved = dict(change.set)["from_left"] != table.from_left or dict(change.set)["gap"] != table.gap
        if moved and not (variant and abs(aside) < 50) and site.fits((change,)):
            text = f"Slide the {table.name}: {edges(site, after(site, change))}"
            name = f"Slide the {table.name} to {site.words(site.mm(16, 400))} from the {seat.name}"
            found.append(Offer(name, (change,), text, variant))
    return tuple(candidate(KIND, site, offer) for offer in found)


KIND = Kind(
    "slide-table",
    "Slide the coffee table into reach",
    ("table-out-of-reach", "seat-without-table"),
    (2, 5, 10),
    8,
    _fit,
    done_when="a cup can be put down without getting up",
)
