"""A rug that comes too near the walls.

How to measure. From each edge of the rug to the wall that it faces; the least
counts.

Why: a rug up to the wall looks like a carpet that was cut short.

Basis: common practice. There is no published row: the margin was searched for
in extension bulletins and not found.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.places import footprint

AIM = (Twin(8), Twin(18))
PLAIN = Band(low=Twin(6), bad_low=0.0, aim=AIM)
SMALL = Band(low=Twin(4), bad_low=0.0, aim=AIM)
SMALL_ROOM = Twin(120, 3050)


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(rug.name for rug in look.rugs() if rug.wall in look.lines)


def _measure(look: Look, subject: str) -> Measured | None:
    rug = look.rug(subject)
    if rug is None:
        return None
    spot, room = footprint(rug, look.lines), look.outline
    bare = float(spot.distance(room.exterior)) if room.contains(spot) else 0.0
    x0, y0, x1, y1 = room.bounds
    small = min(x1 - x0, y1 - y0) < look.mm(SMALL_ROOM) - 0.1
    return Measured(bare, give=tape_give(bare), band=SMALL if small else PLAIN, note="to the nearest wall")


RULE = Rule(
    slug="rug-tight-to-walls",
    title="Rug too near the walls",
    measures="bare floor between a rug and the nearest wall",
    unit="mm",
    band=PLAIN,
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="rug size",
    absence="floor-bare",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
    shown=(("In a room", PLAIN), ("In a room under 10 ft (3050 mm) wide", SMALL)),
)
