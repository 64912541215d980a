"""Gather the pictures of a wall over the piece, side by side, middles on one line.

Fits: pictures of the room that hang over nothing, and a group over a piece, whose frames together are at most 0.9 of
the piece's width. Gaps 2 in (50 mm); the tallest frame's lower edge goes 7 in (180 mm) above the piece. Old holes
that show are filled.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.remedies.pictures import GAP_IN, GAP_MM, group_at, in_a_row, ladder, piece_below, says, span_over
from budgetfix.room.groups import ART

WIDEST = 0.9


def _fit(site: Site) -> tuple[Candidate, ...]:
    group = group_at(site)
    piece = piece_below(site, group) if group is not None else None
    if group is None or piece is None or piece.wall not in site.lines:
        return ()
    mine = {frame.name for frame in group.frames}
    free = [one for one in site.survey.pictures if one.room == site.room and one.what in ART and not one.over]
    alone = sorted((one for one in free if one.name not in mine and not one.group), key=lambda one: one.name)
    frames = [*group.frames, *alone]
    gap = site.mm(GAP_IN, GAP_MM)
    total = sum(frame.width for frame in frames) + gap * (len(frames) - 1)
    if not alone or total > WIDEST * piece.width:
        return ()
    belongs = (("wall", piece.wall), ("over", piece.name), ("group", group.name))
    changes = in_a_row(site, frames, span_over(site, piece), gap, belongs)
    if not site.fits(changes):
        return ()
    text = f"Tape paper templates to the wall first. {says(site, changes)}"
    name = f"Gather {len(frames)} pictures over the {piece.name}"
    return (candidate(KIND, site, Offer(name, changes, text, hazards=ladder(site, changes))),)


KIND = Kind(
    "gather-pictures",
    "Gather pictures over a piece",
    ("art-too-small", "art-off-height", "art-off-center"),
    (60, 100, 160),
    11,
    _fit,
    hazards=(
        "pins",
        "strips",
    ),
    leaves="pins",
    done_when="the frames hang as one group, gaps even, middles level",
)
