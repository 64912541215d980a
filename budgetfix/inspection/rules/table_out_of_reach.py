"""A coffee table too far from the main seat, or too near it.

How to measure. From the front edge of the seat straight out to the nearest
edge of the table.

Why: nearer, knees do not pass; farther, nobody reaches a cup without getting
up.

Basis: 1 to 1 1/2 ft from coffee table to seat (classroom handout Arranging
Space, published value C20); aim and glaring limits are common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.grouping import main_of, tables_before
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.places import footprint
from budgetfix.room.sides import along, sides, span


def _subjects(look: Look) -> tuple[str, ...]:
    main = main_of(look)
    return () if main is None else tuple(table.name for table in tables_before(look, main))


def _measure(look: Look, subject: str) -> Measured | None:
    table, main = look.piece(subject), main_of(look)
    if table is None or main is None:
        return None
    its = sides(main, look.lines)
    gap = span(footprint(table, look.lines), its.look)[0] - along(its.front[0], its.look)
    return Measured(gap, give=tape_give(gap), note=f"from {main.name}")


RULE = Rule(
    slug="table-out-of-reach",
    title="Coffee table out of reach",
    measures="front of the main seat to the coffee table",
    unit="mm",
    band=Band(low=Twin(12, 300), high=Twin(18, 460), bad_low=Twin(6), bad_high=Twin(28), aim=(Twin(14), Twin(18, 460))),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="C20; common practice",
    absence="seat-without-table",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
)
