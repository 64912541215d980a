"""A screen too small for how far away people sit, or too large.

How to measure. From the eye (12 in before the seat's back) to the middle of the screen, over the screen's diagonal.

Sound: 1.2 to 2.5 diagonals. Aim: 1.2 to 1.6. Glaring: 0.9 and 3.5. Why: too far, and the picture is a postage stamp;
too near, and the eyes never rest.

Basis: 1.63 diagonals fill 30 degrees (published value T5), 1.34 and 1.20 fill 36 and 40 (T6); a 16:9 diagonal is its
width over 0.871576 (T1). The upper edge is common practice.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.screens import DIAGONAL_OF_WIDTH, eye_of, face, screens, seat_of


def _measure(look: Look, subject: str) -> Measured | None:
    screen, seat = look.hung_one(subject), seat_of(look)
    if screen is None or seat is None or screen.width <= 0:
        return None
    diagonal = screen.width * DIAGONAL_OF_WIDTH
    apart = math.dist(eye_of(look, seat), face(look, screen))
    return Measured(apart / diagonal, give=tape_give(apart, screen.width) / diagonal, note="diagonals")


RULE = Rule(
    slug="screen-too-near-or-far",
    title="Screen too near or far",
    measures="distance from the eye to the screen over its diagonal",
    how="Measure from the seat's back to the screen, less 12 in (300 mm).",
    unit="ratio",
    band=Band(1.2, 2.5, 0.9, 3.5, (1.2, 1.6)),
    weight=Fraction(1),
    subjects=screens,
    measure=_measure,
    basis="T1, T5, T6; upper edge common practice",
    why="Too far, and the picture is a postage stamp.",
    family="screen",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
)
