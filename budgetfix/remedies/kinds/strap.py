"""Fix a tall piece to the wall with straps, so that it cannot tip.

Fits: a piece that is not fixed and stands with its back within 6 in (150 mm) of a wall; straps in the catalogue. Two
straps a piece, one at each side near the top, into the wall and into the piece's frame.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.pictures import LADDER_MM
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Piece

AGAINST_IN, AGAINST_MM = 6.0, 150.0
BELOW_TOP_MM = 50.0
SETS = ("set", "pair")
"""Units of which one is enough for a piece."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    piece = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(piece, Piece) or piece.fixed or piece.gap > site.mm(AGAINST_IN, AGAINST_MM):
        return ()
    return best(KIND, site, (_offer(site, piece, product) for product in of_sort(site, "strap")), 2)


def _offer(site: Site, piece: Piece, product: Product) -> Offer:
    units = Fraction(1 if product.unit in SETS else 2)
    high = piece.height - BELOW_TOP_MM
    text = (
        f"Screw a strap to each side of the {piece.name} near its top, {site.words(high)} above the floor; find "
        "the studs or drill and plug the wall there, screw the straps on, pull tight"
    )
    name = f"{called(product)}: fix the {piece.name}"
    change = set_on("furniture", piece.name, fixed=True)
    ladder = ("ladder",) if high > LADDER_MM else ()
    use = ((product.product, units),)
    return Offer(name, (change,), text, product.product, use, wall=piece.wall, hazards=ladder)


KIND = Kind(
    "strap",
    "Strap a tall piece to the wall",
    ("tall-piece-loose",),
    (15, 25, 45),
    1,
    _fit,
    holes=2,
    hazards=("drill", "tipping"),
    tools=("drill",),
    bought=True,
    whats=("strap",),
    leaves="plugs",
    done_when="a firm pull at the top moves nothing",
)
