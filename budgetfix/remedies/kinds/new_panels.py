"""Buy wider or longer panels for the rod that is there.

Fits: panels in the catalogue that are full enough for the rod and reach the floor from its height; a drop that is too long is
shortened with hem tape.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.products import called, cheapest, of_sort
from budgetfix.remedies.rods import CLEAR_MM, HEAD_MM, full_enough, window_at


def _fit(site: Site) -> tuple[Candidate, ...]:
    at = window_at(site)
    if at is None or at.curtain.length != "floor":
        return ()
    tape, offers = cheapest(site, "hem tape"), []
    for panels in of_sort(site, "panels"):
        if panels.width is None or panels.drop is None or not full_enough(panels, 2, at.curtain.rod_width):
            continue
        hem = at.curtain.rod_height + HEAD_MM - panels.drop
        shorten = hem < 0
        if hem > CLEAR_MM + 10.0 or (shorten and tape is None):
            continue
        uses = [(panels.product, Fraction(1))] + ([(tape.product, Fraction(1))] if shorten and tape is not None else [])
        change = set_on(
            "curtains", at.curtain.name, panels=2, panel_width=panels.width, hem=CLEAR_MM, stack=None,
            heading=panels.heading or "eyelet", cloth=panels.cloth or "lined",
        )  # fmt: skip
        text = f"Hang the pair, steam it, then set the hem {site.words(CLEAR_MM)} above the floor"
        offers.append(Offer(f"{called(panels)} on the old rod", (change,), text, panels.product, tuple(uses)))
    return tuple(candidate(KIND, site, offer) for offer in offers[:3])


KIND = Kind(
    "new-panels", "Hang wider or longer panels on the old rod", ("panels-skimpy", "hem-off-floor"), (20, 35, 60), 9, _fit,
    hazards=("ladder",), bought=True, whats=("panels", "hem tape"), done_when="the hems just clear the floor",
)  # fmt: skip
