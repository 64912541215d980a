"""A rug that does not reach under the seats of its group.

How to measure. At each seat: from its front edge back to where the rug ends
under it, or forward to where it begins. Measure straight ahead of the seat; a
rug that ends up to 18 in (460 mm) to its side still counts.

Each seat is missed by degrees, from not at all with 6 in (150 mm) under its
front to wholly with 6 in missing before it. The figure is the mean, the sofa
counting as much as all other seats together.

Why: a rug that floats in the middle makes the room look smaller, and the seats
like visitors.

Basis: common practice. There is no published row: the margin was searched for
and not found.
"""

from __future__ import annotations

from fractions import Fraction

from shapely.geometry import Polygon

from budgetfix.base.numbers import exact
from budgetfix.base.twin import Twin
from budgetfix.inspection.grouping import main_of, rugs_of, seats_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.room.items import Piece
from budgetfix.room.places import footprint
from budgetfix.room.seating import SOFAS
from budgetfix.room.sides import along, sides, span

UNDER = Twin(6)
ASIDE = Twin(18)


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(rug.name for rug in rugs_of(look))


def _under(look: Look, seat: Piece, cloth: Polygon) -> float:
    """How much rug lies under the seat's front edge; below 0 what is missing before it (or beside it)."""
    its = sides(seat, look.lines)
    left = (its.look[1], -its.look[0])
    (low, high), (start, end) = span(footprint(seat, look.lines), left), span(cloth, left)
    front, (back, far) = along(its.front[0], its.look), span(cloth, its.look)
    beside = min(high, end) - max(low, start) + look.mm(ASIDE)
    return min(front - back, far - front, beside)


def _missed(look: Look, seat: Piece, cloth: Polygon) -> Fraction:
    asked = exact(look.mm(UNDER))
    return min(Fraction(1), max(Fraction(0), (asked - exact(_under(look, seat, cloth))) / (2 * asked)))


def _measure(look: Look, subject: str) -> Measured | None:
    rug, main = look.rug(subject), main_of(look)
    if rug is None or main is None:
        return None
    cloth = footprint(rug, look.lines)
    missed = {seat.name: _missed(look, seat, cloth) for seat in seats_of(look)}
    sofa = main.name if main.what in SOFAS else None
    others = [share for name, share in missed.items() if name != sofa]
    mean = sum(others, Fraction(0)) / len(others) if others else Fraction(0)
    if sofa is not None:
        mean = (missed[sofa] + mean) / 2 if others else missed[sofa]
    count = sum(share > 0 for share in missed.values())
    unsure = any(0 < share < Fraction(1, 20) for share in missed.values())
    return Measured(float(mean), severity=mean, note=f"{count} of {len(missed)} seats missed", uncertain=unsure)


RULE = Rule(
    slug="rug-misses-seats",
    title="Rug misses the seats",
    measures="share of the group's seats without 6 in (150 mm) of rug under the front",
    unit="ratio",
    band=Band(high=0.0, bad_high=1.0, aim=(0.0, 0.0)),
    weight=Fraction(4),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="rug size",
    absence="floor-bare",
    profiles={"listing": Fraction(6, 5), "handing-back": Fraction(0)},
    sound_words="6 in (150 mm) under every seat's front",
    bad_words="6 in (150 mm) missing before every seat; before the sofa alone, half",
    aim_words="the same",
)
