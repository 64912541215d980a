"""Lean a picture on the piece below: one that is there, or a new one. No hole at all.

Fits: a long low piece with a top (sideboard, desk, dresser and the like, up to 48 in, 1220 mm) that has nothing over
it; a picture of the room that hangs over nothing, or leans elsewhere, of 0.30 to 0.90 of the piece's width, or a new
one of 0.55 to 0.75; under the ceiling. Not for beds and seats, where it would fall on heads, and not where toddlers
or children are: a leaned frame comes down at a pull. A dot of removable putty at the top keeps it from sliding.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.pictures import span_over
from budgetfix.remedies.products import called, of_sort
from budgetfix.room.groups import ART
from budgetfix.room.items import Hung, Piece
from budgetfix.room.survey import Change

TOPS = (
    "sideboard", "console", "console table", "desk", "dresser", "chest of drawers", "cabinet", "shelf unit",
    "shoe cabinet", "screen bench",
)  # fmt: skip
HIGHEST_IN, HIGHEST_MM, BELOW_CEILING_MM = 48.0, 1220.0, 100.0
NARROWEST, WIDEST, LOW, HIGH = 0.30, 0.90, 0.55, 0.75


def _fit(site: Site) -> tuple[Candidate, ...]:
    piece, home = site.survey.named.get(site.subject, (None, None))[1], site.survey.household
    if not isinstance(piece, Piece) or piece.wall not in site.lines or home.children or home.toddlers:
        return ()
    low_enough = piece.height <= site.mm(HIGHEST_IN, HIGHEST_MM) + 0.1
    taken = piece.name in {one.on for one in site.survey.pictures} | {one.on for one in site.survey.lights}
    if piece.what not in TOPS or not low_enough or taken:
        return ()
    return best(KIND, site, (*_owned(site, piece), *_bought(site, piece)), 2)


def _owned(site: Site, piece: Piece) -> Iterator[Offer]:
    for frame in sorted(site.survey.pictures, key=lambda one: one.name):
        alone = frame.room == site.room and frame.what in ART and not frame.group and (not frame.over or frame.leaned)
        if not alone or not NARROWEST * piece.width <= frame.width <= WIDEST * piece.width:
            continue
        change = set_on(
            "pictures", frame.name, wall=piece.wall, from_left=_left(site, piece, frame.width), bottom=piece.height,
            over=piece.name, leaned=True, fixing="none",
        )  # fmt: skip
        yield from _leaned(site, piece, change, frame.name, frame.height, frame.name, ())


def _bought(site: Site, piece: Piece) -> Iterator[Offer]:
    for product in of_sort(site, "picture"):
        wide, tall = product.width or 0.0, product.height or 0.0
        if not LOW * piece.width <= wide <= HIGH * piece.width:
            continue
        hung = Hung(
            name=f"new {called(product)} on the {piece.name}", room=site.room, wall=piece.wall, width=wide, height=tall,
            from_left=_left(site, piece, wide), bottom=piece.height, over=piece.name, leaned=True, fixing="none",
        )  # fmt: skip
        change, use = Change("pictures", hung.name, add=hung), ((product.product, Fraction(1)),)
        yield from _leaned(site, piece, change, called(product), tall, product.product, use)


def _left(site: Site, piece: Piece, wide: float) -> float:
    return site.tape(span_over(site, piece).middle - wide / 2)


def _leaned(
    site: Site, piece: Piece, change: Change, name: str, tall: float, variant: str,
    uses: tuple[tuple[str, Fraction], ...],
) -> Iterator[Offer]:  # fmt: skip
    top = piece.height + tall
    if top > site.survey.facts(site.room).ceiling - BELOW_CEILING_MM or not site.fits((change,)):
        return
    left = dict(change.set)["from_left"] if change.add is None else getattr(change.add, "from_left", 0.0)
    text = (
        f"Lean {name} on the {piece.name}: left edge {site.words(float(left or 0))} from the left corner of "
        f"wall {piece.wall}, lower edge on the top {site.words(piece.height)} above the floor, foot a hand off the "
        "wall, a dot of removable putty behind its upper corners"
    )
    yield Offer(f"Lean {name} on the {piece.name}", (change,), text, variant, uses)


KIND = Kind(
    "lean-picture", "Lean a picture on the piece below", ("wall-bare",), (10, 20, 30), 11, _fit, whats=("picture",),
    leaves="nothing", done_when="it stands firm when the table is bumped",
)  # fmt: skip
