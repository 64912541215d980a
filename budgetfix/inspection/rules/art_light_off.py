"""A picture light too short for its picture, or too far above it.

How to measure. The lamp's width over the picture's; and from the frame's upper edge to the lamp.

Sound: half the picture's width or more, 2 to 8 in above the frame. Aim: 1/2 to 3/4, 6 to 7 in. Glaring: a quarter; touching
the frame, or 18 in above it. Why: a short lamp lights a stripe, a high one the wall.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, slope

ABOVE = Band(Twin(2), Twin(8), 0.0, Twin(18), (Twin(6), Twin(7)))


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(one.name for one in look.hung(whats=("picture light",)) if one.over)


def _measure(look: Look, subject: str) -> Measured | None:
    lamp = look.hung_one(subject)
    picture = look.hung_one(lamp.over) if lamp is not None and lamp.over else None
    if lamp is None or picture is None or picture.width <= 0:
        return None
    above = lamp.bottom - picture.bottom - picture.height
    off = slope(above, ABOVE, "mm", look.household.metric)
    share = lamp.width / picture.width
    short = slope(share, Band(low=0.5, bad_low=0.25), "ratio", look.household.metric)
    return Measured(share, severity=max(off, short), note="too high or low" if off > short else "of the picture")


RULE = Rule(
    slug="art-light-off",
    title="Picture light off",
    measures="width of the lamp over the picture, and its height above the frame",
    how="Measure the lamp, the picture, and the gap between.",
    unit="ratio",
    band=Band(low=0.5, bad_low=0.25, aim=(0.5, 0.75)),
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    why="A short lamp lights a stripe, a high one the wall.",
    family="picture group",
    profiles={"handing-back": Fraction(0)},
)
