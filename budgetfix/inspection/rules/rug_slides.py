"""A rug without a pad on a hard floor.

How to measure. No tape: push the rug with a foot, then lift a corner and look
for a pad.

Why: people slip, and a rug that creeps curls up at the edge.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import Rug
from budgetfix.room.places import footprint
from budgetfix.room.sides import straight_ways

PLAIN, PINNED, WALKED = Fraction(1), Fraction(1, 3), Fraction(4, 3)
"""Shares of weight 3: weights 3, 1 and 4."""
PINS = 2
HELD_MM2 = 2500.0
"""A piece holds a rug when it covers at least 50 x 50 mm of it."""


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(rug.name for rug in look.rugs()) if look.facts.floor == "hard" else ()


def _pinned(look: Look, rug: Rug) -> bool:
    spot = footprint(rug, look.lines)
    x0, y0, x1, y1 = spot.bounds
    pieces = [piece for piece in look.pieces(box=(x0, y0, x1, y1)) if not piece.hangs]
    return sum(footprint(piece, look.lines).intersection(spot).area >= HELD_MM2 for piece in pieces) >= PINS


def _walked(look: Look, rug: Rug) -> bool:
    home = look.household
    if home.toddlers or home.walkers:
        return True
    ways = straight_ways(look.openings(whats=("door", "opening")), look.lines)
    spot = footprint(rug, look.lines)
    return any(way.intersects(spot) for way in ways)


def _measure(look: Look, subject: str) -> Measured | None:
    rug = look.rug(subject)
    if rug is None or rug.wall not in look.lines:
        return None
    if rug.pad:
        return Measured(0.0, severity=Fraction(0), note="pad")
    if _walked(look, rug):
        return Measured(1.0, severity=WALKED, note="no pad, and people walk over it")
    if _pinned(look, rug):
        return Measured(1.0, severity=PINNED, note="no pad, but furniture holds it")
    return Measured(1.0, severity=PLAIN, note="no pad")


RULE = Rule(
    slug="rug-slides",
    title="Rug slides",
    measures="whether a rug on a hard floor has a pad under it",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    safety=True,
    absence="floor-bare",
    sound_words="a pad under it",
    bad_words=(
        "no pad; severity 1/3 (weight 1) where two pieces stand on it and hold it, 4/3 (weight 4) where a way between "
        "doors crosses it, or with toddlers or walking frames about"
    ),
)
