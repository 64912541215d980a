"""Lamps of different white in one view.

How to measure. No tape: read the kelvin printed on every lamp of the room, and
take the lowest from the highest.

Why: warm and cold light side by side make both look wrong, and a photograph
can only be right for one of them.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule


def _subjects(look: Look) -> tuple[str, ...]:
    return ("room",) if len(look.lights()) > 1 else ()


def _measure(look: Look, _subject: str) -> Measured | None:
    lights = [light for light in look.lights() if light.lumens > 0]
    if len(lights) < 2:
        return None
    kelvins = [light.kelvin for light in lights]
    return Measured(
        max(kelvins) - min(kelvins),
        note=f"from {min(kelvins):.0f} to {max(kelvins):.0f} K",
        uncertain=any(look.guessed(light.name, "kelvin") for light in lights),
    )


RULE = Rule(
    slug="lamp-colors-mixed",
    title="Lamp colours mixed",
    measures="spread of the colour temperature of the lamps in one room",
    unit="K",
    band=Band(high=300.0, bad_high=2000.0, aim=(0.0, 0.0)),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="light",
    family_by_room=True,
    profiles={"listing": Fraction(5, 3), "handing-back": Fraction(0)},
)
