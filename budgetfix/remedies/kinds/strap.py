"""Fix a tall piece to the wall with a strap, so that it cannot tip.

Fits: a piece that is not fixed; straps in the catalogue. Two straps a piece, one at each side near the top, into the wall and
into the piece's frame.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Piece


def _fit(site: Site) -> tuple[Candidate, ...]:
    thing = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(thing, Piece) or thing.fixed:
        return ()
    offers = []
    for product in of_sort(site, "strap"):
        change = set_on("furniture", thing.name, fixed=True)
        text = f"Find the studs or drill and plug the wall, screw a strap to each side of the {thing.name} near its top, pull tight"
        name = f"{called(product)}: fix the {thing.name}"
        offers.append(Offer(name, (change,), text, product.product, ((product.product, Fraction(1)),), wall=thing.wall))
    return tuple(candidate(KIND, site, offer) for offer in offers[:2])


KIND = Kind(
    "strap", "Strap a tall piece to the wall", ('tall-piece-loose',), (15, 25, 45), 1, _fit, holes=2, hazards=('drill', 'tipping'), tools=(),
    bought=True, whats=("strap",), done_when="a firm pull at the top moves nothing",
)  # fmt: skip
