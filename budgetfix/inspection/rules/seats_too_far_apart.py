"""A seat too far from the main seat that it faces, or too near.

How to measure. From front edge to front edge, the shortest way, between the
main seat and each seat that faces it (fronts within 45 degrees of opposite).

Why: farther apart people raise their voices, nearer their knees meet.

Basis: 60 in between facing seats, a circle of 10 ft across (HUD, Manual of
Acceptable Practices vol. 4 (1973), published value C15); a conversation area
of 8 to 12 ft (classroom slides on living areas, C21); social distance 4 to 7
ft close, 7 to 12 ft far (Hall, The Hidden Dimension, 1966, C22). Our band
leaves the 60 in of C15 on purpose: small rooms talk well at 4 ft.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.grouping import main_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.items import SEATS, Piece
from budgetfix.room.seating import angle_between, front_edge, look_direction

OPPOSITE = 45.0
BAND = Band(
    low=Twin(48, 1220),
    high=Twin(96, 2440),
    bad_low=Twin(24, 610),
    bad_high=Twin(144, 3660),
    aim=(Twin(60), Twin(84)),
)


def _faces(look: Look, seat: Piece, main: Piece) -> bool:
    x, y = look_direction(main, look.lines)
    return angle_between(look_direction(seat, look.lines), (-x, -y)) <= OPPOSITE + 0.01


def _subjects(look: Look) -> tuple[str, ...]:
    main = main_of(look)
    if main is None:
        return ()
    seats = [seat for seat in look.pieces(whats=SEATS) if seat.wall in look.lines]
    return tuple(seat.name for seat in seats if seat.name != main.name and _faces(look, seat, main))


def _measure(look: Look, subject: str) -> Measured | None:
    main, seat = main_of(look), look.piece(subject)
    if main is None or seat is None or seat.wall not in look.lines:
        return None
    apart = float(front_edge(main, look.lines).distance(front_edge(seat, look.lines)))
    return Measured(apart, give=tape_give(apart), note=f"from {main.name}")


RULE = Rule(
    slug="seats-too-far-apart",
    title="Facing seats too far apart",
    measures="front edge to front edge of seats that face each other",
    unit="mm",
    band=BAND,
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="C15 (HUD 1973), C21, C22 (Hall 1966)",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
)
