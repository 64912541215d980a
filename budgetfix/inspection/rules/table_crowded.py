"""Too little table for each person.

How to measure. On each side of the table: its length, divided by the chairs on
that side. A round table: once around (3.14 x its width), divided by all its
chairs.

Why: elbows meet.

Basis: common practice.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.items import Piece
from budgetfix.room.places import extent, footprint
from budgetfix.room.sides import span

CHAIRS = ("dining chair", "chair")


def _subjects(look: Look) -> tuple[str, ...]:
    chairs = {chair.at for chair in look.pieces(whats=CHAIRS)}
    tables = look.pieces(whats=("dining table",))
    return tuple(table.name for table in tables if table.name in chairs and table.wall in look.lines)


def _least_edge(look: Look, table: Piece, chairs: list[Piece]) -> float:
    """A chair at a corner counts to the edge that has most room for it."""
    line, spot = look.lines[table.wall], footprint(table, look.lines)
    out = [line.along, line.inward, (-line.along[0], -line.along[1]), (-line.inward[0], -line.inward[1])]
    along, off = extent(table, look.lines)
    lengths = [off, along, off, along]
    counts = [0, 0, 0, 0]
    edges = []
    for chair in chairs:
        beyond = [span(footprint(chair, look.lines), way)[1] - span(spot, way)[1] for way in out]
        edges.append([at for at in range(4) if beyond[at] > max(beyond) - 0.1])
    for several in sorted(edges, key=len):
        counts[max(several, key=lambda at: lengths[at] / (counts[at] + 1))] += 1
    return min(length / count for length, count in zip(lengths, counts, strict=True) if count)


def _measure(look: Look, subject: str) -> Measured | None:
    table = look.piece(subject)
    chairs = [chair for chair in look.pieces(whats=CHAIRS) if chair.at == subject and chair.wall in look.lines]
    if table is None or not chairs:
        return None
    each = math.pi * table.width / len(chairs) if table.round else _least_edge(look, table, chairs)
    return Measured(each, give=tape_give(0.0), note=f"{len(chairs)} chairs")


RULE = Rule(
    slug="table-crowded",
    title="Table crowded",
    measures="length of table edge for each person",
    unit="mm",
    band=Band(low=Twin(24, 610), bad_low=Twin(18)),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    profiles={"handing-back": Fraction(0)},
)
