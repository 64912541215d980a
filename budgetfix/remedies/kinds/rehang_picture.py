"""Hang the pictures that are there lower or higher, and over the middle.

Fits: every group of pictures. Over a piece the lowest edge goes 7 in (180 mm) above it and the middle over the piece's middle;
on a bare wall the middle goes to 58 1/2 in (1490 mm). Frames keep their places to each other. Old holes stay to be filled.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.remedies.pictures import group_at, moved_frames, piece_below, says


def _fit(site: Site) -> tuple[Candidate, ...]:
    group = group_at(site)
    if group is None:
        return ()
    piece = piece_below(site, group)
    if piece is None:
        up, over = site.mm(58.5, 1490) - (group.low + group.high) / 2, 0.0
    else:
        up = piece.height + site.mm(7, 180) - group.low
        over = piece.from_left + piece.width / 2 - group.middle if piece.wall == group.wall else 0.0
    offers = []
    for variant, aside in (("", 0.0), ("centred", over)):
        changes = moved_frames(site, group, aside, up)
        if changes and not (variant and abs(over) < 10) and site.fits(changes):
            text = f"Rehang {group.name}: {says(site, changes)}"
            offers.append(Offer(f"Rehang {group.name} at the right height", changes, text, variant, wall=group.wall))
    return tuple(candidate(KIND, site, offer) for offer in offers)


KIND = Kind(
    "rehang-picture", "Rehang pictures at the right height and place",
    ("art-off-height", "art-off-center", "art-crowds-curtains"), (10, 20, 35), 11, _fit,
    done_when="the lower edge is a hand above the piece, and the middle over its middle",
)  # fmt: skip
