"""A sofa too long for its wall, or a sofa and table that fill the floor.

How to measure. The sofa's length, divided by the wall that its back stands at
(within 12 in, 300 mm). Then the floor under the sofa and its coffee table,
divided by the floor that other furniture leaves. The worse counts.

Why: the room seems built around one thing that nobody can walk past.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.grouping import main_of, tables_before
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, slope
from budgetfix.room.places import extent, footprint, turned
from budgetfix.room.seating import SOFAS

WALL = Band(high=0.75, bad_high=0.95, aim=(None, 0.67))
FLOOR = Band(high=0.40, bad_high=0.60)
AT_WALL_MM = 300.0


def _subjects(look: Look) -> tuple[str, ...]:
    main = main_of(look)
    return (main.name,) if main is not None and main.what in SOFAS else ()


def _floor_share(look: Look, own: set[str]) -> float:
    pieces = [piece for piece in look.pieces() if piece.wall in look.lines and not piece.hangs]
    areas = {piece.name: footprint(piece, look.lines).area for piece in pieces}
    free = look.outline.area - sum(area for name, area in sorted(areas.items()) if name not in own)
    return sum(areas.get(name, 0.0) for name in sorted(own)) / free if free > 0 else 1.0


def _measure(look: Look, subject: str) -> Measured | None:
    sofa = look.piece(subject)
    if sofa is None or sofa.wall not in look.lines:
        return None
    tables = {table.name for table in tables_before(look, sofa)}
    judged = [(_floor_share(look, {subject, *tables}), FLOOR, "of the free floor")]
    if sofa.gap <= AT_WALL_MM and not turned(sofa, look.lines):
        judged.append((extent(sofa, look.lines)[0] / look.lines[sofa.wall].length, WALL, "of its wall"))
    graded = [(slope(value, band, "ratio", look.household.metric), note, value, band) for value, band, note in judged]
    _, note, value, band = max(graded, key=lambda one: one[:2])
    return Measured(value, give=0.005, band=band, note=note)


RULE = Rule(
    slug="sofa-too-big",
    title="Sofa too big for the room",
    measures="sofa's length divided by its wall's; sofa and table divided by the free floor",
    unit="ratio",
    band=WALL,
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
    shown=(("Of its wall", WALL), ("Of the free floor", FLOOR)),
)
