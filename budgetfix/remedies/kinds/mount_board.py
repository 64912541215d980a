"""Put a small picture that is there into a bigger frame, with mount board around it.

Fits: a single picture (no mirror) that is too small for what it hangs over; a frame with board in the catalogue,
upright or lying, of 0.55 to 0.75 of the piece's width (0.50 to 0.75 of a bare wall's clear span), that holds the
picture with a board no wider than the picture itself on each side. It hangs at the right height with its middle over
the piece's middle, below the ceiling.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.better import stays
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.pictures import Span, group_at, ladder, says, span_of
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.items import Hung

LOW, BARE_LOW, HIGH = 0.55, 0.50, 0.75
WIDEST = 3.0
"""Frame over picture, each way: a board as wide as the picture on both sides (common practice)."""
BELOW_CEILING_MM = 50.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    group = group_at(site)
    if group is None or len(group.frames) != 1 or group.wall not in site.lines or group.frames[0].what != "picture":
        return ()
    found = best(KIND, site, _offers(site, span_of(site, group), group.frames[0]), 2)
    return tuple(stays(one) for one in found)


def _offers(site: Site, span: Span, old: Hung) -> Iterator[Offer]:
    for product in of_sort(site, "frame"):
        one, other = product.width or 0.0, product.height or 0.0
        for wide, tall in dict.fromkeys(((one, other), (other, one))):
            least = BARE_LOW if span.piece is None else LOW
            holds = old.width <= wide <= WIDEST * old.width and old.height <= tall <= WIDEST * old.height
            if span.width > 0 and holds and least <= wide / span.width <= HIGH:
                yield from _offer(site, span, old, product, (wide, tall))


def _offer(site: Site, span: Span, old: Hung, product: Product, size: tuple[float, float]) -> Iterator[Offer]:
    wide, tall = size
    bottom, at = site.tape(span.low(site, tall)), site.tape(span.middle - wide / 2)
    change = set_on("pictures", old.name, from_left=at, width=wide, height=tall, bottom=bottom)
    inside = 0 <= at <= site.lines[old.wall].length - wide
    if not inside or bottom + tall > span.ceiling - BELOW_CEILING_MM or not site.fits((change,)):
        return
    text = (
        f"Cut the board to hold {old.name} in its middle, a little more below than above; put both into the frame; "
        f"hang it. {says(site, (change,))}"
    )
    use, lying = ((product.product, Fraction(1)),), "lying" if wide > tall else "upright"
    yield Offer(
        f"{called(product)} around {old.name}", (change,), text, f"{product.product}~{lying}", use,
        hazards=ladder(site, (change,)), accepts=f"about {site.words(wide)} by {site.words(tall)} outside",
    )  # fmt: skip


KIND = Kind(
    "mount-board", "Frame a small picture larger", ("art-too-small",), (20, 40, 60), 11, _fit, hazards=("pins",),
    bought=True, whats=("frame",), leaves="pins",
    done_when="the frame is about two thirds of the piece below, and the picture sits in its middle",
)  # fmt: skip
