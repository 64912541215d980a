"""Slide the bed along its wall, so that people get out on both sides, the window is free, or the bed is in the middle.

Fits: a bed whose head is at a wall. The places nearest to where it stands that cure the fault, and the middle of the
wall, are tried; its nightstands and the pictures over it go along (their old holes are filled). Two people.
"""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.moves import after, edges
from budgetfix.room.items import Piece
from budgetfix.room.places import extent, turned
from budgetfix.room.survey import Change

STEP_MM = 50.0
NEAR_MM = 300.0
"""A nightstand this near to the bed belongs to it, if the survey does not say so."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    beds = [one for one in site.survey.furniture if one.room == site.room and one.what == "bed"]
    beds = [one for one in beds if one.wall in site.lines and not turned(one, site.lines)]
    named = [one for one in beds if one.name == site.subject]
    return best(KIND, site, (offer for bed in named or beds for offer in _offers(site, bed)), 2)


def _offers(site: Site, bed: Piece) -> Iterator[Offer]:
    along, _ = extent(bed, site.lines)
    room = site.lines[bed.wall].length - along
    steps = [bed.from_left + way * count * STEP_MM for count in range(1, int(room / STEP_MM) + 1) for way in (1, -1)]
    now, cured = site.severity(()), 0
    for at in (room / 2, *steps):
        place = site.tape(at)
        if not 0 <= place <= room or abs(place - bed.from_left) < 1.0 or cured >= 2:
            continue
        changes = _together(site, bed, place - bed.from_left)
        if not site.fits(changes):
            continue
        severity = site.severity(changes)
        if severity < now or site.finding is None:
            cured += severity == 0
            more = "; nightstands and pictures go along" if len(changes) > 1 else ""
            text = f"Slide the {bed.name}: {edges(site, after(site, changes[0]))}{more}"
            yield Offer(f"Slide the {bed.name} along its wall", changes, text, site.words(place), subject=bed.name)


def _together(site: Site, bed: Piece, aside: float) -> tuple[Change, ...]:
    changes = [set_on("furniture", bed.name, from_left=bed.from_left + aside)]
    along, _ = extent(bed, site.lines)
    for stand in site.survey.furniture:
        beside = max(bed.from_left - stand.from_left - stand.width, stand.from_left - bed.from_left - along)
        its = stand.at == bed.name or (stand.what == "nightstand" and beside <= NEAR_MM and stand.wall == bed.wall)
        if its and stand.room == site.room and stand.wall == bed.wall:
            changes.append(set_on("furniture", stand.name, from_left=stand.from_left + aside))
    changes += [
        set_on("pictures", frame.name, from_left=frame.from_left + aside)
        for frame in site.survey.pictures
        if frame.over == bed.name and frame.wall == bed.wall
    ]
    return tuple(changes)


KIND = Kind(
    "center-bed", "Slide the bed along its wall", ("bed-side-tight", "bed-lopsided", "front-blocked", "exit-blocked"),
    (20, 40, 75), 6, _fit, people=2, hazards=("lifting",), done_when="both sides of the bed are free to get out",
)  # fmt: skip
