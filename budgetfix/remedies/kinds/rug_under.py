"""Lay a rug that is large enough under the dining table, or under the bed.

Fits: a rug that belongs to a table or a bed and is too small; the rug itself turned or centred, which costs nothing,
or one of the catalogue, laid either way. Under a table its middle goes under the table's middle; under a bed its
middle goes under the bed's, and it ends 20 in (510 mm) before the foot of the bed; shifted by up to 32 in (800 mm)
where the room ends sooner. With the cheapest pad that reaches under nearly all of it. What stands on the old rug is
lifted off: two people.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.catalog.models import Product
from budgetfix.remedies.better import better
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.moves import edges, inside
from budgetfix.remedies.products import called, of_sort
from budgetfix.remedies.rugs import pad_for, rug_fields
from budgetfix.room.items import Piece, Rug
from budgetfix.room.places import extent, turned
from budgetfix.room.survey import moved

BEFORE_IN, BEFORE_MM = 20.0, 510.0
STEP_MM, STEPS = 100.0, 9


def _fit(site: Site) -> tuple[Candidate, ...]:
    rug = site.survey.named.get(site.subject, (None, None))[1]
    piece = site.survey.named.get(rug.under, (None, None))[1] if isinstance(rug, Rug) else None
    if not isinstance(rug, Rug) or not isinstance(piece, Piece) or piece.wall not in site.lines:
        return ()
    return best(KIND, site, _offers(site, rug, piece), 2)


def _offers(site: Site, old: Rug, piece: Piece) -> Iterator[Offer]:
    sizes: list[tuple[Product | None, float, float]] = [(None, old.width, old.depth)] if site.products is None else []
    sizes += [(one, one.width, one.depth) for one in of_sort(site, "rug") if one.width and one.depth]
    for product, one, other in sizes:
        for number, (wide, deep) in enumerate(dict.fromkeys(((one, other), (other, one)))):
            rug = _laid(site, moved(old, round=old.round if product is None else product.round), piece, (wide, deep))
            if rug is None:
                continue
            offer = _offer(site, rug, piece, product, number)
            if better(site, offer.changes):
                yield offer


def _laid(site: Site, rug: Rug, piece: Piece, size: tuple[float, float]) -> Rug | None:
    """The rug at the piece's wall, as near to its middle (or foot) as the room allows; None where it is too big."""
    (wide, deep), (along, off) = size, extent(piece, site.lines)
    at, gap = piece.from_left + (along - wide) / 2, piece.gap + (off - deep) / 2
    if piece.what == "bed" and not turned(piece, site.lines):
        gap = piece.gap + off + site.mm(BEFORE_IN, BEFORE_MM) - deep
    for shift in (way * step * STEP_MM for step in range(STEPS) for way in (1, -1)):
        aside = min(max(0.0, at), site.lines[piece.wall].length - wide)
        spot = moved(
            rug, wall=piece.wall, from_left=site.tape(aside), gap=site.tape(max(0.0, gap + shift)), width=wide,
            depth=deep,
        )  # fmt: skip
        if aside >= 0 and inside(site, spot):
            return spot
    return None


def _offer(site: Site, rug: Rug, piece: Piece, product: Product | None, number: int) -> Offer:
    """The rug that is there, laid anew (`product` None), or a bought one with its pad."""
    pad = pad_for(site, rug) if product is not None else None
    uses = [(one.product, Fraction(1)) for one in (product, pad) if one is not None]
    first = "roll out the pad, " if pad is not None else ""
    text = (
        f"Lift the {piece.name} and what stands on the rug off; {first}lay the {'rug' if product else rug.name}: "
        f"{edges(site, rug)}; put everything back in its place"
    )
    padded = rug.pad or pad is not None
    change = set_on("rugs", rug.name, **{**rug_fields(rug), "round": rug.round, "pad": padded})
    what = f"{called(product)} under" if product is not None else f"Lay the {rug.name} anew under"
    variant = f"{product.product if product is not None else 'anew'}{'~turned' if number else ''}"
    accepts = f"{site.words(rug.width)} x {site.words(rug.depth)} or a little more" if product is not None else ""
    return Offer(f"{what} the {piece.name}", (change,), text, variant, tuple(uses), accepts=accepts)


KIND = Kind(
    "rug-under", "Lay a larger rug under the table or the bed", ("rug-catches-chairs", "rug-under-bed"), (25, 45, 75),
    7, _fit, people=2, hazards=("lifting",), bought=True, whats=("rug", "pad"), leaves="nothing",
    done_when="a chair pushed back stays on the rug, or bare feet land on it",
)  # fmt: skip
