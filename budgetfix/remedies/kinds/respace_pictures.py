"""Give the frames of a row even gaps, 2 1/2 in (60 mm) each, about the same middle, on one line.

Fits: two frames or more side by side.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.pictures import group_at, piece_below, says


def _fit(site: Site) -> tuple[Candidate, ...]:
    group = group_at(site)
    if group is None or len(group.frames) < 2:
        return ()
    gap = site.mm(2.5, 60)
    total = sum(frame.width for frame in group.frames) + gap * (len(group.frames) - 1)
    piece = piece_below(site, group)
    low = group.low if piece is None else piece.height + site.mm(7, 180)
    tall = max(frame.height for frame in group.frames)
    at, changes = group.middle - total / 2, []
    for frame in sorted(group.frames, key=lambda frame: frame.from_left):
        bottom = low + (tall - frame.height) / 2
        changes.append(set_on("pictures", frame.name, from_left=site.tape(at), bottom=site.tape(bottom)))
        at += frame.width + gap
    if not site.fits(changes):
        return ()
    text = f"Hang the frames with even gaps of {site.words(gap)}: {says(site, changes)}"
    return (candidate(KIND, site, Offer(f"Even out {group.name}", tuple(changes), text, wall=group.wall)),)


KIND = Kind(
    "respace-pictures", "Even out the gaps of a row of pictures",
    ("art-gaps-uneven", "art-gaps-wide", "art-out-of-level"), (35, 60, 90), 11, _fit,
    done_when="all gaps are the same and a level shows no slope",
)  # fmt: skip
