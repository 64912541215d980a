"""Shorten panels that lie on the floor with iron-on hem tape.

Fits: floor-length cloth of which more than 1 in (25 mm) lies on the floor; hem tape in the catalogue.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.products import cheapest
from budgetfix.remedies.rods import CLEAR_MM, window_at


def _fit(site: Site) -> tuple[Candidate, ...]:
    at, tape = window_at(site), cheapest(site, "hem tape")
    if at is None or tape is None or at.curtain.length != "floor" or at.curtain.hem >= -25.0:
        return ()
    change = set_on("curtains", at.curtain.name, hem=CLEAR_MM)
    text = f"Let the panels hang a day, pin the hem {site.words(CLEAR_MM)} above the floor, iron the tape in"
    use = ((tape.product, Fraction(1)),)
    offer = Offer("Shorten the panels with iron-on tape", (change,), text, "", use, subject=at.window.name)
    return (candidate(KIND, site, offer),)


KIND = Kind(
    "hem-tape",
    "Shorten panels with hem tape",
    ("hem-off-floor",),
    (20, 30, 45),
    9,
    _fit,
    bought=True,
    whats=("hem tape",),
    done_when="the hems just clear the floor",
)
