"""Hang the old panels from clip rings, which lowers the hem by 40 mm (1 1/2 in).

Fits: hems up to 60 mm too high; clip rings in the catalogue.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
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
            f"Take the panels down, clip the rings on, hang them again: hem {site.words(at.curtain.hem - LOWER_MM)} up"
        )
        use = ((rings.product, rings.pack),)
        offers.append(Offer(f"{called(rings)} on the old panels", (change,), text, rings.product, use))
    return tuple(candidate(KIND, site, offer) for offer in offers[:1])


KIND = Kind(
    "clip-rings", "Lower a hem with clip rings", ("hem-off-floor",), (10, 20, 30), 9, _fit, hazards=("ladder",),
    bought=True, whats=("clip rings",), done_when="the hem just clears the floor",
)  # fmt: skip
