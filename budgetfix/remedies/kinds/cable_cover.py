"""Cover a lead that crosses a way, stuck down flat.

Fits: a lamp whose lead lies where people walk; covers in the catalogue. Moving the lamp is better where a socket is
near.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Light


def _fit(site: Site) -> tuple[Candidate, ...]:
    thing = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(thing, Light) or not thing.lead_over_route or thing.lead_covered:
        return ()
    offers = []
    for product in of_sort(site, "cable cover"):
        change = set_on("lights", thing.name, lead_covered=True)
        text = f"Clean the floor, stick the cover down over the lead of the {thing.name}"
        name = f"{called(product)} over the lead of the {thing.name}"
        offers.append(Offer(name, (change,), text, product.product, ((product.product, Fraction(1)),)))
    return best(KIND, site, offers, 2)


KIND = Kind(
    "cable-cover", "Cover a lead on the floor", ("cable-across-route",), (10, 20, 30), 12, _fit, hazards=("cord",),
    bought=True, whats=("cable cover",), leaves="peels off", done_when="nothing to trip over",
)  # fmt: skip
