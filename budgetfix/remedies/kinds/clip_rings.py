"""Hang the old panels from clip rings, which lowers the hem by 40 mm (1 1/2 in).

Fits: hems more than 20 mm and up to 75 mm (3 in) above the floor; clip rings in the catalogue.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.remedies.rods import window_at

LOWER_MM, MOST_MM = 40.0, 75.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    at = window_at(site)
    if at is None or at.curtain.length != "floor" or not 20.0 < at.curtain.hem <= MOST_MM:
        return ()
    offers = []
    for rings in of_sort(site, "clip rings"):
        change = set_on("curtains", at.curtain.name, hem=at.curtain.hem - LOWER_MM)
        text = (
            f"Take the panels down, clip the rings on, hang them again: "
            f"hem {site.words(at.curtain.hem - LOWER_MM)} above the floor"
        )
        use = ((rings.product, rings.pack),)
        name = f"{called(rings)} on the old panels"
        offers.append(Offer(name, (change,), text, rings.product, use, subject=at.window.name))
    return best(KIND, site, offers, 1)


KIND = Kind(
    "clip-rings", "Lower a hem with clip rings", ("hem-off-floor",), (10, 20, 30), 9, _fit, hazards=("ladder",),
    bought=True, whats=("clip rings",), done_when="the hem just clears the floor",
)  # fmt: skip
