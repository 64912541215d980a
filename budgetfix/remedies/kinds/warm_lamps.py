"""Give every lamp of the room the same warm colour.

Fits: LED lamps in the catalogue within 150 K of 2700 K; each light that is farther off gets the smallest one that
gives at least 0.9 of its light, else the brightest one.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.remedies.lamps import alike
from budgetfix.remedies.products import of_sort

WARM = 2700.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    found = alike(site, WARM, of_sort(site, "lamp"))
    if found is None:
        return ()
    changes, goods = found
    text = "Switch off, let them cool, change: " + ", ".join(change.item for change in changes)
    return (candidate(KIND, site, Offer("The same warm lamps all round", changes, text, "", goods)),)


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
