"""A bed without a light that each sleeper can switch from it.

How to measure. Lie down on each side and reach out: a lamp at that side
counts, no more than 24 in (610 mm) from the bed. The figure is the share of
sleepers without.

Why: nobody likes to cross a dark room to bed.

Basis: common practice.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import Light, Piece
from budgetfix.room.places import middle
from budgetfix.room.sides import Point, along, length, middle_of, sides

REACH = Twin(24, 610)
FOR_TWO = Twin(53, 1350)
"""A bed at least this wide is for two unless the survey says otherwise."""
AT_BED = ("table lamp", "wall light", "floor lamp")


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(bed.name for bed in look.pieces(whats=("bed",)) if bed.wall in look.lines)


def _spot(look: Look, light: Light) -> Point | None:
    if light.on:
        piece = look.piece(light.on)
        if piece is not None and piece.wall in look.lines:
            return middle(piece, look.lines)
    return middle(light, look.lines) if light.wall in look.lines else None


def _sides_lit(look: Look, bed: Piece) -> set[str]:
    its = sides(bed, look.lines)
    left = (its.look[1], -its.look[0])
    center, half = along(middle_of(its.front), left), length(its.front) / 2
    head, deep = along(its.back[0], its.look), length(its.left)
    lit = set()
    for light in look.lights(whats=AT_BED):
        spot = _spot(look, light)
        if spot is None:
            continue
        aside, ahead = along(spot, left) - center, along(spot, its.look) - head
        beyond = math.hypot(max(abs(aside) - half, 0.0), max(-ahead, ahead - deep, 0.0))
        if beyond <= look.mm(REACH) + 0.1:
            lit.add("left" if aside > 0 else "right")
    return lit


def _measure(look: Look, subject: str) -> Measured | None:
    bed = look.piece(subject)
    if bed is None:
        return None
    sleepers = bed.sleepers or (2 if bed.width >= look.mm(FOR_TWO) else 1)
    without = max(0, min(sleepers, 2) - len(_sides_lit(look, bed)))
    return Measured(without / min(sleepers, 2), note=f"{without} of {min(sleepers, 2)} sleepers without")


RULE = Rule(
    slug="bedroom-light-not-at-bed",
    title="No light at the bed",
    measures="share of sleepers without a light to switch from the bed",
    unit="ratio",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="light",
    family_by_room=True,
    profiles={"listing": Fraction(3, 2), "handing-back": Fraction(0)},
    sound_words="one for each sleeper",
    bad_words="none; one for two is half",
)
