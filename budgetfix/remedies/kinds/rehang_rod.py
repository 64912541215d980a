"""Hang the rod that is there at another height, with its old panels.

Fits: where the hem is sound afterwards. To the height of a neighbour on the same wall, so that the rods are in line;
or up, as far as cloth that lies on the floor allows. Cloth that would lie on the floor is shortened, if hem tape is
in the catalogue. The old holes are filled.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, best
from budgetfix.remedies.rods import (
    ABOVE_FRAME_MM,
    CLEAR_MM,
    Window,
    brackets,
    dress,
    hung_again,
    top_of_wall,
    windows_at,
)

LEVEL_MM = 25.0
"""Heads of frames this near to each other are level (rods-out-of-line)."""


def _fit(site: Site) -> tuple[Candidate, ...]:
    found: list[Candidate] = []
    for at in windows_at(site):
        if not at.bare and at.curtain.length == "floor":
            here = replace(site, subject=at.window.name)
            found += best(KIND, here, _offers(here, at), 2)
    return tuple(found)


def _heights(site: Site, at: Window) -> list[float]:
    heads = {one.name: one for one in site.survey.openings if one.room == site.room and one.wall == at.window.wall}
    level = [
        one.rod_height
        for one in site.survey.curtains
        if one.window in heads and abs(heads[one.window].top - at.window.top) <= LEVEL_MM
    ]
    sound = site.tape(at.curtain.rod_height - at.curtain.hem + CLEAR_MM)
    higher = [sound] if sound > at.curtain.rod_height else []
    return sorted({height for height in [*level, *higher] if abs(height - at.curtain.rod_height) > 1.0})


def _offers(site: Site, at: Window) -> Iterator[Offer]:
    for height in _heights(site, at):
        again = hung_again(site, at.curtain, height)
        if again is None or not at.window.top + ABOVE_FRAME_MM <= height <= top_of_wall(site):
            continue
        hem, uses = again
        text = (
            f"Take the rod at the {at.window.name} down and hang it {site.words(height)} above the floor; "
            f"hem {site.words(hem)} above the floor"
        )
        wide = at.curtain.rod_width
        yield Offer(
            f"Hang the rod at the {at.window.name} at {site.words(height)}",
            (dress(at, {"rod_height": height, "hem": hem}),),
            text,
            site.words(height),
            uses,
            people=1 if wide <= site.mm(48, 1220) else 2,
            holes=brackets(wide) * 2,
            wall=at.window.wall,
        )


KIND = Kind(
    "rehang-rod",
    "Hang the rod at another height",
    ("rods-out-of-line", "rod-hung-low", "hem-off-floor"),
    (45, 75, 120),
    9,
    _fit,
    people=2,
    holes=4,
    hazards=("drill", "ladder"),
    tools=("drill", "ladder"),
    whats=("hem tape",),
    leaves="plugs",
    done_when="the rods of the wall are in line and the hems just clear the floor",
)
