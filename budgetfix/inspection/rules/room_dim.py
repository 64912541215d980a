"""A room with too little light installed for its floor.

How to measure. No meter: add up the lumens printed on every lamp of the room, and divide by the floor in square
metres. Beside it the tool shows the lumen method's figure, lumens x 0.4 x 0.77 / floor, in lux.

Sound: 120 lm/m2 or more, a kitchen 250. Aim: 150 to 200. Glaring: 40. Why: a dim room looks small and tired, and
one bright lamp does not help the far corner.

Basis: common practice for the installed figure. The lumen method (published values L6, L7: utilization 0.4, loss
0.9 x 0.9 x 0.95 = 0.77) gives the twin in lux; the old IES table's 5 foot-candles for general light at home (L1)
are 54 lx, about 175 lm/m2 installed: that is our aim, and 120 is what people let pass.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule

UTILIZATION, LOSS = 0.4, 0.77
MM2_PER_M2 = 1e6
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
    how="Add up the lumens printed on the lamps and divide by the floor in square metres.",
    unit="lm/m2",
    band=Band(low=120.0, bad_low=40.0, aim=(150.0, 200.0)),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice; L1, L6, L7 for the twin figure",
    why="A dim room looks small and tired.",
    family="light",
    family_by_room=True,
    profiles={"listing": Fraction(3, 2)},
)
