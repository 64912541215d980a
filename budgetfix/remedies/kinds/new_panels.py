"""Buy wider or longer panels for the rod that is there.

Fits: panels in the catalogue that are full enough for the rod (one pair, else two) and reach the floor from its
height; a drop that is too long is shortened with hem tape.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.products import called, cheapest, of_sort
from budgetfix.remedies.rods import (
    CLEAR_MM,
    LONGEST_HEM_MM,
    Window,
    dress,
    head,
    panels_for,
    same_use,
    too_long,
    window_at,
)


def _fit(site: Site) -> tuple[Candidate, ...]:
    at = window_at(site)
    if at is None or at.curtain.length != "floor":
        return ()
    here = replace(site, subject=at.window.name)
    return best(KIND, here, _offers(here, at), 3)


def _offers(site: Site, at: Window) -> Iterator[Offer]:
    tape = cheapest(site, "hem tape")
    for panels in of_sort(site, "panels"):
        count = panels_for(panels, at.curtain.rod_width)
        if panels.drop is None or count is None or not same_use(at, panels):
            continue
        hem = at.curtain.rod_height + head(panels.heading) - panels.drop
        shorten = too_long(panels, at.curtain.rod_height)
        if hem > LONGEST_HEM_MM or (shorten and tape is None):
            continue
        uses = [(panels.product, Fraction(count, 2))]
        if shorten and tape is not None:
            uses.append((tape.product, Fraction(1)))
        up = CLEAR_MM if shorten else hem
        change = dress(
            at,
            {
                "panels": count,
                "panel_width": panels.width,
                "hem": up,
                "stack": None,
                "heading": panels.heading or "eyelet",
                "cloth": panels.cloth or "lined",
            },
        )
        two = "Two of " if count == 4 else ""
        text = f"Hang the panels at the {at.window.name}, steam them, then set the hem {site.words(up)} above the floor"
        yield Offer(
            f"{two}{called(panels)} on the old rod ({at.window.name})", (change,), text, panels.product, tuple(uses)
        )


KIND = Kind(
    "new-panels",
    "Hang wider or longer panels on the old rod",
    ("panels-skimpy", "hem-off-floor"),
    (20, 35, 60),
    9,
    _fit,
    hazards=("ladder",),
    tools=("ladder",),
    bought=True,
    whats=("panels", "hem tape"),
    done_when="the hems just clear the floor",
)
