"""Turn a seat in place, so that it faces the screen.

Fits: a seat of the group that can be turned by a quarter or half without leaving the room or touching anything; its
middle stays where it is, and it is pushed back only as far as its new depth asks. A sofa takes two people, an armchair
one. Costs nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.remedies.better import better
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.moves import after, edges, inside
from budgetfix.remedies.rugs import seats_of
from budgetfix.room.items import Piece
from budgetfix.room.places import extent
from budgetfix.room.seating import SOFAS
from budgetfix.room.survey import Change, moved

HEAVY_MINUTES = (20, 40, 75)


def _fit(site: Site) -> tuple[Candidate, ...]:
    seat = next((one for one in seats_of(site) if one.name == site.subject), None)
    return () if seat is None else best(KIND, site, _offers(site, seat), 2)


def _offers(site: Site, seat: Piece) -> Iterator[Offer]:
    heavy = seat.heavy or seat.what in SOFAS
    for letter in sorted(site.lines):
        change = _turned(site, seat, letter)
        if change is None or not better(site, (change,)):
            continue
        text = f"Turn the {seat.name} to face wall {letter}: {edges(site, after(site, change))}"
        yield Offer(
            f"Turn the {seat.name} to wall {letter}", (change,), text, letter, people=2 if heavy else 1,
            minutes=HEAVY_MINUTES if heavy else None, hazards=("lifting",) if heavy else (),
        )  # fmt: skip


def _turned(site: Site, seat: Piece, letter: str) -> Change | None:
    """The seat facing that wall, its middle kept where the wall behind it allows; None where it does not fit."""
    (along, off), faces = extent(seat, site.lines), letter
    there = moved(seat, faces=faces)
    wide, deep = extent(there, site.lines)
    most = site.lines[seat.wall].length - wide
    at = min(max(0.0, seat.from_left + (along - wide) / 2), most)
    gap = max(0.0, seat.gap + (off - deep) / 2)
    change = set_on("furniture", seat.name, faces=faces, from_left=site.tape(at), gap=site.tape(gap))
    if faces == seat.faces or most < 0 or not inside(site, after(site, change)) or not site.fits((change,)):
        return None
    return change


KIND = Kind(
    "turn-seat", "Turn a seat to the screen", ("seat-turns-the-neck",), (5, 10, 20), 8, _fit,
    done_when="who sits in it looks at the screen without turning the head",
)  # fmt: skip
