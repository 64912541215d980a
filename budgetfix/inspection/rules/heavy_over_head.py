"""More than 4 kg over a bed or a sofa, on strips or a single nail.

How to measure. Weigh the picture; look at what it hangs on.

Sound: two screws, or a lighter picture. Severity 1. Why: what hangs over a head must not come down.

Basis: common practice. Read what the strips carry; local codes and your lease come first.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule

HEAVY_KG = 4.0
WEAK = ("strips", "nail", "none")
HEADS = ("sofa", "corner sofa", "loveseat", "daybed", "bed", "armchair")


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(one.name for one in look.hung(whats=("picture", "mirror", "clock")) if one.over and one.weight)


def _measure(look: Look, subject: str) -> Measured | None:
    frame = look.hung_one(subject)
    piece = look.piece(frame.over) if frame is not None and frame.over else None
    if frame is None or piece is None or piece.what not in HEADS or frame.weight is None:
        return None
    weak = frame.weight > HEAVY_KG and frame.fixing in WEAK
    note = f"{frame.weight:g} kg on {frame.fixing}"
    return Measured(float(weak), severity=Fraction(int(weak)), note=note)


RULE = Rule(
    slug="heavy-over-head",
    title="Heavy picture over a head",
    measures="weight over a head on a weak fixing",
    how="Weigh the picture; look at what it hangs on.",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(4),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    why="What hangs over a head must not come down.",
    safety=True,
    sound_words="two screws, or 4 kg at most",
)
