"""Stand a portable heater where no cloth hangs.

Fits: a portable heater in the room; places along every wall are tried from the left corner in steps of 12 in (300
mm), the first ones that are free and far enough from every curtain are kept.
"""

from __future__ import annotations

from budgetfix.remedies.candidate import Candidate
from budgetfix.remedies.kind import Kind, Offer, Site, candidate, set_on
from budgetfix.remedies.moves import after, edges, inside
from budgetfix.room.items import Piece
from budgetfix.room.survey import Change

STEP_MM, OFF_MM, MOST = 300.0, 50.0, 2


def _fit(site: Site) -> tuple[Candidate, ...]:
    heaters = [one for one in site.survey.furniture if one.room == site.room and one.what == "portable heater"]
    offers = []
    for heater in heaters:
        for number, change in enumerate(_places(site, heater)):
            text = f"Stand the {heater.name} away from all cloth: {edges(site, after(site, change))}"
            variant = f"{heater.name}{f'~{number}' if number else ''}"
            offers.append(Offer(f"Move the {heater.name} away from the cloth", (change,), text, variant))
    return tuple(candidate(KIND, site, offer) for offer in offers)


def _places(site: Site, heater: Piece) -> list[Change]:
    found: list[Change] = []
    for letter in sorted(site.lines):
        length = site.lines[letter].length
        doors = [one for one in site.survey.openings if one.wall == letter and one.room == site.room]
        for count in range(int((length - heater.width) / STEP_MM) + 1):
            at = site.tape(count * STEP_MM)
            before_door = any(at < one.from_left + one.width and one.from_left < at + heater.width for one in doors)
            change = set_on("furniture", heater.name, wall=letter, from_left=at, gap=OFF_MM, faces="")
            if before_door or not site.fits((change,)) or not inside(site, after(site, change)):
                continue
            if site.severity((change,)) == 0:
                found.append(change)
                if len(found) >= MOST:
                    return found
    return found


KIND = Kind(
    "move-heater", "Move a portable heater away from cloth", ("curtain-near-heater",), (2, 5, 10), 1, _fit,
    hazards=("heat",), done_when="an arm's length and more is free around the heater",
)  # fmt: skip
