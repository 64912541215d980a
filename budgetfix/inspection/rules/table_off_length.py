"""A coffee table too short or too long for the sofa.

How to measure. The table's side along the sofa, divided by the sofa's front (a
corner sofa's inner side, about 35 in (900 mm) less than its whole front). Two
tables before one sofa count together.

Why: a small table looks lost before a long sofa, and the ends of the sofa
cannot use it.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.grouping import main_of, seat_length, tables_before
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import Piece
from budgetfix.room.places import footprint
from budgetfix.room.seating import SOFAS
from budgetfix.room.sides import sides, span

AIM = (0.5, 0.67)
PLAIN = Band(low=0.45, high=0.70, bad_low=0.20, bad_high=1.0, aim=AIM)
ROUND = Band(low=0.35, high=0.70, bad_low=0.20, bad_high=1.0, aim=AIM)


def _tables(look: Look) -> tuple[Piece | None, tuple[Piece, ...]]:
    main = main_of(look)
    if main is None or main.what not in SOFAS:
        return (None, ())
    return (main, tables_before(look, main))


def _subjects(look: Look) -> tuple[str, ...]:
    """The first table before the sofa stands for all of them."""
    return tuple(table.name for table in _tables(look)[1][:1])


def _measure(look: Look, subject: str) -> Measured | None:
    sofa, tables = _tables(look)
    if sofa is None or not tables or tables[0].name != subject:
        return None
    its = sides(sofa, look.lines)
    aside = (its.look[1], -its.look[0])
    spans = [span(footprint(table, look.lines), aside) for table in tables]
    ratio = sum(high - low for low, high in spans) / seat_length(look, sofa)
    soft = tables[0].round or len(tables) > 1 or tables[0].what == "nesting tables"
    return Measured(ratio, give=0.01, band=ROUND if soft else PLAIN, note=f"of {sofa.name}")


RULE = Rule(
    slug="table-off-length",
    title="Coffee table off the sofa's length",
    measures="length of the coffee table divided by the sofa's",
    unit="ratio",
    band=PLAIN,
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    absence="seat-without-table",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
    shown=(("One table", PLAIN), ("A round one, or a pair", ROUND)),
)
