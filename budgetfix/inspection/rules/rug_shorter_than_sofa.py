"""A rug that ends before the sofa does.

How to measure. At each end of the sofa: from the sofa's end to the rug's edge,
along the front; below 0 where the rug is shorter. Where the floor beside the
sofa is less than asked, all of it will do.

Why: a rug shorter than the sofa looks like a doormat before it.

Basis: common practice. There is no published row.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.grouping import main_of, rugs_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, slope, tape_give
from budgetfix.room.places import footprint
from budgetfix.room.seating import SOFAS
from budgetfix.room.sides import free_ahead, sides, span

LOW, BAD = Twin(4), Twin(-12)
AIM = (Twin(6), Twin(12))


def _subjects(look: Look) -> tuple[str, ...]:
    main = main_of(look)
    return tuple(rug.name for rug in rugs_of(look)) if main is not None and main.what in SOFAS else ()


def _measure(look: Look, subject: str) -> Measured | None:
    rug, sofa = look.rug(subject), main_of(look)
    if rug is None or sofa is None or sofa.what not in SOFAS:
        return None
    its, cloth, spot = sides(sofa, look.lines), footprint(rug, look.lines), footprint(sofa, look.lines)
    judged = []
    for side, out in ((its.left, (its.look[1], -its.look[0])), (its.right, (-its.look[1], its.look[0]))):
        beyond = span(cloth, out)[1] - span(spot, out)[1]
        allowed = free_ahead(side, out, look.outline, (), 1000.0)
        band = Band(low=min(look.mm(LOW), allowed), bad_low=look.mm(BAD), aim=AIM)
        judged.append((slope(beyond, band, "mm", look.household.metric), -beyond, band))
    _, short, band = max(judged, key=lambda one: one[:2])
    return Measured(-short, give=tape_give(0.0, 0.0), band=band, note="beyond the sofa's end")


RULE = Rule(
    slug="rug-shorter-than-sofa",
    title="Rug shorter than the sofa",
    measures="how far the rug reaches beyond each end of the sofa",
    unit="mm",
    band=Band(low=LOW, bad_low=BAD, aim=AIM),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="rug size",
    absence="floor-bare",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
)
