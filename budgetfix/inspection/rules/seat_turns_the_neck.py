"""A seat of the group that faces one way while the screen is another way.

How to measure. Sit down, look straight ahead, then at the screen: the angle in
between, on plan. 30 degrees is a third of a quarter turn.

Why: heads turn, bodies do not, and the seat stays empty.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.inspection.screens import degrees, eye_of, face, screens, towards
from budgetfix.room.items import SEATS
from budgetfix.room.seating import group, look_direction


def _subjects(look: Look) -> tuple[str, ...]:
    if not screens(look):
        return ()
    seats = group(look.pieces(whats=SEATS), look.lines, look.household.metric)
    return tuple(seat.name for seat in seats)


def _measure(look: Look, subject: str) -> Measured | None:
    seat = look.piece(subject)
    shown = [one for one in look.hung(whats=("screen",)) if one.wall in look.lines]
    if seat is None or not shown:
        return None
    facing = look_direction(seat, look.lines)
    turns = [degrees(facing, towards(eye_of(look, seat), face(look, one))) for one in shown]
    return Measured(min(turns), give=1.0)


RULE = Rule(
    slug="seat-turns-the-neck",
    title="Seat turns the neck",
    measures="angle between where a seat faces and where the screen is",
    unit="degree",
    band=Band(high=30.0, bad_high=60.0, aim=(None, 0.0)),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="screen",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
)
