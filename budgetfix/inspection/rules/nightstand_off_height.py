"""A nightstand much higher or lower than the mattress.

How to measure. From the floor to the stand's top, less from the floor to the
top of the mattress. Below 0 the stand is lower.

Why: one reaches down for a glass in the dark, or hits a corner with the elbow.

Basis: common practice.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.items import Piece
from budgetfix.room.places import middle


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(stand.name for stand in look.pieces(whats=("nightstand",)))


def _bed_of(look: Look, stand: Piece) -> Piece | None:
    if stand.at:
        return look.piece(stand.at)
    beds = [bed for bed in look.pieces(whats=("bed",)) if bed.wall in look.lines]
    if not beds or stand.wall not in look.lines:
        return None
    spot = middle(stand, look.lines)
    return min(beds, key=lambda bed: (math.dist(spot, middle(bed, look.lines)), bed.name))


def _measure(look: Look, subject: str) -> Measured | None:
    stand = look.piece(subject)
    bed = None if stand is None else _bed_of(look, stand)
    if stand is None or bed is None:
        return None
    mattress = bed.height if bed.seat is None else bed.seat
    top = stand.height if stand.seat is None else stand.seat
    unsure = look.guessed(bed.name, "seat") or look.guessed(subject, "height")
    return Measured(top - mattress, give=tape_give(top, mattress), note="above the mattress", uncertain=unsure)


RULE = Rule(
    slug="nightstand-off-height",
    title="Nightstand off the mattress's height",
    measures="height of a nightstand's top above the top of the mattress",
    unit="mm",
    band=Band(low=Twin(-4), high=Twin(4), bad_low=Twin(-9), bad_high=Twin(9), aim=(Twin(-2), Twin(2))),
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    absence="bed-lopsided",
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
)
