"""Seats without a surface for a cup.

How to measure. From each arm of the seat, and from the front of a sofa, to the
nearest low table, stand or ottoman. The figure is the share of the group's
seats without one; a sofa is one seat.

Why: cups end up on the floor.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from shapely.geometry import LineString

from budgetfix.base.twin import Twin
from budgetfix.inspection.grouping import box_around, main_of, seats_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import TABLES_TO_REACH, Piece
from budgetfix.room.places import footprint
from budgetfix.room.seating import SOFAS
from budgetfix.room.sides import sides

REACH = Twin(18, 460)
SURFACES = (*TABLES_TO_REACH, "console table")


def _served(look: Look, seat: Piece) -> bool:
    its = sides(seat, look.lines)
    edges = [LineString(its.left), LineString(its.right)]
    if seat.what in SOFAS:
        edges.append(LineString(its.front))
    reach = look.mm(REACH) + 0.1
    tables = look.pieces(whats=SURFACES, box=box_around(look, seat, reach))
    spots = [footprint(table, look.lines) for table in tables if table.surface and table.wall in look.lines]
    return any(edge.distance(spot) <= reach for edge in edges for spot in spots)


def _subjects(look: Look) -> tuple[str, ...]:
    main = main_of(look)
    return () if main is None else (main.name,)


def _measure(look: Look, subject: str) -> Measured | None:
    main, seats = main_of(look), seats_of(look)
    if main is None or main.name != subject or not seats:
        return None
    without = [seat.name for seat in seats if not _served(look, seat)]
    note = "no table at " + ", ".join(without) if without else "a table at every seat"
    return Measured(len(without) / len(seats), severity=Fraction(len(without), len(seats)), note=note)


RULE = Rule(
    slug="seat-without-table",
    title="Seats without a table",
    measures="share of seats without a surface within 18 in (460 mm) of an arm, or of a sofa's front",
    unit="ratio",
    band=Band(high=0.0, bad_high=1.0, aim=(0.0, 0.0)),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
    sound_words="a table within 18 in (460 mm) of every seat",
    bad_words="no seat has one",
    aim_words="the same",
)
