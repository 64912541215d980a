"""Two wall lights of a pair at different heights.

How to measure. The middle of each above the floor.

Sound: 1/2 in (15 mm). Glaring: 2 in (50). Why: a pair that is not a pair.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(f"wall {letter}" for letter in sorted(look.lines) if len(_pair(look, letter)) == 2)


def _pair(look: Look, letter: str) -> list[float]:
    return sorted(one.bottom + one.height / 2 for one in look.hung(whats=("sconce",), wall=letter))


def _measure(look: Look, subject: str) -> Measured | None:
    pair = _pair(look, subject.removeprefix("wall "))
    return Measured(pair[1] - pair[0], give=tape_give(0.0)) if len(pair) == 2 else None


RULE = Rule(
    slug="sconces-uneven",
    title="Wall lights uneven",
    measures="difference in height of a pair of wall lights",
    how="Measure the middle of each above the floor.",
    unit="mm",
    band=Band(high=Twin(0.5), bad_high=Twin(2), aim=(None, 0.0)),
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    why="A pair that is not a pair.",
    family="picture group",
    profiles={"handing-back": Fraction(0)},
)
