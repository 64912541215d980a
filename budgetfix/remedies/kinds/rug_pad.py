"""Lay a pad under the rug that is there.

Fits: a pad in the catalogue that is smaller than the rug on both sides and covers most of it.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Rug


def _fit(site: Site) -> tuple[Candidate, ...]:
    rug = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(rug, Rug) or rug.pad:
        return ()
    long, short = max(rug.width, rug.depth), min(rug.width, rug.depth)
    offers = []
    for pad in of_sort(site, "pad"):
        if pad.width is None or pad.depth is None:
            continue
        sides = max(pad.width, pad.depth), min(pad.width, pad.depth)
        if sides[0] <= long and sides[1] <= short and sides[0] >= 0.7 * long and sides[1] >= 0.6 * short:
            change = set_on("rugs", rug.name, pad=True)
            text = (
                f"Roll up the {rug.name}, lay the pad {site.words(site.mm(1, 25))} inside its edges, roll the rug back"
            )
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
