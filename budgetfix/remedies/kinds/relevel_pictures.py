"""Bring the frames of a row to one line.

Fits: two frames or more side by side. The middles go to the height of the first frame's middle.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.pictures import group_at, ladder, says


def _fit(site: Site) -> tuple[Candidate, ...]:
    group = group_at(site)
    if group is None or len(group.frames) < 2:
        return ()
    middle = group.frames[0].bottom + group.frames[0].height / 2
    changes = tuple(
        set_on("pictures", frame.name, bottom=middle - frame.height / 2)
        for frame in group.frames[1:]
        if abs(frame.bottom + frame.height / 2 - middle) > 0.1
    )
    if not changes or not site.fits(changes):
        return ()
    offer = Offer(
        f"Level {group.name}", changes, f"Level the frames: {says(site, changes)}", hazards=ladder(site, changes)
    )
    return (candidate(KIND, site, offer),)


KIND = Kind(
    "relevel-pictures",
    "Bring a row of pictures to one line",
    ("art-out-of-level",),
    (5, 15, 20),
    11,
    _fit,
    hazards=("pins",),
    leaves="pins",
    done_when="a level on top of two neighbours shows no slope",
)
