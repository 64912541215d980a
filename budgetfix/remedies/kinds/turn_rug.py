"""Turn the rug that is there so that its long side runs along the main seat, and slide it under.

Fits: a rectangular rug of the seating group that stays in the room when it is turned.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.moves import edges
from budgetfix.remedies.rugs import best_laid, rug_fields, seat_of
from budgetfix.room.items import Rug


def _fit(site: Site) -> tuple[Candidate, ...]:
    rug = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(rug, Rug) or rug.round or rug.under or seat_of(site) is None:
        return ()
    long, short = max(rug.width, rug.depth), min(rug.width, rug.depth)
    offers = []
    for number, laid in enumerate(best_laid(site, rug, long, short)):
        change = set_on("rugs", rug.name, **rug_fields(laid))
        text = f"Turn the {rug.name} along the main seat: {edges(site, laid)}"
        name = f"Turn the {rug.name} along the main seat and slide it under"
        offers.append(Offer(name, (change,), text, str(number) if number else ""))
    return tuple(candidate(KIND, site, offer) for offer in offers)


KIND = Kind(
    "turn-rug", "Turn the rug along the main seat",
    ("rug-across", "rug-misses-seats", "rug-shorter-than-sofa"), (10, 15, 25), 7, _fit,
    done_when="the long side runs along the seat and its front feet stand on the rug",
)  # fmt: skip
