"""Hang a heavy picture over a bed or a sofa on two screws in place of strips or a single nail.

Fits: a picture of more than 4 kg that hangs over a head on strips, a nail or nothing. Two screws in plugs that carry
it, a hand in from each edge; its place stays. Screws from the catalogue where they are sold.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.products import cheapest
from budgetfix.room.groups import ART
from budgetfix.room.items import Hung

SCREWS = 2


def _fit(site: Site) -> tuple[Candidate, ...]:
    frame = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(frame, Hung) or frame.what not in ART or frame.fixing == "screws" or frame.leaned:
        return ()
    product, top = cheapest(site, "screws"), frame.bottom + frame.height
    uses = ((product.product, Fraction(SCREWS)),) if product is not None else ()
    third = frame.width / 4
    left, right = (site.words(frame.from_left + at) for at in (third, frame.width - third))
    text = (
        f"Take {frame.name} down; drill and plug two level holes {left} and {right} from the left corner of wall "
        f"{frame.wall}, as far below {site.words(top)} above the floor as its hangers are below the frame's upper "
        f"edge; screws that carry {(frame.weight or 0.0) * 2:g} kg; lower edge at {site.words(frame.bottom)} as before"
    )
    change = set_on("pictures", frame.name, fixing="screws")
    return (
        candidate(KIND, site, Offer(f"Hang {frame.name} on two screws", (change,), text, "", uses, wall=frame.wall)),
    )


KIND = Kind(
    "screw-picture", "Hang a heavy picture on two screws", ("heavy-over-head",), (15, 25, 40), 11, _fit, holes=SCREWS,
    hazards=("drill",), tools=("drill",), whats=("screws",), leaves="plugs",
    done_when="it hangs level and a firm pull downwards moves nothing",
)  # fmt: skip
