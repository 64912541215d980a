"""Take a thing away: to another room, storage, sold or given away. You say which; it is never proposed by itself.

A remedy of your own in the catalogue, `on` the thing that goes. What was wrong with it counts as cured only where its
absence is no fault of its own: an empty room is no free plan.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.room.survey import Change


def _fit(site: Site) -> tuple[Candidate, ...]:
    if site.finding is not None or site.subject not in site.survey.named:
        return ()
    change = Change(site.survey.named[site.subject][0], site.subject, remove=True)
    offer = Offer(f"Take away {site.subject}", (change,), f"Take {site.subject} out of the room")
    return (candidate(KIND, site, offer),)


KIND = Kind(
    "take-away",
    "Take a thing away",
    (),
    (15, 30, 60),
    2,
    _fit,
    hazards=("lifting",),
    done_when="it is out of the room, and somebody has said where it goes",
)
