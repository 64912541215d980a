"""Move a floor lamp that is there: to a seat, to within its lead of a socket, or so that its lead crosses no way.

Fits: a floor lamp of the room whose lead is known (or usual), and a free place beside or behind a seat of the group
from which the lead reaches a socket without crossing the straight way between two doors. Only moves that make the
finding better are kept.
"""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.lamps import by_seat
from budgetfix.remedies.moves import edges
from budgetfix.remedies.rugs import seats_of
from budgetfix.room.items import Light, Piece
from budgetfix.room.survey import Change, moved

USUAL_IN, USUAL_MM = 60.0, 1500.0
"""A lead of unknown length (the trade's default, 5 ft)."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    lamps = [one for one in site.survey.lights if one.room == site.room and one.what == "floor lamp"]
    lamps = [one for one in lamps if site.subject not in site.survey.named or site.subject == one.name or _seat(site)]
    offers = (offer for lamp in lamps for seat in seats_of(site) for offer in _offers(site, seat, lamp))
    return best(KIND, site, offers, 3)


def _seat(site: Site) -> bool:
    return any(seat.name == site.subject for seat in seats_of(site))


def _offers(site: Site, seat: Piece, lamp: Light) -> Iterator[Offer]:
    known = moved(lamp, lead=site.mm(USUAL_IN, USUAL_MM)) if lamp.lead is None else lamp
    for spot in by_seat(site, seat, known):
        changes = (_change(lamp, spot), *_surveyed_twice(site, lamp, spot))
        if site.fits(changes) and (site.finding is None or site.severity(changes) < site.severity(())):
            text = f"Move the {lamp.name} to the {seat.name}: {edges(site, spot)}; plug it in at {spot.socket}"
            yield Offer(f"Move the {lamp.name} to the {seat.name}", changes, text, seat.name, subject=lamp.name)
            return


def _change(lamp: Light, spot: Light) -> Change:
    return set_on(
        "lights",
        lamp.name,
        wall=spot.wall,
        from_left=spot.from_left,
        gap=spot.gap,
        socket=spot.socket,
        lead_over_route=False,
    )


def _surveyed_twice(site: Site, lamp: Light, spot: Light) -> tuple[Change, ...]:
    """A lamp that the survey also has as a piece of furniture on the same spot goes along."""
    twins = [
        one
        for one in site.survey.furniture
        if one.room == site.room and one.what == "floor lamp" and (one.wall, one.gap) == (lamp.wall, lamp.gap)
    ]
    same = [one for one in twins if abs(one.from_left - lamp.from_left) < 1.0]
    return tuple(
        set_on("furniture", one.name, wall=spot.wall, from_left=spot.from_left, gap=spot.gap, faces="") for one in same
    )


KIND = Kind(
    "move-lamp",
    "Move a floor lamp",
    ("lead-too-short", "cable-across-route", "seat-dim-for-reading"),
    (5, 10, 20),
    12,
    _fit,
    hazards=("cord",),
    done_when="the lead reaches its socket and lies where nobody walks",
)
