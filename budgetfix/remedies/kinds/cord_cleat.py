"""Tie a blind's loose cord or loop down, out of a child's reach.

Fits: a window with a free cord; cleats or tension devices in the catalogue. The maker's instructions come first.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Opening


def _fit(site: Site) -> tuple[Candidate, ...]:
    thing = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(thing, Opening) or thing.cord <= 0:
        return ()
    offers = []
    for product in of_sort(site, "cord cleat"):
        change = set_on("openings", thing.name, cord=0.0)
        text = f"Screw the cleat to the wall beside the {thing.name} as high as you reach, wind the whole cord up on it"
        name = f"{called(product)}: tie down the cord at the {thing.name}"
        use = ((product.product, Fraction(1)),)
        offers.append(Offer(name, (change,), text, product.product, use, wall=thing.wall))
    return best(KIND, site, offers, 2)


KIND = Kind(
    "cord-cleat", "Tie down a blind cord", ("cord-in-reach",), (5, 15, 25), 1, _fit, holes=2, hazards=("drill", "cord"),
    tools=("drill",), bought=True, whats=("cord cleat",), leaves="plugs", done_when="no loop hangs free",
)  # fmt: skip
