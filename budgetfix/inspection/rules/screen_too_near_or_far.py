"""A screen too small for how far away people sit, or too large.

How to measure. From the eye (12 in, 300 mm, before the seat's back) to the
middle of the screen; divide by the screen's diagonal. For a 16:9 screen the
diagonal is its width over 0.87; an older, squarer set has it from corner to
corner.

Why: too far, and the picture is a postage stamp; too near, and the eyes never
rest.

Basis: 1.63 diagonals fill 30 degrees of view (SMPTE EG 18, published value
T5), 1.34 and 1.20 fill 36 and 40 (a column for installers, T6); a 16:9
diagonal is its width over 0.871576 (geometry, T1). The aim runs from T6 to T5.
Our band leaves T5 on purpose at its far edge: 2.5 is what people let pass at
home (common practice).
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.screens import diagonal_of, eye_of, face, screens, seat_of


def _measure(look: Look, subject: str) -> Measured | None:
    screen, seat = look.hung_one(subject), seat_of(look)
    if screen is None or seat is None or screen.width <= 0:
        return None
    diagonal = diagonal_of(screen)
    apart = math.dist(eye_of(look, seat), face(look, screen))
    return Measured(apart / diagonal, give=tape_give(apart, screen.width) / diagonal, note="diagonals")


RULE = Rule(
    slug="screen-too-near-or-far",
    title="Screen too near or far",
    measures="distance from the eye to the screen over its diagonal",
    unit="ratio",
    band=Band(1.2, 2.5, 0.9, 3.5, (1.2, 1.6)),
    weight=Fraction(1),
    subjects=screens,
    measure=_measure,
    basis="T1, T5, T6; upper edge common practice",
    family="screen",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
)
