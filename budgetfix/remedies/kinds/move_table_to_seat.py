"""Move a small table that is there to a seat that has none.

Fits: a side table, nesting tables or an ottoman of the room, and free floor beside an arm of a seat, 2 in (50 mm)
away. Only moves that leave fewer seats without a table are kept.
"""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.moves import edges
from budgetfix.remedies.rugs import seats_of
from budgetfix.remedies.tables import beside, standing
from budgetfix.room.items import Piece

SMALL = ("side table", "nesting tables", "ottoman")


def _fit(site: Site) -> tuple[Candidate, ...]:
    owned = [one for one in site.survey.furniture if one.room == site.room and one.what in SMALL]
    offers = (offer for table in owned for seat in seats_of(site) for offer in _offers(site, seat, table))
    return best(KIND, site, offers)


def _offers(site: Site, seat: Piece, table: Piece) -> Iterator[Offer]:
    for spot in beside(site, seat, table):
        change = standing(site, spot)
        if site.finding is None or site.severity((change,)) < site.severity(()):
            text = f"Move the {table.name} beside the {seat.name}: {edges(site, spot)}"
            yield Offer(f"Move the {table.name} to the {seat.name}", (change,), text, seat.name, subject=table.name)
            return


KIND = Kind(
    "move-table-to-seat", "Move a small table to a seat", ("seat-without-table",), (5, 10, 20), 8, _fit,
    done_when="a cup can be put down from the seat",
)  # fmt: skip
