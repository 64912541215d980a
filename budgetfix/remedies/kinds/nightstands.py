"""Buy a nightstand whose top is level with the mattress.

Fits: a nightstand in the catalogue within 4 in (100 mm) of the mattress that finds room where the old one stands.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Piece


def _fit(site: Site) -> tuple[Candidate, ...]:
    stand = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(stand, Piece) or stand.what != "nightstand":
        return ()
    beds = [one for one in site.survey.furniture if one.room == site.room and one.what == "bed"]
    bed = next((one for one in beds if one.name == stand.at), beds[0] if beds else None)
    if bed is None or bed.seat is None:
        return ()
    offers = []
    for product in of_sort(site, "nightstand"):
        if product.height is None or abs(product.height - bed.seat) > site.mm(4, 100):
            continue
        change = set_on(
            "furniture", stand.name, width=product.width or stand.width, depth=product.depth or stand.depth,
            height=product.height,
        )  # fmt: skip
        if site.fits((change,)):
            text = f"Stand it where the {stand.name} stood, top {site.words(product.height)} above the floor"
            offers.append(
                Offer(
                    f"{called(product)} by the {bed.name}",
                    (change,),
                    text,
                    product.product,
                    ((product.product, Fraction(1)),),
                )
            )
    return tuple(candidate(KIND, site, offer) for offer in offers[:2])


KIND = Kind(
    "nightstands", "Stand a nightstand of the right height", ("nightstand-off-height",), (20, 40, 60), 8, _fit, bought=True,
    whats=("nightstand",), done_when="its top is level with the mattress",
)  # fmt: skip
