"""Buy a picture that is wide enough for the piece below, or a second one beside the one that is there.

Fits: over a piece, a framed picture of 0.55 to 0.75 of its width that stays below the ceiling; it takes the place of a single
small picture, whose old hole stays to be filled. Over a long piece with nothing, it is simply hung.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.pictures import group_at, piece_below
from budgetfix.remedies.products import called, cheapest, of_sort
from budgetfix.room.items import Hung, Piece
from budgetfix.room.survey import Change

LOW, HIGH, AIM = 0.55, 0.75, 0.65


def _fit(site: Site) -> tuple[Candidate, ...]:
    group = group_at(site)
    piece = piece_below(site, group) if group is not None else site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(piece, Piece) or piece.wall not in site.lines or (group is not None and len(group.frames) != 1):
        return ()
    old = group.frames[0] if group is not None else None
    sized = [one for one in of_sort(site, "picture") if one.width and LOW <= one.width / piece.width <= HIGH]
    sized.sort(key=lambda one: (abs((one.width or 0.0) / piece.width - AIM), one.product))
    offers = [_offer(site, piece, old, product) for product in sized[:3]]
    return tuple(candidate(KIND, site, offer) for offer in offers if offer is not None)


def _offer(site: Site, piece: Piece, old: Hung | None, product: Product) -> Offer | None:
    wide, tall = product.width or 0.0, product.height or 0.0
    bottom = piece.height + site.mm(7, 180)
    at = piece.from_left + piece.width / 2 - wide / 2
    if bottom + tall > site.survey.facts(site.room).ceiling - 50 or at < 0:
        return None
    if old is None:
        hung = Hung(
            name=f"new {product.product}", room=site.room, wall=piece.wall, from_left=at, width=wide, height=tall,
            bottom=bottom, over=piece.name,
        )  # fmt: skip
        change = Change("pictures", hung.name, add=hung)
    else:
        change = set_on("pictures", old.name, from_left=at, width=wide, height=tall, bottom=bottom)
    if not site.fits((change,)):
        return None
    hooks = cheapest(site, "hooks")
    uses = [(product.product, Fraction(1))] + ([(hooks.product, Fraction(2))] if hooks is not None else [])
    text = (
        f"Hang it over the {piece.name}: lower edge {site.words(bottom)} above the floor, left edge {site.words(at)} from the "
        f"left corner of wall {piece.wall}"
    )
    accepts = f"{site.words(piece.width * LOW)} to {site.words(piece.width * HIGH)} wide"
    return Offer(
        f"{called(product)} over the {piece.name}", (change,), text, product.product, tuple(uses), accepts=accepts
    )


KIND = Kind(
    "bigger-picture", "Hang a picture of the right size", ("art-too-small", "wall-bare"), (20, 40, 60), 11, _fit,
    bought=True, whats=("picture", "hooks"), done_when="it is about two thirds of the piece and a hand above it",
)  # fmt: skip
