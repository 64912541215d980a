"""Buy a picture that is wide enough for the piece below, or for the bare wall.

Fits: a framed picture in the catalogue of 0.55 to 0.75 of the piece's width (0.50 to 0.75 of a bare wall's clear
span) that stays below the ceiling; it takes the place of a single small picture; an old hole that shows is filled.
Over a long piece with nothing it is simply hung.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.pictures import LADDER_MM, Span, group_at, span_of, span_over
from budgetfix.remedies.products import called, cheapest, of_sort
from budgetfix.room.items import Hung, Piece
from budgetfix.room.survey import Change

LOW, BARE_LOW, HIGH = 0.55, 0.50, 0.75
BELOW_CEILING_MM = 50.0
HOOKS = 2


def _fit(site: Site) -> tuple[Candidate, ...]:
    group = group_at(site)
    piece = site.survey.named.get(site.subject, (None, None))[1]
    if group is not None and len(group.frames) == 1 and group.wall in site.lines:
        return best(KIND, site, _offers(site, span_of(site, group), group.frames[0], group.wall), 3)
    taken = any(one.over == site.subject for one in site.survey.pictures)
    if group is None and isinstance(piece, Piece) and piece.wall in site.lines and not taken:
        return best(KIND, site, _offers(site, span_over(site, piece), None, piece.wall), 3)
    return ()


def _offers(site: Site, span: Span, old: Hung | None, wall: str) -> Iterator[Offer]:
    least = BARE_LOW if span.piece is None else LOW
    for product in of_sort(site, "picture"):
        if product.width is None or product.height is None or span.width <= 0:
            continue
        if least <= product.width / span.width <= HIGH:
            offer = _offer(site, span, old, wall, product)
            if offer is not None:
                yield offer


def _offer(site: Site, span: Span, old: Hung | None, wall: str, product: Product) -> Offer | None:
    wide, tall = product.width or 0.0, product.height or 0.0
    bottom, at = site.tape(span.low(site, tall)), site.tape(span.middle - wide / 2)
    if bottom + tall > span.ceiling - BELOW_CEILING_MM or not 0 <= at <= site.lines[wall].length - wide:
        return None
    if old is not None:
        change = set_on("pictures", old.name, from_left=at, width=wide, height=tall, bottom=bottom)
    else:
        over = span.piece.name if span.piece is not None else ""
        hung = Hung(
            name=f"new {called(product)} over the {over}",
            room=site.room,
            wall=wall,
            from_left=at,
            width=wide,
            height=tall,
            bottom=bottom,
            over=over,
        )
        change = Change("pictures", hung.name, add=hung)
    if not site.fits((change,)):
        return None
    hooks = cheapest(site, "hooks")
    uses = [(product.product, Fraction(1))] + ([(hooks.product, Fraction(HOOKS))] if hooks is not None else [])
    where = f"over the {span.piece.name}" if span.piece is not None else f"on wall {wall}"
    text = (
        f"Hang it {where}: lower edge {site.words(bottom)} above the floor, left edge {site.words(at)} from the left "
        f"corner of wall {wall}"
    )
    least = BARE_LOW if span.piece is None else LOW
    return Offer(
        f"{called(product)} {where}",
        (change,),
        text,
        product.product,
        tuple(uses),
        accepts=f"{site.words(span.width * least)} to {site.words(span.width * HIGH)} wide",
        hazards=("ladder",) if bottom + tall > LADDER_MM else (),
    )


KIND = Kind(
    "bigger-picture",
    "Hang a picture of the right size",
    ("art-too-small", "art-too-wide", "wall-bare", "bed-headless"),
    (20, 40, 60),
    11,
    _fit,
    bought=True,
    whats=("picture", "hooks"),
    hazards=("pins",),
    leaves="pins",
    done_when="it is about two thirds of the piece and a hand above it",
)
