"""Loops of cable in view below a screen or a desk.

How to measure. Stand where people come in. Pull the tape along the longest
loop of cable that you see hanging or lying below the screen or the desk.

Why: the eye follows a line, and this one leads into a tangle.

Basis: common practice. A lead that people walk over is another fault, and a
hazard: cable-across-route.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give

LONG = Twin(24)
DESKS = ("desk",)


def _subjects(look: Look) -> tuple[str, ...]:
    screens = [one.name for one in look.hung(whats=("screen",)) if one.cables > 0]
    return (*screens, *(one.name for one in look.pieces(whats=DESKS) if one.cables > 0))


def _measure(look: Look, subject: str) -> Measured | None:
    thing = look.hung_one(subject) or look.piece(subject)
    if thing is None:
        return None
    over = thing.cables - look.mm(LONG)
    unsure = abs(over) <= tape_give(thing.cables)
    return Measured(thing.cables, severity=Fraction(int(over > 0.1)), note="of cable in view", uncertain=unsure)


RULE = Rule(
    slug="cables-on-show",
    title="Cables on show",
    measures="longest loop of cable in view below a screen or desk",
    unit="mm",
    band=Band(high=LONG),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="screen",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
    bad_words="any longer loop",
)
