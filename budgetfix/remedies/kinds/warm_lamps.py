"""Give every lamp of the room the same warm colour.

Fits: LED lamps in the catalogue within 150 K of 2700 K; each light that is farther off gets the smallest one that
gives at least 0.9 of its light, else the brightest one.
"""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.products import of_sort
from budgetfix.room.survey import Change

WARM, SPREAD = 2700.0, 300.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    lamps = [one for one in of_sort(site, "lamp") if abs((one.kelvin or 0.0) - WARM) <= SPREAD / 2]
    lamps.sort(key=lambda one: (one.lumens or 0.0, one.price_minor, one.product))
    changes: list[Change] = []
    uses: Counter[str] = Counter()
    for light in sorted(site.survey.lights, key=lambda one: one.name):
        if light.room == site.room and abs(light.kelvin - WARM) > SPREAD / 2:
            fits = [one for one in lamps if (one.lumens or 0.0) >= light.lumens * 0.9] or lamps[-1:]
            if not fits:
                return ()
            changes.append(set_on("lights", light.name, kelvin=fits[0].kelvin, lumens=fits[0].lumens))
            uses[fits[0].product] += 1
    if not changes:
        return ()
    text = "Switch off, let them cool, change: " + ", ".join(change.item for change in changes)
    used = tuple((product, Fraction(count)) for product, count in sorted(uses.items()))
    return (candidate(KIND, site, Offer("The same warm lamps all round", tuple(changes), text, "", used)),)


KIND = Kind(
    "warm-lamps",
    "Put in lamps of one colour",
    ("lamp-colors-mixed",),
    (5, 10, 20),
    12,
    _fit,
    hazards=("lamp", "ladder"),
    bought=True,
    whats=("lamp",),
    done_when="all lamps look alike",
)
