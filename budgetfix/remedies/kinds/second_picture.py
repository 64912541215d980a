"""Buy one or two more pictures and hang them beside the one that is there, as one group.

Fits: a single picture over a piece, framed pictures in the catalogue about as tall (within 0.8 to 1.25 of its
height), so that the group is 0.55 to 0.80 of the piece's width, gaps 2 in (50 mm). The picture that is there moves
along; its old hole is filled where it shows.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.pictures import GAP_IN, GAP_MM, Span, group_at, in_a_row, ladder, says, span_of
from budgetfix.remedies.products import called, cheapest, of_sort
from budgetfix.room.items import Hung
from budgetfix.room.survey import Change, moved

LOW, HIGH = 0.55, 0.80
SHORTER, TALLER = 0.80, 1.25
HOOKS = 2


def _fit(site: Site) -> tuple[Candidate, ...]:
    group = group_at(site)
    if group is None or len(group.frames) != 1 or group.wall not in site.lines:
        return ()
    span = span_of(site, group)
    return () if span.piece is None else best(KIND, site, _offers(site, span, group.frames[0]), 3)


def _offers(site: Site, span: Span, old: Hung) -> Iterator[Offer]:
    gap = site.mm(GAP_IN, GAP_MM)
    for product in of_sort(site, "picture"):
        wide, tall = product.width or 0.0, product.height or 0.0
        for more in (1, 2):
            total = old.width + more * (wide + gap)
            if LOW * span.width <= total <= HIGH * span.width and SHORTER <= tall / old.height <= TALLER:
                offer = _offer(site, span, old, product, more)
                if offer is not None:
                    yield offer
                break


def _offer(site: Site, span: Span, old: Hung, product: Product, more: int) -> Offer | None:
    new = [
        Hung(
            name=f"new {called(product)} {number} by {old.name}",
            room=site.room,
            wall=old.wall,
            over=old.over,
            width=product.width or 0.0,
            height=product.height or 0.0,
        )
        for number in range(1, more + 1)
    ]
    row = [old, new[0]] if more == 1 else [new[0], old, new[1]]
    group = old.group or old.name
    placed = in_a_row(site, row, span, site.mm(GAP_IN, GAP_MM), (("group", group),))
    fresh = {one.name: one for one in new}
    changes = tuple(_hung(change, fresh) for change in placed)
    after = site.survey.changed(changes)
    high = max(one.bottom + one.height for one in after.pictures if one.name in {old.name, *fresh})
    if not site.fits(changes) or high > span.ceiling:
        return None
    hooks = cheapest(site, "hooks")
    uses = [(product.product, Fraction(more))]
    uses += [(hooks.product, Fraction(HOOKS * more))] if hooks is not None else []
    word = "Another" if more == 1 else "Two of"
    return Offer(
        f"{word} {called(product)} beside {old.name}",
        changes,
        says(site, changes),
        product.product,
        tuple(uses),
        hazards=ladder(site, changes),
    )


def _hung(change: Change, fresh: dict[str, Hung]) -> Change:
    """Setting a frame that is new means adding it there."""
    new = fresh.get(change.item)
    return change if new is None else Change("pictures", new.name, add=moved(new, **dict(change.set)))


KIND = Kind(
    "second-picture",
    "Hang more pictures beside the one that is there",
    ("art-too-small",),
    (30, 60, 100),
    11,
    _fit,
    bought=True,
    whats=("picture", "hooks"),
    hazards=("pins",),
    leaves="pins",
    done_when="the group is about two thirds of the piece, gaps even, middles level",
)
