"""A flexible lead that lies where people walk.

How to measure. No tape: follow each lead from the lamp to its socket. Does it
cross a way between doors, or from a door to the seats or the bed?

Why: people trip on it, pull the lamp down, or wear the lead through.

Basis: common practice; NFPA 70 (2020) 400.12 (published value S7) forbids to
hide a lead in walls or floors or to run it through doorways, so under the rug
is no cure.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule

LOOSE, COVERED = Fraction(1), Fraction(2, 5)


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(light.name for light in look.lights() if light.lead is not None or light.lead_over_route)


def _measure(look: Look, subject: str) -> Measured | None:
    light = look.light(subject)
    if light is None:
        return None
    if not light.lead_over_route:
        return Measured(0.0, severity=Fraction(0))
    if light.lead_covered:
        return Measured(1.0, severity=COVERED, note="taped or covered")
    return Measured(1.0, severity=LOOSE, note="loose lead on the way")


RULE = Rule(
    slug="cable-across-route",
    title="Lead lies across a way",
    measures="whether a lamp's lead lies where people walk",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(4),
    subjects=_subjects,
    measure=_measure,
    basis="common practice; S7 (NFPA 70 400.12) for what is no cure",
    absence="one-light-only",
    safety=True,
    sound_words="no lead on a way",
    bad_words="one lies there; severity 0.4 while it is taped down or under a cover",
)
