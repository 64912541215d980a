"""Make the bed up with what is there.

Fits: a bed that is not made up. A cover without creases down to the frame, pillows at the head. Costs nothing; linen of
your own choice is a remedy of yours.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.room.items import Piece


def _fit(site: Site) -> tuple[Candidate, ...]:
    bed = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(bed, Piece) or bed.what != "bed" or not bed.undressed:
        return ()
    change = set_on("furniture", bed.name, undressed=False)
    text = f"Make the {bed.name}: cover down to the frame, no creases, pillows at the head"
    return (candidate(KIND, site, Offer(f"Make the {bed.name}", (change,), text)),)


KIND = Kind(
    "make-bed", "Make the bed", ("bed-undressed",), (5, 10, 15), 2, _fit, leaves="nothing",
    done_when="from the door the bed shows one cover without creases",
)  # fmt: skip
