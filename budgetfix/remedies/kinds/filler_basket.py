"""Stand a basket about as tall as the bench right beside it: it counts to the bench's width.

Fits: a basket in the catalogue within 6 in (150 mm) of the bench's height, and free floor beside the bench.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.remedies.products import called, of_sort
from budgetfix.remedies.screens import screen_and_bench
from budgetfix.room.items import Piece
from budgetfix.room.survey import Change


def _fit(site: Site) -> tuple[Candidate, ...]:
    found = screen_and_bench(site)
    if found is None:
        return ()
    bench = found[1]
    offers = []
    for basket in of_sort(site, "basket"):
        if basket.height is None or basket.width is None or abs(basket.height - bench.height) > site.mm(6, 150):
            continue
        for side, at in (("left", bench.from_left - basket.width - 20), ("right", bench.from_left + bench.width + 20)):
            piece = Piece(
                name=f"new {basket.product}", room=site.room, what="basket", wall=bench.wall, from_left=max(0.0, at),
                width=basket.width, depth=basket.depth or basket.width, height=basket.height,
            )  # fmt: skip
            change = Change("furniture", piece.name, add=piece)
            if at >= 0 and site.fits((change,)):
                text = f"Stand it right beside the {bench.name}, on its {side}"
                use = ((basket.product, Fraction(1)),)
                name = f"{called(basket)} on the {side} of the {bench.name}"
                offers.append(Offer(name, (change,), text, f"{basket.product}~{side}", use))
    return tuple(candidate(KIND, site, offer) for offer in offers[:4])


KIND = Kind(
    "filler-basket", "Stand a basket beside the bench", ("console-too-narrow",), (5, 10, 20), 12, _fit, bought=True,
    whats=("basket",), done_when="bench and basket look like one piece",
)  # fmt: skip
