"""A rug under a dining table that a chair's back legs fall off.

How to measure. On each side where chairs stand: from the edge of the table to
the edge of the rug. The shortest side counts.

Why: a chair pushed back catches the edge.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.places import footprint
from budgetfix.room.sides import span

CHAIRS = ("dining chair", "chair")


def _subjects(look: Look) -> tuple[str, ...]:
    tables = {table.name for table in look.pieces(whats=("dining table",))}
    return tuple(rug.name for rug in look.rugs() if rug.under in tables and rug.wall in look.lines)


def _measure(look: Look, subject: str) -> Measured | None:
    rug = look.rug(subject)
    table = look.piece(rug.under) if rug is not None and rug.under else None
    if rug is None or table is None or table.wall not in look.lines:
        return None
    line, spot, cloth = look.lines[table.wall], footprint(table, look.lines), footprint(rug, look.lines)
    ways = [line.along, line.inward, (-line.along[0], -line.along[1]), (-line.inward[0], -line.inward[1])]
    used = set()
    for chair in look.pieces(whats=CHAIRS):
        if chair.at == table.name and chair.wall in look.lines:
            seat = footprint(chair, look.lines)
            used.add(max((span(seat, way)[1] - span(spot, way)[1], at) for at, way in enumerate(ways))[1])
    beyond = [span(cloth, ways[at])[1] - span(spot, ways[at])[1] for at in sorted(used)]
    return Measured(min(beyond), give=tape_give(0.0, 0.0), note="on its shortest side") if beyond else None


RULE = Rule(
    slug="rug-catches-chairs",
    title="Rug catches the chairs",
    measures="how far a rug reaches beyond the dining table on the sides with chairs",
    unit="mm",
    band=Band(low=Twin(24, 610), bad_low=Twin(10), aim=(Twin(24, 610), Twin(30))),
    weight=Fraction(3),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="rug size",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
)
