"""Cautions. They defer to local codes, the lease and licensed trades, and never say that a thing is safe."""

from __future__ import annotations

from collections.abc import Iterable

from budgetfix.room.survey import Household

CARES = {
    "drill": "Before drilling look for wires and pipes with a detector; if unsure, ask a licensed trade.",
    "ladder": "Stand on a ladder that is made for it, on firm floor, with somebody near; never on furniture.",
    "lifting": "Lift with two people, backs straight; empty heavy pieces first.",
    "tipping": "Tall furniture tips: hold it until it is fixed, keep children away, follow the maker's instructions.",
    "cord": "Keep cords out of children's reach and off the ways people walk.",
    "heat": "Cloth stays away from heaters; the maker's distances and local codes come first.",
    "wire": "Anything hard-wired is for a licensed electrician.",
    "lamp": "Switch off and let lamps cool; stay within the watts that the fitting allows.",
    "pins": "A new place for a picture is a new pin hole, or strips on sound paint: your lease decides.",
    "strips": "Strips hold on sound paint only; read what they carry, press and wait as the pack says.",
}
OLD_PAINT = "Paint from before 1978 may hold lead: no sanding, no dry scraping; local codes come first."
LEASE = "Holes and paint: your lease decides; ask first where it does not say."


def cares_for(hazards: Iterable[str], household: Household) -> tuple[str, ...]:
    """The cautions of these hazards in this household."""
    words = tuple(hazards)
    found = [CARES[word] for word in words if word in CARES]
    if "drill" in words and household.before_1978 is not False:
        found.append(OLD_PAINT)
    if "drill" in words and household.rent:
        found.append(LEASE)
    return tuple(found)
