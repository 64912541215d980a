"""Cloth or a tall piece close to a smoke alarm on the wall.

How to measure. On the wall, from the edge of the alarm to the nearest edge of
an open curtain, or of a piece that stands against the same wall.

Why: smoke must get to the alarm before the cloth burns.

Basis: common practice. The published distances speak of air registers, fans
and doors (State of Vermont fire code highlight A61, from NFPA 72, published
value S9) and of the ceiling (code trainers' notes on NFPA 72, 17.7.3.2.1,
S10). Our rule leaves them on purpose: a lay survey does not hold registers or
fan blades.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.items import Hung
from budgetfix.room.places import extent

BESIDE_WALL_MM = 300.0
Rect = tuple[float, float, float, float]


def _apart(one: Rect, two: Rect) -> float:
    dx = max(two[0] - one[2], one[0] - two[2], 0.0)
    dy = max(two[1] - one[3], one[1] - two[3], 0.0)
    return math.hypot(dx, dy)


def _crowding(look: Look, alarm: Hung) -> dict[str, Rect]:
    """What hangs or stands on the alarm's wall: (from, lower edge, to, upper edge)."""
    windows = {window.name for window in look.openings(whats=("window",), wall=alarm.wall)}
    found = {}
    for curtain in look.curtains():
        if curtain.window in windows:
            end = curtain.rod_from_left + curtain.rod_width
            found[curtain.name] = (curtain.rod_from_left, curtain.hem, end, curtain.rod_height)
    for piece in look.pieces(wall=alarm.wall):
        if piece.gap <= BESIDE_WALL_MM and piece.height >= alarm.bottom / 2:
            end = piece.from_left + extent(piece, look.lines)[0]
            found[piece.name] = (piece.from_left, 0.0, end, piece.height)
    return found


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(alarm.name for alarm in look.hung(whats=("alarm",)) if alarm.wall in look.lines)


def _measure(look: Look, subject: str) -> Measured | None:
    alarm = look.hung_one(subject)
    if alarm is None:
        return None
    edges = (alarm.from_left, alarm.bottom, alarm.from_left + alarm.width, alarm.bottom + alarm.height)
    apart = sorted((_apart(edges, rect), name) for name, rect in _crowding(look, alarm).items())
    if not apart:
        return None
    return Measured(apart[0][0], give=tape_give(0.0, 0.0), note=f"to {apart[0][1]}")


RULE = Rule(
    slug="alarm-crowded",
    title="Smoke alarm crowded",
    measures="distance from a smoke alarm on the wall to cloth or a tall piece on the same wall",
    unit="mm",
    band=Band(low=Twin(12), bad_low=Twin(4)),
    weight=Fraction(5),
    subjects=_subjects,
    measure=_measure,
    basis="common practice; compare S9, S10",
    safety=True,
)
