"""A shelf, screen or sconce that stands out into a narrow way at the height of
head or shoulder.

How to measure. From the wall to the front of the thing, less what stands on
the floor below it (that warns the foot). Only things whose lower edge is more
than 27 in (690 mm) and no more than 80 in (2030 mm) up count, and only where
less than 36 in (910 mm) of floor is left before them.

Why: one walks into it in the dark, and a cane does not find it.

Basis: ABA and ADA Standards 307.2, at most 4 in (published value C7), and
307.5: what stands out may not take from the clear width (C10). Our rule leaves
307.2 on purpose where 36 in or more is left: at home people know their
shelves.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.tape import write_length
from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.room.items import Hung
from budgetfix.room.places import footprint
from budgetfix.room.sides import along, free_ahead, span, strip

FROM, UP_TO = Twin(27), Twin(80, 2030)
LEFT = Twin(36)
REACH_MM = 2000.0


def _stands_out(look: Look, hung: Hung) -> bool:
    return hung.what != "old holes" and look.mm(FROM) + 0.1 < hung.bottom <= look.mm(UP_TO) + 0.1


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(hung.name for hung in look.hung() if hung.wall in look.lines and _stands_out(look, hung))


def _measure(look: Look, subject: str) -> Measured | None:
    hung = look.hung_one(subject)
    if hung is None or hung.wall not in look.lines or not _stands_out(look, hung):
        return None
    line = look.lines[hung.wall]
    side = (line.point(hung.from_left), line.point(hung.from_left + hung.width))
    x0, y0, x1, y1 = strip(side, line.inward, REACH_MM).bounds
    spots = [footprint(piece, look.lines) for piece in look.pieces(box=(x0, y0, x1, y1)) if not piece.hangs]
    floor, base = strip(side, line.inward, REACH_MM), along(side[0], line.inward)
    before = [spot for spot in spots if floor.intersection(spot).area > 1.0]
    below = [spot for spot in before if span(spot, line.inward)[0] - base < hung.depth]
    beyond = max([0.0, *(span(spot, line.inward)[1] - base for spot in below)])
    face = max(hung.depth, beyond)
    ahead = (line.point(hung.from_left, face), line.point(hung.from_left + hung.width, face))
    left = free_ahead(ahead, line.inward, look.outline, [spot for spot in before if spot not in below], REACH_MM)
    room = f"{write_length(left, look.household.unit)} left before it"
    if left >= look.mm(LEFT) - 0.1:
        return Measured(0.0, note=f"; {room}")
    return Measured(max(0.0, hung.depth - beyond), give=tape_give(hung.depth), note=f"out; only {room}")


RULE = Rule(
    slug="juts-into-route",
    title="Stands out into a narrow way",
    measures="how far a thing on the wall stands out beyond what stands below it, where little floor is left",
    unit="mm",
    band=Band(high=Twin(4), bad_high=Twin(8)),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="C7, C10 (ABA/ADA 307.2, 307.5)",
    safety=True,
)
