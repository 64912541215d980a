"""A seating group on a hard floor without a rug.

How to measure. No tape: is there a rug on the floor within 48 in (1220 mm) of
the main seat?

Why: a rug is what makes several pieces one group, and it takes the noise out
of the room.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.grouping import GROUP, main_of, rugs_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule


def _subjects(look: Look) -> tuple[str, ...]:
    return (GROUP,) if look.facts.floor == "hard" and main_of(look) is not None else ()


def _measure(look: Look, _subject: str) -> Measured | None:
    rugs = rugs_of(look)
    if rugs:
        return Measured(0.0, severity=Fraction(0), note=", ".join(rug.name for rug in rugs))
    return Measured(1.0, severity=Fraction(1), note="no rug")


RULE = Rule(
    slug="floor-bare",
    title="Bare floor at the seats",
    measures="whether a seating group on a hard floor has a rug",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="rug size",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
    sound_words="a rug",
    bad_words="no rug",
)
