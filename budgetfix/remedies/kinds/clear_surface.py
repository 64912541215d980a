"""Clear a crowded surface: three things stay, the others go where they belong.

Fits: a surface with more than three things counted on it. Costs nothing. What goes gets a place first (a drawer, a
box, another room): you say which; what stays is grouped, the tallest at the back.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.room.items import Piece

STAY = 3
"""The aim of surface-crowded."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    piece = site.survey.named.get(site.subject, (None, None))[1]
    if not isinstance(piece, Piece) or piece.things <= STAY:
        return ()
    text = (
        f"Take everything off the {piece.name}, wipe it, put three things back in one group, the tallest at the back; "
        f"find the other {piece.things - STAY} a place in a drawer, a box or another room"
    )
    change = set_on("furniture", piece.name, things=STAY)
    return (candidate(KIND, site, Offer(f"Clear the {piece.name}", (change,), text)),)


KIND = Kind(
    "clear-surface", "Clear a surface", ("surface-crowded",), (5, 10, 20), 2, _fit,
    done_when="three things stand on it, and everything else lies where it belongs",
)  # fmt: skip
