"""A rug that lies across the sofa instead of along it.

How to measure. No tape: does the rug's long side run along the main seat's
front? The angle between the two. Squares and rounds are exempt, and rugs that
would not fit the room the other way.

Why: the seats and the rug pull two ways, and the rug's ends are missing where
the sofa is.

Basis: common practice.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.inspection.grouping import main_of, rugs_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import Rug
from budgetfix.room.seating import angle_between, look_direction
from budgetfix.room.sides import span

SQUARE = 1.1
"""Sides within a tenth of each other: a square."""


def _long(rug: Rug) -> bool:
    return not rug.round and max(rug.width, rug.depth) > SQUARE * min(rug.width, rug.depth)


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(rug.name for rug in rugs_of(look))


def _measure(look: Look, subject: str) -> Measured | None:
    rug, main = look.rug(subject), main_of(look)
    if rug is None or main is None or not _long(rug):
        return None
    line, look_way = look.lines[rug.wall], look_direction(main, look.lines)
    across = (-look_way[1], look_way[0])
    runs = line.along if rug.width >= rug.depth else line.inward
    angle = angle_between(runs, across)
    angle = min(angle, 180 - angle)
    low, high = span(look.outline, across)
    if high - low < max(rug.width, rug.depth) or math.isclose(angle, 0, abs_tol=0.01):
        return Measured(0.0, note="along the main seat" if angle < 1 else "the room is too narrow to turn it")
    return Measured(angle, note="long side against the main seat")


RULE = Rule(
    slug="rug-across",
    title="Rug lies across the sofa",
    measures="angle between the rug's long side and the front of the main seat",
    unit="degree",
    band=Band(high=5.0, bad_high=45.0, aim=(0.0, 0.0)),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="rug size",
    absence="floor-bare",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
)
