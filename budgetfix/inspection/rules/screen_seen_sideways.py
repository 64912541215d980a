"""A main seat that looks at the screen from the side.

How to measure. Stretch a string straight out from the screen's middle. How far
is the middle of the main seat beside it, and how far from the screen? The
angle is worked out (1 ft aside at 4 ft is about 14 degrees).

Why: the picture narrows, and everybody sits askew.

Basis: preferred within 15 degrees, at most 35 (US NRC, NUREG-0700 rev. 3,
published value T7).
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
    unit="degree",
    band=Band(high=15.0, bad_high=35.0, aim=(None, 0.0)),
    weight=Fraction(3),
    subjects=screens,
    measure=_measure,
    basis="T7",
    family="screen",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
)
