"""A pendant that does not hang over the middle of its table.

How to measure. Drop a plumb line (a thread with a nut) from the pendant; on
the table measure from there to its middle. Several pendants over one table are
judged by the middle of them all.

Why: the table looks as if it had been pushed away, and one end of it eats in
the dark.

Basis: common practice.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.places import middle


def _subjects(look: Look) -> tuple[str, ...]:
    pendants = look.lights(whats=("pendant",))
    first = {light.over: light.name for light in reversed(pendants) if light.over and light.wall in look.lines}
    return tuple(sorted(first.values()))


def _measure(look: Look, subject: str) -> Measured | None:
    light = look.light(subject)
    table = look.piece(light.over) if light is not None and light.over else None
    if light is None or table is None or table.wall not in look.lines:
        return None
    group = [one for one in look.lights(whats=("pendant",)) if one.over == light.over and one.wall in look.lines]
    spots = [middle(one, look.lines) for one in group]
    if not spots:
        return None
    hangs = (sum(x for x, _ in spots) / len(spots), sum(y for _, y in spots) / len(spots))
    off = math.dist(hangs, middle(table, look.lines))
    return Measured(off, give=tape_give(0.0, 0.0), note=f"from the middle of {table.name}")


RULE = Rule(
    slug="pendant-off-center",
    title="Pendant off the table's middle",
    measures="distance on plan from the pendant to the middle of its table",
    unit="mm",
    band=Band(high=Twin(4), bad_high=Twin(16), aim=(0.0, 0.0)),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    absence="room-dim",
    family="light",
    family_by_room=True,
    profiles={"listing": Fraction(3, 2), "handing-back": Fraction(0)},
)
