"""Cautions. They defer to local codes, the lease and licensed trades, and never say that a thing is safe."""

from __future__ import annotations

import math
from collections.abc import Iterable

from budgetfix.remedies.candidate import Leaves
from budgetfix.remedies.old_paint import old_paint_care
from budgetfix.room.survey import Household

CARES = {
    "drill": "Before drilling look for wires and pipes with a detector; if unsure, ask a licensed trade.",
    "ladder": (
        "Open a step ladder fully, never lean it; a leaning ladder's foot stands a quarter of its working length out. "
        "Firm floor, never furniture."
    ),
    "lifting": "Keep the load close and your back straight; empty heavy pieces first, and get help if in doubt.",
    "tipping": "Tall furniture tips: hold it until it is fixed, keep children away, follow the maker's instructions.",
    "cord": "Keep cords out of children's reach and off the ways people walk.",
    "heat": "Cloth stays away from heaters; the maker's distances and local codes come first.",
    "wire": "Anything hard-wired is for a licensed electrician.",
    "lamp": "Switch off and let lamps cool; stay within the watts that the fitting allows.",
    "strips": "Strips hold on sound paint only; read what they carry, press and wait as the pack says.",
}
TOGETHER = "Lift together, backs straight; empty heavy pieces first."
"""In place of `lifting` where two people do it."""
DECIDES = "your lease decides."
LEASE: dict[Leaves, str] = {
    "nothing": "",
    "pins": f"Pins are commonly tolerated, but not in tile, stone, ceilings or doors: {DECIDES}",
    "strips": (
        f"Strips are commonly tolerated on sound paint, not on wallpaper or on paint younger than a week: {DECIDES}"
    ),
    "plugs": f"Plugs over 6 mm, and any hole in tile, stone, ceilings or doors, commonly need leave: {DECIDES}",
    "peels off": f"What peels off is commonly tolerated; try it where nobody looks: {DECIDES}",
    "asks leave": (
        "Painting, wall mounts, and changing lights, locks or blinds commonly need leave, so ask first: " + DECIDES
    ),
}
"""For renters, by what a remedy leaves (common practice)."""
PINS_OR_STRIPS = (
    "Pins, and strips on sound paint (not on wallpaper or on paint younger than a week), are commonly tolerated: "
    + DECIDES
)
"""In place of `pins` where strips would do as well."""
WORKING_SHARE = 0.25


def foot_out(working_length: float) -> float:
    """How far the foot of a leaning ladder stands out: a quarter of its working length, not of its height.

    Source: 29 CFR 1926.1053(b)(5)(i). Same unit in and out.
    """
    return working_length * WORKING_SHARE


def lean_degrees() -> float:
    """The angle of such a ladder with the floor."""
    return math.degrees(math.acos(WORKING_SHARE))


def support_height(working_length: float) -> float:
    """How high such a ladder leans against its support."""
    return math.sqrt(working_length**2 - foot_out(working_length) ** 2)


def cares_for(
    hazards: Iterable[str],
    household: Household,
    people: int = 1,
    leaves: Leaves = "nothing",
    paint_mm2: float = 0.0,
) -> tuple[str, ...]:
    """The cautions of these hazards in this household, for work that takes `people` and leaves that in the walls."""
    words = dict.fromkeys(hazards)
    found = [TOGETHER if word == "lifting" and people > 1 else CARES[word] for word in words if word in CARES]
    if "drill" in words or paint_mm2 > 0:
        found.append(old_paint_care(household))
    if household.rent:
        found.append(PINS_OR_STRIPS if leaves == "pins" and "strips" in words else LEASE[leaves])
    return tuple(care for care in found if care)
