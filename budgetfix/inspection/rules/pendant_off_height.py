"""A pendant too high or too low over its table, or too low where people walk.

How to measure. From the table's top to the lower edge of the pendant; without
a table, from the floor: there it is a hazard. Over a table the band rises 3 in
(75 mm) for every foot (305 mm) of ceiling above 8 ft (2440 mm).

Why: too high it dazzles, too low it hides the person opposite, and heads meet
it.

Basis: common practice over a table; over the floor the headroom of 80 in of
the ABA and ADA Standards 307.4 (published value C9).
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
        return Measured(
            light.bottom, give=tape_give(light.bottom), band=OVER_FLOOR, note="above the floor", hazard=True
        )
    gap = light.bottom - table.height
    return Measured(gap, give=tape_give(light.bottom, table.height), band=_over_table(look), note=f"above {table.name}")


RULE = Rule(
    slug="pendant-off-height",
    title="Pendant hangs too high or too low",
    measures="lower edge of a pendant above its table, or above the floor",
    unit="mm",
    band=OVER_TABLE,
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice; C9 (ABA/ADA 307.4) over the floor",
    absence="room-dim",
    family="light",
    family_by_room=True,
    profiles={"listing": Fraction(3, 2)},
    shown=(("Over a table", OVER_TABLE), ("Over the floor", OVER_FLOOR)),
)
