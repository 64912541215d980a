"""A bed with nothing at its head.

How to measure. Look at the wall behind the pillows: a headboard, or a picture
over the bed whose lower edge is no more than 24 in (610 mm) above the
mattress. What hangs higher does not belong to the bed.

Why: without it the bed looks pushed there for the night.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import Hung, Piece
from budgetfix.room.places import extent

HIGHEST = Twin(24, 610)
KINDS = ("picture", "mirror", "shelf")


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(bed.name for bed in look.pieces(whats=("bed",)) if bed.wall in look.lines)


def _at_head(look: Look, bed: Piece, hung: Hung) -> bool:
    mattress = bed.height if bed.seat is None else bed.seat
    end = bed.from_left + extent(bed, look.lines)[0]
    beside = hung.over == bed.name or (hung.from_left < end and hung.from_left + hung.width > bed.from_left)
    return beside and hung.bottom - mattress <= look.mm(HIGHEST) + 0.1


def _measure(look: Look, subject: str) -> Measured | None:
    bed = look.piece(subject)
    if bed is None:
        return None
    if bed.headboard:
        return Measured(0.0, severity=Fraction(0), note="headboard")
    if any(_at_head(look, bed, hung) for hung in look.hung(whats=KINDS, wall=bed.wall)):
        return Measured(0.0, severity=Fraction(0), note="picture")
    return Measured(1.0, severity=Fraction(1), note="bare")


RULE = Rule(
    slug="bed-headless",
    title="Nothing at the head of the bed",
    measures="whether a bed has a headboard or a picture at its head",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    profiles={"handing-back": Fraction(0)},
    sound_words="headboard or picture",
    bad_words="bare",
)
