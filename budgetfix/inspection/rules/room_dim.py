"""A room with too little light installed for its floor.

How to measure. No meter: add up the lumens printed on every lamp of the room,
and divide by the floor in square metres (10.8 sq ft are one).

Why: a dim room looks small and tired, and one bright lamp does not help the
far corner.

Basis: common practice for the installed figure. Beside it stands the lumen
method's lux (CIBSE, as taught at City University of Hong Kong, published
values L6 and L7): lumens x 0.4 x 0.77 / floor. 0.4 is a cautious utilization
for a room index near 1 (lighting design notes, L8). The 5 foot-candles of the
IES Lighting Handbook, Table 10-7 (L1) are 54 lx, about 175 lm/m2 installed:
that is our aim. Our band leaves L1 on purpose, since people let 120 pass.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule

UTILIZATION, LOSS = 0.4, 0.77
MM2_PER_M2 = 1e6
ROOM = Band(low=120.0, bad_low=40.0, aim=(150.0, 200.0))
KITCHEN = Band(low=250.0, bad_low=40.0, aim=(250.0, 350.0))


def lux(lumens: float, floor_m2: float, utilization: float = UTILIZATION, loss: float = LOSS) -> float:
    """The lumen method: mean illuminance in lux of `lumens` installed over a floor (L6)."""
    return lumens * utilization * loss / floor_m2


def _subjects(look: Look) -> tuple[str, ...]:
    return ("room",) if look.walls else ()


def _measure(look: Look, _subject: str) -> Measured | None:
    lights = look.lights()
    floor_m2 = look.outline.area / MM2_PER_M2
    if floor_m2 <= 0:
        return None
    lumens = sum(light.lumens for light in sorted(lights, key=lambda light: light.name))
    return Measured(
        lumens / floor_m2,
        band=KITCHEN if look.facts.kind == "kitchen" else None,
        note=f"{lumens:.0f} lm installed; about {lux(lumens, floor_m2):.0f} lx by the lumen method",
        uncertain=any(look.guessed(light.name, "lumens") for light in lights),
    )


RULE = Rule(
    slug="room-dim",
    title="Room too dim",
    measures="installed lumens for each square metre of floor",
    unit="lm/m2",
    band=ROOM,
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice; L1, L6, L7, L8 for the twin figure",
    family="light",
    family_by_room=True,
    profiles={"listing": Fraction(3, 2), "handing-back": Fraction(0)},
    shown=(("Rooms", ROOM), ("Kitchen", KITCHEN)),
)
