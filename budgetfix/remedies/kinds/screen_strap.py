"""Strap a screen that stands on furniture to its bench.

Fits: a standing screen without a strap; screen straps in the catalogue.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Hung


def _fit(site: Site) -> tuple[Candidate, ...]:
    thing = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(thing, Hung) or not thing.on or thing.fixing in ("strap", "screws"):
        return ()
    offers = []
    for product in of_sort(site, "screen strap"):
        change = set_on("pictures", thing.name, fixing="strap")
        text = f"Screw the straps into the mount holes of the {thing.name} and to the back of its bench, pull tight"
        name = f"{called(product)}: strap the {thing.name}"
        offers.append(Offer(name, (change,), text, product.product, ((product.product, Fraction(1)),)))
    return best(KIND, site, offers, 2)


KIND = Kind(
    "screen-strap", "Strap the screen", ("screen-loose",), (10, 15, 25), 1, _fit, hazards=("tipping",), bought=True,
    whats=("screen strap",), done_when="a gentle pull tips nothing",
)  # fmt: skip
