"""Pictures too high or too low.

How to measure. Over furniture: from the piece's upper edge to the group's
lower edge. On a bare wall: the middle of the group above the floor. What
leans, or stands on a ledge or a piece, is left out.

Why: a picture that floats away belongs to nothing.

Basis: 57 to 60 in to the middle is the popular rule (general hanging advice,
published value P23); the US Navy manual NAVEDTRA 14065 sets the axis of a row
at 5 1/2 ft (P22), for people who stand: standing eyes are 59 to 69 in up
(NUREG-0700 rev. 3, Table 11.4, A3). Our band leaves P22 on purpose and ends at
62 in: homes are looked at sitting too (common practice). A band in the brief
speaks of the middle.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.art import group_names, group_of, piece_below
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give

MIDDLE = Band(Twin(56, 1420), Twin(62, 1575), Twin(45), Twin(72), (Twin(57), Twin(60)))
GAP = Band(Twin(4, 100), Twin(10, 250), 0.0, Twin(18), (Twin(6), Twin(8)))


def _measure(look: Look, subject: str) -> Measured | None:
    group = group_of(look, subject)
    if group is None or all(frame.leaned or frame.on for frame in group.frames):
        return None
    piece = piece_below(look, group)
    if piece is not None:
        gap = group.low - piece.height
        give, unsure = tape_give(group.low, piece.height), look.guessed(piece.name, "height")
        note = f"above the {piece.name}"
        return Measured(gap, give=give, band=GAP, note=note, uncertain=unsure, own_band=True)
    middle = (group.low + group.high) / 2
    return Measured(middle, give=tape_give(group.low) + tape_give(group.high - group.low) / 2, note="to the middle")


RULE = Rule(
    slug="art-off-height",
    title="Picture off height",
    measures="gap over the piece below, or height of the middle",
    unit="mm",
    band=MIDDLE,
    weight=Fraction(3),
    subjects=group_names,
    measure=_measure,
    basis="P22, P23, A3; gap common practice",
    family="picture group",
    absence="wall-bare",
    profiles={"handing-back": Fraction(0)},
    shown=(("Over furniture, the gap", GAP), ("On a bare wall, the middle", MIDDLE)),
)
