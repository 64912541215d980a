"""Stand a headboard at the head of the bed.

Fits: a bed without one whose head is at its wall; a headboard in the catalogue from 1 in (25 mm) narrower than the
mattress to 12 in (300 mm) wider, with room for it on both sides (nightstands stay where they are). The bed comes off
the wall by the headboard's own depth. It is fixed to the bed, so the wall stays whole. The trade's aim is a board as
wide as the mattress or a little wider: common practice.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.remedies.better import stays
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Piece
from budgetfix.room.places import extent, turned
from budgetfix.room.survey import Change

NARROWER_IN, NARROWER_MM, WIDER_IN, WIDER_MM = 1.0, 25.0, 12.0, 300.0
AT_WALL_IN, AT_WALL_MM = 6.0, 150.0
THICK_MM = 60.0
"""Of a board whose depth is not given (common practice)."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    bed = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(bed, Piece) or bed.what != "bed" or bed.headboard or bed.wall not in site.lines:
        return ()
    if turned(bed, site.lines) or bed.gap > site.mm(AT_WALL_IN, AT_WALL_MM):
        return ()
    return tuple(stays(one) for one in best(KIND, site, _offers(site, bed), 3))


def _offers(site: Site, bed: Piece) -> Iterator[Offer]:
    least, most = bed.width - site.mm(NARROWER_IN, NARROWER_MM), bed.width + site.mm(WIDER_IN, WIDER_MM)
    for product in of_sort(site, "headboard"):
        if product.width is None or not least - 0.1 <= product.width <= most + 0.1:
            continue
        thick, mattress = product.depth or THICK_MM, bed.height if bed.seat is None else bed.seat
        tall = max(bed.height, product.height or 0.0)
        change = set_on(
            "furniture", bed.name, headboard=True, depth=bed.depth + thick, height=tall, seat=mattress
        )  # fmt: skip
        if site.fits((change,)) and site.fits(_probe(site, bed, product.width, thick)):
            text = (
                f"Pull the {bed.name} {site.words(thick)} off wall {bed.wall}, stand the board at its head, middle on "
                f"the bed's middle, screw it to the bed's frame, push bed and board back to the wall; "
                f"top {site.words(tall)} above the floor"
            )
            wide = f"{site.words(least)} to {site.words(most)} wide"
            use = ((product.product, Fraction(1)),)
            yield Offer(f"{called(product)} at the {bed.name}", (change,), text, product.product, use, accepts=wide)


def _probe(site: Site, bed: Piece, wide: float, thick: float) -> tuple[Change, ...]:
    """The board as a piece of its own behind the bed: does it find room between what stands there?"""
    along, _ = extent(bed, site.lines)
    board = Piece(
        name=f"board of the {bed.name}", room=site.room, what="headboard", wall=bed.wall,
        from_left=bed.from_left + (along - wide) / 2, width=wide, depth=thick, height=bed.height, gap=bed.gap,
    )  # fmt: skip
    return (set_on("furniture", bed.name, gap=bed.gap + thick), Change("furniture", board.name, add=board))


KIND = Kind(  # help: the bed is pulled out together and the board held upright; the rest is for one (common practice)
    "headboard", "Stand a headboard at the bed", ("bed-headless",), (30, 60, 90), 8, _fit, help=20,
    hazards=("lifting",), bought=True, whats=("headboard",), leaves="nothing",
    done_when="the board stands firm behind the pillows and the bed is back at the wall",
)  # fmt: skip
