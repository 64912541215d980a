"""Too few lights that can be switched apart.

How to measure. No tape: count the switches that light something in the room.
Lamps that come on together are one.

Why: one light from the middle of the ceiling flattens the room and leaves no
choice between all and nothing.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule


def _subjects(look: Look) -> tuple[str, ...]:
    return ("room",) if look.walls else ()


def _measure(look: Look, _subject: str) -> Measured | None:
    switches = {light.switch or f"the {light.name}" for light in look.lights() if light.lumens > 0}
    return Measured(float(len(switches)))


RULE = Rule(
    slug="one-light-only",
    title="Too few lights to choose from",
    measures="lights that can be switched apart",
    unit="count",
    band=Band(low=3.0, bad_low=1.0, aim=(3.0, 5.0)),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="light",
    family_by_room=True,
    profiles={"listing": Fraction(3, 2), "handing-back": Fraction(0)},
    aim_words="three to five, at two heights",
)
