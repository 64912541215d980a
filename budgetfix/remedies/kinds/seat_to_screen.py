"""Slide the main seat, with the table before it, nearer to the screen or farther from it.

Fits: a main seat that looks towards the screen, and free floor ahead of it or behind it, in steps of 4 in (100 mm) up
to 60 in (1.5 m), as far as nothing is in the way. The shortest slide that is sound is kept, else the one that leaves
least. Two people; costs nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.moves import after, edges, inside, slide
from budgetfix.remedies.rugs import seat_of
from budgetfix.room.items import Piece
from budgetfix.room.places import footprint
from budgetfix.room.seating import look_direction
from budgetfix.room.survey import Change

STEP_IN, STEP_MM, FARTHEST_MM, NEAR_MM = 4.0, 100.0, 1500.0, 700.0
TABLES = ("coffee table", "nesting tables", "ottoman")


def _fit(site: Site) -> tuple[Candidate, ...]:
    seat = seat_of(site)
    return () if seat is None else best(KIND, site, _offers(site, seat), 1)


def _offers(site: Site, seat: Piece) -> Iterator[Offer]:
    now = site.severity(())
    tried = [(site.severity(changes), order, changes) for order, changes in enumerate(_slides(site, seat))]
    for _, _, changes in sorted((one for one in tried if one[0] < now), key=lambda one: one[:2])[:1]:
        along = "; the table before it goes along" if len(changes) > 1 else ""
        text = f"Slide the {seat.name}: {edges(site, after(site, changes[0]))}{along}"
        yield Offer(f"Slide the {seat.name} to the right distance from the screen", changes, text, subject=seat.name)


def _slides(site: Site, seat: Piece) -> Iterator[tuple[Change, ...]]:
    x, y = look_direction(seat, site.lines)
    step, spot = site.mm(STEP_IN, STEP_MM), footprint(seat, site.lines)
    tables = [one for one in site.survey.furniture if one.room == site.room and one.what in TABLES]
    before = [one for one in tables if one.wall in site.lines and footprint(one, site.lines).distance(spot) <= NEAR_MM]
    for way in (step, -step):
        for count in range(1, int(FARTHEST_MM / step) + 1):
            far = way * count
            changes = tuple(slide(site, one, x * far, y * far) for one in (seat, *before))
            if not all(inside(site, after(site, one)) for one in changes) or not site.fits(changes):
                break
            yield changes


KIND = Kind(
    "seat-to-screen", "Slide the seat to the right distance", ("screen-too-near-or-far",), (20, 40, 75), 6, _fit,
    people=2, hazards=("lifting",), leaves="nothing",
    done_when="the eye is 1.2 to 2.5 diagonals from the screen",
)  # fmt: skip
