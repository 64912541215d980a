"""A wall light too high or too low.

How to measure. The middle of the light above the floor.

Sound: 60 to 66 in (1520 to 1680 mm). Glaring: 10 in (250) beyond either. Why: too low it dazzles, too high it lights the
ceiling.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(one.name for one in look.hung(whats=("sconce",)) if one.wall in look.lines)


def _measure(look: Look, subject: str) -> Measured | None:
    lamp = look.hung_one(subject)
    return None if lamp is None else Measured(lamp.bottom + lamp.height / 2, give=tape_give(lamp.bottom))


RULE = Rule(
    slug="sconce-off-height",
    title="Wall light off height",
    measures="height of the middle above the floor",
    how="Measure the middle of the light above the floor.",
    unit="mm",
    band=Band(Twin(60), Twin(66), Twin(50), Twin(76)),
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    why="Too low it dazzles, too high it lights the ceiling.",
    family="picture group",
    profiles={"handing-back": Fraction(0)},
)
