"""Pull a seat off its wall, or towards the seats that it faces.

Fits: a seat of the room that can be slid straight ahead onto free floor, in steps of 4 in (100 mm) up to 48 in (1220
mm). For each seat the shortest slide that leaves least of the fault is kept.
"""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.moves import after, edges, inside, slide
from budgetfix.room.items import SEATS, Piece
from budgetfix.room.seating import look_direction
from budgetfix.room.survey import Change

STEP_IN, STEP_MM, FARTHEST_MM = 4.0, 100.0, 1220.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    seats = [one for one in site.survey.furniture if one.room == site.room and one.what in SEATS]
    seats = [one for one in seats if one.wall in site.lines and site.subject in (one.name, "seating group")]
    return best(KIND, site, (offer for seat in seats for offer in _offers(site, seat)))


def _ahead(site: Site, seat: Piece) -> Iterator[Change]:
    x, y = look_direction(seat, site.lines)
    step = site.mm(STEP_IN, STEP_MM)
    for count in range(1, int(FARTHEST_MM / step) + 1):
        change = slide(site, seat, x * step * count, y * step * count)
        if inside(site, after(site, change)) and site.fits((change,)):
            yield change


def _offers(site: Site, seat: Piece) -> Iterator[Offer]:
    now = site.severity(())
    tried = [(site.severity((change,)), order, change) for order, change in enumerate(_ahead(site, seat))]
    better = sorted((one for one in tried if one[0] < now), key=lambda one: one[:2])
    for _, _, change in better[:1]:
        text = f"Slide the {seat.name} forward: {edges(site, after(site, change))}"
        yield Offer(f"Pull the {seat.name} forward", (change,), text, subject=seat.name)


KIND = Kind(
    "float-seating",
    "Pull seats off the wall and together",
    ("all-against-walls", "seats-too-far-apart"),
    (30, 60, 120),
    6,
    _fit,
    people=2,
    hazards=("lifting",),
    done_when="people in facing seats can talk without raising their voices",
)
