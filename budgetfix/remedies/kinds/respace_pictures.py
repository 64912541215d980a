"""Give the frames of a row even gaps, 2 1/2 in (60 mm) each, about the middle of the piece or the wall, on one line.

Fits: two frames or more side by side, no wider together than 0.9 of what they hang over.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.remedies.pictures import group_at, in_a_row, ladder, says, span_of

WIDEST = 0.9


def _fit(site: Site) -> tuple[Candidate, ...]:
    group = group_at(site)
    if group is None or len(group.frames) < 2 or group.wall not in site.lines:
        return ()
    gap, span = site.mm(2.5, 60), span_of(site, group)
    frames = sorted(group.frames, key=lambda frame: (frame.from_left, frame.name))
    total = sum(frame.width for frame in frames) + gap * (len(frames) - 1)
    changes = in_a_row(site, frames, span, gap)
    if total > WIDEST * span.width or not site.fits(changes):
        return ()
    text = f"Hang the frames with even gaps of {site.words(gap)}: {says(site, changes)}"
    offer = Offer(f"Even out {group.name}", changes, text, hazards=ladder(site, changes))
    return (candidate(KIND, site, offer),)


KIND = Kind(
    "respace-pictures", "Even out the gaps of a row of pictures",
    ("art-gaps-uneven", "art-gaps-wide", "art-out-of-level", "art-off-height"), (35, 60, 90), 11, _fit,
    hazards=("pins",), leaves="pins", done_when="all gaps are the same and a level shows no slope",
)  # fmt: skip
