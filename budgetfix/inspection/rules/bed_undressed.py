"""A bed that is not made up (listing only).

How to measure. No tape: look at the bed from the door. Made up is a cover
without creases down to the frame, and pillows at the head.

Why: the bed is the largest thing in the picture, and bare bedding is all that
buyers remember.

Basis: common practice of home stagers.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(bed.name for bed in look.pieces(whats=("bed",)))


def _measure(look: Look, subject: str) -> Measured | None:
    bed = look.piece(subject)
    if bed is None:
        return None
    note = "not made up" if bed.undressed else "made up"
    return Measured(float(bed.undressed), severity=Fraction(int(bed.undressed)), note=note)


RULE = Rule(
    slug="bed-undressed",
    title="Bed not made up",
    measures="whether a bed is made up",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    profiles={"living": Fraction(0), "handing-back": Fraction(0)},
    sound_words="made up",
    bad_words="not made up",
)
