"""A main seat that looks at the screen from the side.

How to measure. How far the eye of the main seat is off the line straight out of the screen's middle, as an angle.

Sound: 15 degrees or less. Aim: 0. Glaring: 35. Why: the picture narrows, and everybody sits askew.

Basis: preferred within 15 degrees, at most 35 (published value T7, NUREG-0700).
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.inspection.screens import degrees, eye_of, face, screens, seat_of, towards


def _measure(look: Look, subject: str) -> Measured | None:
    screen, seat = look.hung_one(subject), seat_of(look)
    if screen is None or seat is None:
        return None
    away = towards(face(look, screen), eye_of(look, seat))
    return Measured(degrees(look.lines[screen.wall].inward, away), give=1.0)


RULE = Rule(
    slug="screen-seen-sideways",
    title="Screen seen sideways",
    measures="angle of the main seat off the screen's axis",
    how="Measure how far the seat's middle is to the side of the screen's, and how far away.",
    unit="degree",
    band=Band(high=15.0, bad_high=35.0, aim=(None, 0.0)),
    weight=Fraction(3),
    subjects=screens,
    measure=_measure,
    basis="T7",
    why="The picture narrows, and everybody sits askew.",
    family="screen",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
)
