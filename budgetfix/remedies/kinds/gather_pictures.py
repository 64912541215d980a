"""Gather the pictures of a wall over the piece, side by side, middles on one line.

Fits: pictures that hang alone on the same wall, beside a group over a piece, whose frames together are at most 0.9 of the
piece's width. Gaps 2 in (50 mm); the tallest frame's lower edge goes 7 in (180 mm) above the piece.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.pictures import group_at, piece_below, says
from budgetfix.room.groups import ART


def _fit(site: Site) -> tuple[Candidate, ...]:
    group = group_at(site)
    piece = piece_below(site, group) if group is not None else None
    if group is None or piece is None:
        return ()
    mine = {frame.name for frame in group.frames}
    alone = [
        one
        for one in site.survey.pictures
        if one.what in ART
        and one.wall == group.wall
        and one.room == site.room
        and one.name not in mine
        and not one.over
    ]
    frames = [*group.frames, *sorted(alone, key=lambda one: one.name)]
    gap = site.mm(2, 50)
    total = sum(frame.width for frame in frames) + gap * (len(frames) - 1)
    if not alone or total > 0.9 * piece.width:
        return ()
    tall = max(frame.height for frame in frames)
    low, at, changes = piece.height + site.mm(7, 180), piece.from_left + (piece.width - total) / 2, []
    for frame in frames:
        bottom = site.tape(low + (tall - frame.height) / 2)
        changes.append(
            set_on("pictures", frame.name, from_left=site.tape(at), bottom=bottom, over=piece.name, group=group.name)
        )
        at += frame.width + gap
    if not site.fits(changes):
        return ()
    offer = Offer(
        f"Gather {len(frames)} pictures over the {piece.name}", tuple(changes), says(site, changes), wall=group.wall
    )
    return (candidate(KIND, site, offer),)


KIND = Kind(
    "gather-pictures", "Gather pictures over a piece", ("art-too-small", "art-off-height", "art-off-center"), (60, 100, 160),
    11, _fit, hazards=("strips",), done_when="the group is about two thirds of the piece, gaps even, middles level",
)  # fmt: skip
