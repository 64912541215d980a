"""Tie up loops of cable behind a bench or below a desk.

Fits: a desk, or a screen on its bench, with loops in view. Coil what is too long, tie it, hang it to the back of the
piece, out of sight and off the floor. Ties from the catalogue where they are sold; string does it too.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.products import cheapest
from budgetfix.room.items import Hung, Piece


def _fit(site: Site) -> tuple[Candidate, ...]:
    table, thing = site.survey.named.get(site.subject, (None, None))
    bench = thing.name if isinstance(thing, Piece) else thing.on if isinstance(thing, Hung) else ""
    if table is None or not isinstance(thing, (Piece, Hung)) or thing.cables <= 0 or not bench:
        return ()
    ties = cheapest(site, "cable ties")
    uses = ((ties.product, Fraction(1)),) if ties is not None else ()
    text = (
        f"Unplug, coil what is too long behind the {bench}, tie each coil twice, fix it to the back of the {bench} so "
        "that nothing hangs in view or lies on the floor; no coil under load gets covered or squeezed"
    )
    change = set_on(table, thing.name, cables=0.0)
    return (candidate(KIND, site, Offer(f"Tie up the cables at the {thing.name}", (change,), text, "", uses)),)


KIND = Kind(
    "tie-cables", "Tie cables up out of sight", ("cables-on-show",), (10, 20, 30), 10, _fit, hazards=("cord",),
    whats=("cable ties",), done_when="from the door no cable is seen",
)  # fmt: skip
