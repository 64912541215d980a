"""Put brighter lamps into the fittings that are there.

Fits: LED lamps in the catalogue that give more light than a ceiling light or pendant has now; the smallest that brings the room
to about 150 lm for each square metre, and the next larger one.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.products import called, of_sort

FITTINGS = ("ceiling", "pendant")


def _fit(site: Site) -> tuple[Candidate, ...]:
    offers = []
    for light in sorted(site.survey.lights, key=lambda one: one.name):
        if light.room != site.room or light.what not in FITTINGS:
            continue
        better = [one for one in of_sort(site, "lamp") if (one.lumens or 0.0) > light.lumens * 1.1]
        better.sort(key=lambda one: (one.lumens or 0.0, one.product))
        for lamp in better[:3]:
            change = set_on("lights", light.name, lumens=lamp.lumens, kelvin=lamp.kelvin or light.kelvin)
            text = f"Switch off, let it cool, change the lamp in the {light.name}"
            use = ((lamp.product, Fraction(1)),)
            name = f"{called(lamp)} in the {light.name}"
            offers.append(Offer(name, (change,), text, f"{light.name}~{lamp.product}", use))
    return tuple(candidate(KIND, site, offer) for offer in offers)


KIND = Kind(
    "brighter-lamps", "Put in brighter lamps", ("room-dim",), (3, 5, 10), 12, _fit, hazards=("lamp", "ladder"), bought=True,
    whats=("lamp",), done_when="every corner of the room is lit",
)  # fmt: skip
