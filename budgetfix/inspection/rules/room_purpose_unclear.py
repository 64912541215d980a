"""A room that shows more than one use (listing only).

How to measure. No tape: beside what the room is for, look for a desk, a bed or
a dining table that says otherwise.

Why: a photograph must say in a second what the room is.

Basis: common practice of home stagers.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule

USES = {"desk": "work", "bed": "sleep", "dining table": "meals"}
OWN = {
    "bedroom": ("sleep",),
    "dining room": ("meals",),
    "living-dining room": ("meals",),
    "kitchen": ("meals",),
    "study": ("work",),
}


def _subjects(look: Look) -> tuple[str, ...]:
    return ("room",) if look.walls else ()


def _measure(look: Look, _subject: str) -> Measured | None:
    own = OWN.get(look.facts.kind, ())
    others = sorted({USES[piece.what] for piece in look.pieces(whats=tuple(USES))} - set(own))
    severity = Fraction(1) if others else Fraction(0)
    return Measured(
        float(len(others)), severity=severity, note="also for " + ", ".join(others) if others else "one use"
    )


RULE = Rule(
    slug="room-purpose-unclear",
    title="Room shows more than one use",
    measures="uses in view beside the room's own",
    unit="count",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    profiles={"living": Fraction(0), "handing-back": Fraction(0)},
    sound_words="one use",
    bad_words="more than one",
)
