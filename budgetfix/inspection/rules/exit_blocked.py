"""A bedroom's escape window with furniture before it.

How to measure. Stand before the window that the survey marks as the escape:
nothing may stand within 24 in (610 mm) of it over its whole width. Heaters do
not count, nor does what stands lower than 12 in (300 mm).

Why: it is the second way out in a fire, and a way out is free or it is not.

Basis: common practice; local codes say more, and they decide.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import HEATERS
from budgetfix.room.places import footprint, rectangle

FREE = Twin(24, 610)
LOW_MM = 300.0


def _subjects(look: Look) -> tuple[str, ...]:
    windows = look.openings(whats=("window",))
    return tuple(window.name for window in windows if window.escape and window.wall in look.lines)


def _measure(look: Look, subject: str) -> Measured | None:
    window = look.opening(subject)
    if window is None or not window.escape:
        return None
    line = look.lines[window.wall]
    (x0, y0), (x1, y1) = line.point(window.from_left), line.point(window.from_left + window.width, look.mm(FREE))
    box = (min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))
    floor = rectangle(*box)
    before = [
        piece.name
        for piece in look.pieces(box=box)
        if piece.what not in HEATERS
        and piece.height > LOW_MM
        and footprint(piece, look.lines).intersection(floor).area > 1.0
    ]
    if not before:
        return Measured(0.0, severity=Fraction(0), note="free")
    return Measured(1.0, severity=Fraction(1), note=f"{min(before)} stands before it")


RULE = Rule(
    slug="exit-blocked",
    title="Escape window blocked",
    measures="whether furniture stands before a bedroom's escape window",
    unit="yes",
    band=Band(high=0.0, bad_high=1.0),
    weight=Fraction(5),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    safety=True,
    lifting_helps=True,
    sound_words="free",
    bad_words="something stands before it",
)
