"""More than 4 kg (9 lb) over a bed or a sofa, on strips or a single nail.

How to measure. Weigh the picture on the kitchen or bathroom scales; look at
what it hangs on. It counts as over a piece that the survey names, or over any
part of a seat or bed within 12 in (300 mm) of the same wall. Where the survey
does not say what holds it, the finding is uncertain.

Why: what hangs over a head must not come down.

Basis: common practice. Read what the strips carry; local codes and your lease
come first.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.groups import ART
from budgetfix.room.items import Hung, Piece
from budgetfix.room.stretches import along_wall, overlap

HEAVY_KG = 4.0
WEAK = ("strips", "nail", "none")
HEADS = ("sofa", "corner sofa", "loveseat", "daybed", "bed", "armchair")
NEAR = Twin(12, 300)


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(one.name for one in look.hung(whats=ART) if one.weight and one.wall in look.lines)


def _below(look: Look, frame: Hung) -> Piece | None:
    """The seat or bed that the frame hangs over."""
    if frame.over:
        piece = look.piece(frame.over)
        return piece if piece is not None and piece.what in HEADS else None
    edges = (frame.from_left, frame.from_left + frame.width)
    for piece in sorted(look.pieces(whats=HEADS, wall=frame.wall), key=lambda one: one.name):
        low, high, near = along_wall(piece, look.lines, frame.wall)
        if near <= look.mm(NEAR) + 0.1 and overlap(edges, (low, high)) > 0:
            return piece
    return None


def _measure(look: Look, subject: str) -> Measured | None:
    frame = look.hung_one(subject)
    if frame is None or not frame.weight or frame.wall not in look.lines or _below(look, frame) is None:
        return None
    heavy = frame.weight > HEAVY_KG
    weak = heavy and frame.fixing in WEAK
    note = f"{frame.weight:g} kg, fixing {frame.fixing}"
    return Measured(float(weak), severity=Fraction(int(weak)), note=note, uncertain=heavy and frame.fixing == "unknown")


RULE = Rule(
    slug="heavy-over-head",
    title="Heavy picture over a head",
    measures="weight over a head on a weak fixing",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(4),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    safety=True,
    sound_words="two screws, or 4 kg at most",
    bad_words="heavier, on strips, one nail or nothing",
)
