"""Hang the pictures that are there lower or higher, and over the middle.

Fits: every group of pictures. Over a piece the lowest edge goes 7 in (180 mm) above it and the middle over the
piece's middle; on a bare wall the middle goes to 58 1/2 in (1490 mm) above the floor and, in a second candidate, over
the middle of the clear wall. Frames keep their places to each other. Old holes that show are filled.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.remedies.pictures import group_at, ladder, moved_frames, says, span_of

OFF_MM = 10.0


def _fit(site: Site) -> tuple[Candidate, ...]:
    group = group_at(site)
    if group is None or group.wall not in site.lines:
        return ()
    span = span_of(site, group)
    up = span.low(site, group.high - group.low) - group.low
    same_wall = span.piece is None or span.piece.wall == group.wall
    over = span.middle - group.middle if same_wall and span.width > group.width else 0.0
    offers = []
    for variant, aside in (("", 0.0), ("centred", over)):
        changes = moved_frames(group, aside, up)
        if changes and not (variant and abs(over) < OFF_MM) and site.fits(changes):
            words = "in the middle, at the right height" if variant else "at the right height"
            text = f"Rehang {group.name}: {says(site, changes)}"
            offers.append(Offer(f"Rehang {group.name} {words}", changes, text, variant, hazards=ladder(site, changes)))
    return tuple(candidate(KIND, site, offer) for offer in offers)


KIND = Kind(
    "rehang-picture", "Rehang pictures at the right height and place",
    ("art-off-height", "art-off-center", "art-crowds-curtains"), (10, 20, 35), 11, _fit,
    hazards=("pins",), leaves="pins",
    done_when="the lower edge is a hand above the piece, and the middle over its middle",
)  # fmt: skip
