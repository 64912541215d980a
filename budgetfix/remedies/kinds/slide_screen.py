"""Slide the screen with its bench along the wall, until the main seat looks at it straight.

Fits: a screen on a bench at its own wall, and wall enough. Its middle goes opposite the eye of the main seat (12 in
before the seat's back), or as near to it as the free wall allows, in steps of 2 in (50 mm). Costs nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.better import better
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.rugs import seat_of
from budgetfix.remedies.screens import screen_and_bench
from budgetfix.room.items import Hung, Piece
from budgetfix.room.places import extent
from budgetfix.room.seating import eye
from budgetfix.room.survey import Change

STEP_MM, FARTHEST_MM = 50.0, 2000.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    found = screen_and_bench(site)
    return () if found is None else best(KIND, site, _offers(site, *found), 1)


def _offers(site: Site, screen: Hung, bench: Piece) -> Iterator[Offer]:
    seat = seat_of(site)
    if seat is None:
        return
    opposite, _ = site.lines[screen.wall].local(*eye(seat, site.lines, site.metric))
    aside = opposite - screen.from_left - screen.width / 2
    step = STEP_MM if aside > 0 else -STEP_MM
    for short in range(int(min(abs(aside), FARTHEST_MM) / STEP_MM)):
        changes = _slid(site, screen, bench, aside - short * step)
        if changes is not None and better(site, changes):
            left = float(dict(changes[0].set)["from_left"] or 0)
            text = (
                f"Unplug, slide the {bench.name} with the {screen.name}: left edge {site.words(left)} from the left "
                f"corner of wall {bench.wall}; plug in where the leads reach, strap it again if it was strapped"
            )
            yield Offer(f"Slide the {screen.name} along its wall", changes, text, subject=screen.name)
            return


def _slid(site: Site, screen: Hung, bench: Piece, aside: float) -> tuple[Change, ...] | None:
    """Bench and screen moved along; None where the wall ends or something stands there."""
    at, along = site.tape(bench.from_left + aside), extent(bench, site.lines)[0]
    if at < 0 or at + along > site.lines[bench.wall].length:
        return None
    moved = at - bench.from_left
    changes = (
        set_on("furniture", bench.name, from_left=at),
        set_on("pictures", screen.name, from_left=screen.from_left + moved),
    )
    return changes if site.fits(changes) else None


KIND = Kind(
    "slide-screen", "Slide screen and bench along the wall", ("screen-seen-sideways", "seat-turns-the-neck"),
    (20, 40, 75), 6, _fit, people=2, hazards=("lifting", "cord"), follows=True,
    done_when="who sits in the main seat faces the middle of the screen",
)  # fmt: skip
