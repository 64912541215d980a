"""Every seat pushed against a wall in a room that is large enough to float one.

How to measure. From the back of each seat to the wall behind it. Rooms whose short side is under 12 ft (3660 mm)
are silent, and rooms with one seat. All seats of the room count: pushed to the walls they may be too far apart to
be one group.

Sound: at most two thirds of the seats within 3 in (75 mm) of a wall. Glaring: all. Why: the seats stand like in a
waiting room, too far apart to talk.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.grouping import GROUP
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import SEATS, Piece
from budgetfix.room.sides import free_ahead, sides

AT_WALL = Twin(3)
LARGE = Twin(144, 3660)


def _seats(look: Look) -> list[Piece]:
    return [seat for seat in look.pieces(whats=SEATS) if seat.wall in look.lines]


def _subjects(look: Look) -> tuple[str, ...]:
    x0, y0, x1, y1 = look.outline.bounds
    large = min(x1 - x0, y1 - y0) >= look.mm(LARGE) - 0.1
    return (GROUP,) if large and len(_seats(look)) > 1 else ()


def _at_wall(look: Look, seat: Piece) -> bool:
    its = sides(seat, look.lines)
    behind = free_ahead(its.back, (-its.look[0], -its.look[1]), look.outline, (), 500.0)
    return behind <= look.mm(AT_WALL) + 0.1


def _measure(look: Look, _subject: str) -> Measured | None:
    seats = _seats(look)
    if len(seats) < 2:
        return None
    at_wall = sum(_at_wall(look, seat) for seat in seats)
    return Measured(at_wall / len(seats), note=f"{at_wall} of {len(seats)} seats")


RULE = Rule(
    slug="all-against-walls",
    title="All seats against the walls",
    measures="share of the seats within 3 in (75 mm) of the wall behind them",
    how="Measure from the back of each seat to the wall behind it.",
    unit="ratio",
    band=Band(high=2 / 3, bad_high=1.0),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    why="The seats stand like in a waiting room.",
    profiles={"listing": Fraction(6, 5)},
)
