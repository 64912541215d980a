"""Move the furniture that is there to another layout: the seats to another wall or off theirs, a piece to another wall,
two pieces in one another's places.

Fits: rooms where a way, a door or a front is blocked, or the seats stand badly. Whole layouts are put into the room and
inspected: nothing on one spot, nothing before a door, a socket near the screen, and nothing else left more than a
quarter worse. At most five that differ are offered, as one pick-one group; where none does more than the room as it
stands, the plan says so. What is displaced gets the nearest free place; chairs, lamps, screens and pictures go along.
"""

from __future__ import annotations

from dataclasses import replace

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate
from budgetfix.remedies.layouts import TROUBLES, Layout, searched
from budgetfix.remedies.telling import told

ONE_PIECE = (20, 40, 75)
"""Minutes for one heavy piece."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    if not site.judges:
        return ()
    room = site.room or "room"
    found = (candidate(KIND, site, _offer(site, layout)) for layout in searched(site).layouts)
    return tuple(replace(one, pick_one=f"layout of the {room}") for one in found)


def _offer(site: Site, layout: Layout) -> Offer:
    pictures = any(change.table == "pictures" for change in layout.changes)
    return Offer(
        _name(layout),
        layout.changes,
        told(site.survey, layout.changes),
        "+".join(f"{name}-{wall}{'-off' if off else ''}" for name, wall, off in layout.stands),
        hazards=("pins",) if pictures else (),
        minutes=ONE_PIECE if len(layout.stands) == 1 else None,
    )


def _name(layout: Layout) -> str:
    if len(layout.stands) == 1:
        ((name, wall, off),) = layout.stands
        return f"Pull the {name} off wall {wall}" if off else f"Move the {name} to wall {wall}"
    words = (f"{name} {'off' if off else 'to'} wall {wall}" for name, wall, off in layout.stands)
    return f"Rearrange: {'; '.join(words)}"


KIND = Kind(
    "rearrange",
    "Rearrange the room",
    TROUBLES,
    (30, 60, 120),
    6,
    _fit,
    people=2,
    hazards=("lifting",),
    done_when="every edge is where the list says, the doors open wide and the ways are free",
    whole_room=True,
)
