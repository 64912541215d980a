"""A pendant too high or too low over its table, or too low where people walk.

How to measure. From the table's top to the lower edge of the pendant; without a table, from the floor.

Sound: 28 to 36 in (710 to 910 mm) above the table, plus 3 in (75 mm) for every foot of ceiling above 8 ft; over
the floor 80 in (2030 mm) or more. Aim: 30 to 34 in. Glaring: 10 in (250 mm) outside the band; 74 in (1880 mm) over
the floor. Why: too high it dazzles, too low it hides the person opposite, and heads meet it.

Basis: common practice over a table; ABA/ADA 307.4 headroom (published value C9: 80 in) over the floor.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give

OVER_TABLE = Band(low=Twin(28), high=Twin(36), bad_low=Twin(18), bad_high=Twin(46), aim=(Twin(30), Twin(34)))
OVER_FLOOR = Band(low=Twin(80, 2030), bad_low=Twin(74))
BEYOND = Twin(10)
USUAL_CEILING, FOOT, RISE = Twin(96, 2440), Twin(12, 305), Twin(3)


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(light.name for light in look.lights(whats=("pendant",)))


def _over_table(look: Look) -> Band:
    higher = max(0.0, look.facts.ceiling - look.mm(USUAL_CEILING)) / look.mm(FOOT) * look.mm(RISE)
    low, high = look.mm(Twin(28)) + higher, look.mm(Twin(36)) + higher
    beyond = look.mm(BEYOND)
    aim = (look.mm(Twin(30)) + higher, look.mm(Twin(34)) + higher)
    return Band(low, high, low - beyond, high + beyond, aim)


def _measure(look: Look, subject: str) -> Measured | None:
    light = look.light(subject)
    if light is None or light.bottom <= 0:
        return None
    table = look.piece(light.over) if light.over else None
    if table is None:
        return Measured(light.bottom, give=tape_give(light.bottom), band=OVER_FLOOR, note="above the floor")
    gap = light.bottom - table.height
    return Measured(gap, give=tape_give(light.bottom, table.height), band=_over_table(look), note=f"above {table.name}")


RULE = Rule(
    slug="pendant-off-height",
    title="Pendant hangs too high or too low",
    measures="lower edge of a pendant above its table, or above the floor",
    how="Measure from the table's top to the pendant's lower edge.",
    unit="mm",
    band=OVER_TABLE,
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice; C9 (ABA/ADA 307.4) over the floor",
    why="Too high it dazzles, too low it hides the person opposite.",
    absence="room-dim",
    family="light",
    family_by_room=True,
)
