"""Lay a pad under the rug that is there.

Fits: a pad in the catalogue that reaches under 85 % of both sides of the rug or more; a larger one is cut to size.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.remedies.rugs import reaches
from budgetfix.room.items import Rug


def _fit(site: Site) -> tuple[Candidate, ...]:
    rug = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(rug, Rug) or rug.pad:
        return ()
    offers = []
    for pad in of_sort(site, "pad"):
        if reaches(pad, rug):
            change = set_on("rugs", rug.name, pad=True)
            inside = site.words(site.mm(1, 25))
            text = f"Roll up the {rug.name}, cut the pad {inside} inside its edges, lay it, roll the rug back"
            offers.append(
                Offer(
                    f"{called(pad)} under the {rug.name}", (change,), text, pad.product, ((pad.product, Fraction(1)),)
                )
            )
    return best(KIND, site, offers, 2)


KIND = Kind(
    "rug-pad",
    "Lay a pad under the rug",
    ("rug-slides",),
    (10, 15, 25),
    7,
    _fit,
    bought=True,
    whats=("pad",),
    done_when="the rug does not move when you push it with a foot",
)
