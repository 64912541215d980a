"""Take a chair or two from a crowded table to stand at a wall until guests come.

Fits: a dining table with too little edge for each person; free floor at a wall of the room, before no door or window
that reaches lower than the chair. One chair, else two, as few as cure it. Costs nothing; another room does it too.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from budgetfix.remedies.better import better
from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best, set_on
from budgetfix.remedies.moves import after, before_opening, edges, inside
from budgetfix.room.items import Piece
from budgetfix.room.survey import Change

CHAIRS = ("dining chair", "chair")
STEP_MM, DEEP_MM, MOST = 200.0, 450.0, 2
"""Depth of a chair that is not pushed in (common practice)."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    chairs = [one for one in site.survey.furniture if one.room == site.room and one.what in CHAIRS]
    mine = sorted((one for one in chairs if one.at == site.subject), key=lambda one: one.name)
    return best(KIND, site, _offers(site, mine), 1)


def _offers(site: Site, chairs: list[Piece]) -> Iterator[Offer]:
    for count in range(1, min(MOST, len(chairs) - 1) + 1):
        for few in combinations(chairs, count):
            changes: tuple[Change, ...] = ()
            for chair in few:
                changes = (*changes, *_stood(site, chair, changes))
            if len(changes) == count and better(site, changes):
                yield _offer(site, few, changes)
                if site.severity(changes) == 0:
                    return


def _offer(site: Site, chairs: tuple[Piece, ...], changes: tuple[Change, ...]) -> Offer:
    names = " and ".join(one.name for one in chairs)
    places = "; ".join(f"{change.item}: {edges(site, after(site, change))}" for change in changes)
    text = f"Stand {names} at the wall until guests come, or in another room. {places}"
    return Offer(f"Take {names} from the table", changes, text, "~".join(one.name for one in chairs))


def _stood(site: Site, chair: Piece, before: tuple[Change, ...]) -> tuple[Change, ...]:
    """The chair at the first free place of a wall, with its back to it; () where there is none."""
    for letter in sorted(site.lines):
        for step in range(int((site.lines[letter].length - chair.width) / STEP_MM) + 1):
            wide = max(chair.width, chair.depth)
            change = set_on(
                "furniture", chair.name, wall=letter, from_left=site.tape(step * STEP_MM), gap=0.0, faces="", at="",
                tucked=False, width=wide, depth=max(DEEP_MM, wide),
            )  # fmt: skip
            spot = after(site, change)
            free = isinstance(spot, Piece) and inside(site, spot) and not before_opening(site, spot)
            if free and site.fits((*before, change)):
                return (change,)
    return ()


KIND = Kind(
    "spare-chair", "Stand a spare chair at the wall", ("table-crowded",), (3, 5, 10), 8, _fit, leaves="nothing",
    done_when="elbows do not meet, and the chair is in nobody's way",
)  # fmt: skip
