"""Buy a nightstand whose top is level with the mattress, or the one that is missing on the other side of the bed.

Fits: a nightstand in the catalogue within 4 in (100 mm) of the mattress that finds room where the old one stands, or
beside the head of a bed that has one side without.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.moves import edges, inside
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Piece
from budgetfix.room.places import extent, turned
from budgetfix.room.survey import Change

LEVEL_IN, LEVEL_MM, BESIDE_MM = 4.0, 100.0, 30.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    thing = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(thing, Piece) or thing.wall not in site.lines:
        return ()
    if thing.what == "nightstand":
        return best(KIND, site, _replaced(site, thing), 2)
    return best(KIND, site, _missing(site, thing), 2) if thing.what == "bed" else ()


def _level(site: Site, bed: Piece | None) -> list[Product]:
    mattress = None if bed is None else bed.height if bed.seat is None else bed.seat
    stands = [one for one in of_sort(site, "nightstand") if one.height is not None and one.width is not None]
    return [
        one
        for one in stands
        if mattress is not None and abs((one.height or 0.0) - mattress) <= site.mm(LEVEL_IN, LEVEL_MM)
    ]


def _replaced(site: Site, stand: Piece) -> Iterator[Offer]:
    beds = [one for one in site.survey.furniture if one.room == site.room and one.what == "bed"]
    bed = next((one for one in beds if one.name == stand.at), beds[0] if beds else None)
    for product in _level(site, bed):
        tall = product.height or stand.height
        change = set_on("furniture", stand.name, width=product.width, depth=product.depth or stand.depth, height=tall)
        if site.fits((change,)):
            text = f"Stand it where the {stand.name} stood, top {site.words(tall)} above the floor"
            use = ((product.product, Fraction(1)),)
            yield Offer(f"{called(product)} in place of the {stand.name}", (change,), text, product.product, use)


def _missing(site: Site, bed: Piece) -> Iterator[Offer]:
    along, _ = extent(bed, site.lines)
    for product in _level(site, bed):
        wide = product.width or 0.0
        sides = (("left", bed.from_left - wide - BESIDE_MM), ("right", bed.from_left + along + BESIDE_MM))
        for side, at in sides:
            if turned(bed, site.lines) or at < 0:
                continue
            stand = Piece(
                name=f"new {called(product)} by the {bed.name}",
                room=site.room,
                what="nightstand",
                wall=bed.wall,
                from_left=site.tape(at),
                width=wide,
                depth=product.depth or wide,
                height=product.height or 0.0,
                at=bed.name,
            )
            change = Change("furniture", stand.name, add=stand)
            if inside(site, stand) and site.fits((change,)):
                text = f"Stand it beside the {bed.name}: {edges(site, stand)}"
                use = ((product.product, Fraction(1)),)
                name = f"{called(product)} on the other side of the {bed.name}"
                yield Offer(name, (change,), text, f"{product.product}~{side}", use)


KIND = Kind(
    "nightstands",
    "Stand a nightstand of the right height",
    ("nightstand-off-height", "bed-lopsided"),
    (20, 40, 60),
    8,
    _fit,
    bought=True,
    whats=("nightstand",),
    done_when="its top is level with the mattress",
)
