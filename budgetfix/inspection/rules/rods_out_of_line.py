"""Rods of one wall that hang at different heights though the windows are level.

How to measure. Each rod above the floor, on one wall, for windows whose heads
are within 1 in (25 mm) of each other.

Why: the eye draws a line from rod to rod, and it slopes.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give

LEVEL = Twin(1)


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(f"wall {letter}" for letter in sorted(look.lines) if len(_heads(look, letter)) > 1)


def _heads(look: Look, letter: str) -> list[tuple[float, float]]:
    """(head, rod height) of every dressed window of a wall."""
    windows = {one.name: one for one in look.openings(whats=("window",), wall=letter)}
    return sorted((windows[one.window].top, one.rod_height) for one in look.curtains() if one.window in windows)


def _measure(look: Look, subject: str) -> Measured | None:
    found = _heads(look, subject.removeprefix("wall "))
    spreads = []
    for head, _ in found:
        rods = [rod for other, rod in found if abs(other - head) <= look.mm(LEVEL) + 0.1]
        spreads += [max(rods) - min(rods)] if len(rods) > 1 else []
    if not spreads:
        return None
    return Measured(max(spreads), give=tape_give(*(rod for _, rod in found[:2])), note="apart")


RULE = Rule(
    slug="rods-out-of-line",
    title="Rods out of line",
    measures="spread of the rods' heights on one wall",
    unit="mm",
    band=Band(high=Twin(0.5), bad_high=Twin(4), aim=(None, 0.0)),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="window dressing",
    absence="window-bare",
    profiles={"listing": Fraction(3, 2), "handing-back": Fraction(0)},
)
