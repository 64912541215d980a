"""A lamp farther from its socket than its lead is long.

How to measure. Along the floor from the foot of the lamp to its socket (the
nearest one, if none is named), and the lead itself.

Why: extension leads across the floor are tripped over and overloaded.

Basis: common practice; what a flexible lead may not do is in NFPA 70 (2020)
400.12 (published value S7). A lead that crosses a way is charged as
cable-across-route, and there only.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.base.numbers import TOLERANCE
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.items import Light
from budgetfix.room.places import middle


def _stand(look: Look, light: Light) -> tuple[float, float] | None:
    if light.on:
        piece = look.piece(light.on)
        if piece is not None and piece.wall in look.lines:
            return middle(piece, look.lines)
    return middle(light, look.lines) if light.wall in look.lines else None


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(light.name for light in look.lights() if light.lead is not None)


def _measure(look: Look, subject: str) -> Measured | None:
    light = look.light(subject)
    stand = None if light is None else _stand(look, light)
    if light is None or light.lead is None or stand is None:
        return None
    sockets = [socket for socket in look.sockets() if socket.wall in look.lines]
    named = [socket for socket in sockets if socket.name == light.socket] or sockets
    if not named:
        return None
    spots = [(math.dist(stand, look.lines[one.wall].point(one.from_left)), one.name) for one in named]
    away, name = min(spots)
    missing = away - light.lead
    unsure = abs(missing) < tape_give(away, light.lead) or look.guessed(subject, "lead")
    severity = Fraction(1) if missing > TOLERANCE["mm"] else Fraction(0)
    return Measured(missing, severity=severity, note=f"{away:.0f} mm to {name}", uncertain=unsure)


RULE = Rule(
    slug="lead-too-short",
    title="Lead too short",
    measures="distance from the lamp to its socket, less the lead's length",
    unit="mm",
    band=Band(high=0.0),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice; S7 (NFPA 70 400.12)",
    absence="one-light-only",
    safety=True,
    sound_words="the lead reaches the socket",
    bad_words="it does not",
)
