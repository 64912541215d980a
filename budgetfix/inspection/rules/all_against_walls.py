"""Every seat pushed against a wall in a room that is large enough to float one.

How to measure. From the back of each seat to the wall behind it: within 3 in
(75 mm) it stands at the wall. All seats of the room count. Where the room's
short side is under 12 ft (3660 mm), of an L that of the arm that holds the
seats, the rule is silent, and with one seat.

Why: the seats stand like in a waiting room, too far apart to talk.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from itertools import combinations, product

from shapely.geometry import Polygon

from budgetfix.base.twin import Twin
from budgetfix.inspection.grouping import GROUP
from budgetfix.inspection.look import Box, Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import SEATS, Piece
from budgetfix.room.places import footprint, rectangle
from budgetfix.room.sides import free_ahead, sides

AT_WALL = Twin(3)
LARGE = Twin(144, 3660)
EDGE_MM = 1.0


def _seats(look: Look) -> list[Piece]:
    return [seat for seat in look.pieces(whats=SEATS) if seat.wall in look.lines]


def _subjects(look: Look) -> tuple[str, ...]:
    seats = _seats(look)
    large = len(seats) > 1 and _short_side(look, seats) >= look.mm(LARGE) - 0.1
    return (GROUP,) if large else ()


def _short_side(look: Look, seats: list[Piece]) -> float:
    """The short side of the rectangle of floor that holds the seats: of an L, the arm that they stand in."""
    spots = [footprint(seat, look.lines).bounds for seat in seats]
    left, near = (min(spot[axis] for spot in spots) + EDGE_MM for axis in (0, 1))
    right, far = (max(spot[axis] for spot in spots) - EDGE_MM for axis in (2, 3))
    parts = _parts(look.outline)
    found = [min(c - a, d - b) for a, b, c, d in parts if a <= left and b <= near and right <= c and far <= d]
    x0, y0, x1, y1 = look.outline.bounds
    return max(found, default=min(x1 - x0, y1 - y0))


@lru_cache(maxsize=64)
def _parts(outline: Polygon) -> tuple[Box, ...]:
    """Every rectangle between the corners of a room that is all floor."""
    xs, ys = (sorted({round(spot[axis], 3) for spot in outline.exterior.coords}) for axis in (0, 1))
    floor = outline.buffer(EDGE_MM)
    boxes = [(a, b, c, d) for (a, c), (b, d) in product(combinations(xs, 2), combinations(ys, 2))]
    return tuple(one for one in boxes if floor.covers(rectangle(*one)))


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
    unit="ratio",
    band=Band(high=2 / 3, bad_high=1.0),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
    sound_words="two thirds of the seats at a wall, or fewer",
    bad_words="all",
)
