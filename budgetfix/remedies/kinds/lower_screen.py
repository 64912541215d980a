"""Hang a screen that is fixed to the wall lower (or higher), to where the main seat sees it straight ahead.

Fits: a screen on screws that stands on nothing. Its centre goes to 42 in (1065 mm) above the floor, moved with the
main seat from a seat of 17 in (430 mm); before a bed without a seat to 50 in (1270 mm). Where a piece stands below, as
low as 2 in (50 mm) above it, if that helps. Not free: the bracket takes five new plugs, and the old holes are filled
and painted, for which filler and paint are on the list where the catalogue has them.
"""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.better import better
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.holes import repair
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.rugs import seat_of
from budgetfix.remedies.screens import top_below, wall_screen
from budgetfix.room.items import Hung

SEAT_IN, SEAT_MM, AIM_IN, AIM_MM, BED_IN, BED_MM = 17.0, 430.0, 42.0, 1065.0, 50.0, 1270.0
ABOVE_IN, ABOVE_MM, LEAST_MM = 2.0, 50.0, 30.0
PLUGS = 5
"""Of a bracket: four to six (common practice)."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    screen = wall_screen(site)
    return () if screen is None else best(KIND, site, _offers(site, screen), 1)


def _aim(site: Site) -> float | None:
    """Where the centre goes; None where nobody is known to sit before it."""
    seat = seat_of(site)
    if seat is not None:
        usual = site.mm(SEAT_IN, SEAT_MM)
        return site.mm(AIM_IN, AIM_MM) + (usual if seat.seat is None else seat.seat) - usual
    return site.mm(BED_IN, BED_MM) if site.survey.facts(site.room).kind == "bedroom" else None


def _offers(site: Site, screen: Hung) -> Iterator[Offer]:
    aim = _aim(site)
    if aim is None:
        return
    lowest = top_below(site, screen) + site.mm(ABOVE_IN, ABOVE_MM)
    bottom = site.tape(site.said("bottom", max(aim - screen.height / 2, lowest)))
    change = set_on("pictures", screen.name, bottom=bottom)
    if abs(bottom - screen.bottom) < LEAST_MM or not better(site, (change,)) or not site.fits((change,)):
        return
    way = "lower" if bottom < screen.bottom else "higher"
    text = (
        f"Two people: lift the {screen.name} off, unscrew the bracket, screw it on again so that the screen's lower "
        f"edge is {site.words(bottom)} above the floor (centre {site.words(bottom + screen.height / 2)}), left "
        f"edge {site.words(screen.from_left)} from the left corner of wall {screen.wall}; "
        "fill and paint the old holes; see that the leads reach and hang out of sight"
    )
    yield Offer(f"Hang the {screen.name} {way}", (change,), text, "", repair(site, PLUGS), wall=screen.wall)


KIND = Kind(
    "lower-screen", "Hang a wall screen at eye level", ("screen-off-eye-level",), (90, 150, 240), 10, _fit, people=2,
    holes=PLUGS, hazards=("drill", "lifting"), tools=("drill",), whats=("filler", "paint"), fills=("bottom",),
    fills_old_holes=True, leaves="plugs",
    done_when="who sits in the main seat looks straight ahead, and the old holes do not show",
)  # fmt: skip
