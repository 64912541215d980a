"""A coffee table much higher or lower than the seat.

How to measure. From the floor to the table's top, less from the floor to the
front of the seat. Below 0 the table is lower.

Why: one bends down to a low table, and a high one stands in the view.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.grouping import main_of, tables_before
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give

SEAT_HEIGHT = Twin(17, 430)
"""Of a seat that was not measured (common practice)."""


def _subjects(look: Look) -> tuple[str, ...]:
    main = main_of(look)
    return () if main is None else tuple(table.name for table in tables_before(look, main))


def _measure(look: Look, subject: str) -> Measured | None:
    table, main = look.piece(subject), main_of(look)
    if table is None or main is None:
        return None
    seat = look.mm(SEAT_HEIGHT) if main.seat is None else main.seat
    unsure = main.seat is None or look.guessed(main.name, "seat") or look.guessed(subject, "height")
    return Measured(table.height - seat, give=tape_give(seat, table.height), note="above the seat", uncertain=unsure)


RULE = Rule(
    slug="table-off-height",
    title="Coffee table off the seat's height",
    measures="height of the coffee table's top above the seat",
    unit="mm",
    band=Band(low=Twin(-4), high=Twin(2), bad_low=Twin(-9), bad_high=Twin(9), aim=(Twin(-2), 0.0)),
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    absence="seat-without-table",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
)
