"""Hang a picture that is there over a long piece that has nothing over it.

Fits: a picture or mirror of the room that hangs over nothing (or leans somewhere) and is 0.30 to 0.90 of the piece's
width. Its lower edge goes 7 in (180 mm) above the piece, its middle over the piece's middle. The old hole is filled.
"""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.pictures import in_a_row, ladder, says, span_over
from budgetfix.room.groups import ART
from budgetfix.room.items import Piece

NARROWEST, WIDEST = 0.30, 0.90


def _fit(site: Site) -> tuple[Candidate, ...]:
    piece = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(piece, Piece) or piece.wall not in site.lines:
        return ()
    return best(KIND, site, _offers(site, piece))


def _offers(site: Site, piece: Piece) -> Iterator[Offer]:
    owned = [one for one in site.survey.pictures if one.room == site.room and one.what in ART]
    for frame in sorted(owned, key=lambda one: one.name):
        alone = not frame.group and (not frame.over or frame.leaned)
        if not alone or not NARROWEST * piece.width <= frame.width <= WIDEST * piece.width:
            continue
        belongs = (("wall", piece.wall), ("over", piece.name), ("leaned", False))
        changes = in_a_row(site, (frame,), span_over(site, piece), 0.0, belongs)
        if site.fits(changes):
            text = f"Hang it over the {piece.name}. {says(site, changes)}"
            name = f"Hang {frame.name} over the {piece.name}"
            yield Offer(name, changes, text, frame.name, hazards=ladder(site, changes))


KIND = Kind(
    "move-picture",
    "Hang a picture that is there over a bare piece",
    ("wall-bare", "bed-headless"),
    (10, 20, 35),
    11,
    _fit,
    hazards=("pins",),
    leaves="pins",
    done_when="something hangs a hand above the piece",
)
