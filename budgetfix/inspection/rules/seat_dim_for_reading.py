"""A seat to read in without a lamp beside it.

How to measure. From the seat's arm to the lamp's foot, or the table it stands
on. Only lamps of 450 lm or more count, with the shade's lower edge 38 to 46 in
(970 to 1170 mm) above the floor. Judged are the seats that the survey marks
for reading, else the main seat.

Why: light from the ceiling falls on the hair, not on the page.

Basis: common practice. The IES Lighting Handbook, Table 10-7, asks 20 to 40
foot-candles for reading (published value L2, 215 to 430 lx): the yardstick
behind the 450 lm, and not measured here.
"""

from __future__ import annotations

from fractions import Fraction

from shapely.geometry import Point

from budgetfix.base.twin import Twin
from budgetfix.inspection.grouping import main_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, slope, tape_give
from budgetfix.room.items import SEATS, Light
from budgetfix.room.places import footprint, middle

NEAR, FAR = Twin(30), Twin(60)
LEAST_LUMENS = 450.0
SHADE = (Twin(38), Twin(46))
LAMPS = ("floor lamp", "table lamp", "wall light", "other")


def _spot(look: Look, light: Light) -> tuple[float, float] | None:
    if light.on:
        piece = look.piece(light.on)
        if piece is not None and piece.wall in look.lines:
            return middle(piece, look.lines)
    return middle(light, look.lines) if light.wall in look.lines else None


def _fits(look: Look, light: Light) -> bool:
    low, high = (look.mm(edge) for edge in SHADE)
    lit = light.lumens >= LEAST_LUMENS
    return lit and (light.bottom == 0 or low - 0.1 <= light.bottom <= high + 0.1)


def _subjects(look: Look) -> tuple[str, ...]:
    marked = tuple(seat.name for seat in look.pieces(whats=SEATS) if seat.reading and seat.wall in look.lines)
    main = main_of(look)
    return marked or (() if main is None else (main.name,))


def _measure(look: Look, subject: str) -> Measured | None:
    seat = look.piece(subject)
    if seat is None:
        return None
    place, far = footprint(seat, look.lines), look.mm(FAR)
    found = []
    for light in look.lights(whats=LAMPS):
        spot = _spot(look, light)
        if spot is not None and _fits(look, light):
            found.append((float(place.distance(Point(spot))), light.name, light.bottom == 0))
    if not found:
        return Measured(far, severity=Fraction(1), note="no lamp to read by")
    away, name, guessed = min(found)
    severity = min(Fraction(1), slope(away, RULE.band, "mm", look.household.metric))
    unsure = guessed or abs(away - look.mm(NEAR)) < tape_give(away)
    return Measured(away, severity=severity, note=f"to {name}", uncertain=unsure)


RULE = Rule(
    slug="seat-dim-for-reading",
    title="Seat too dim to read",
    measures="distance from a reading seat to the nearest lamp that is fit to read by",
    unit="mm",
    band=Band(high=NEAR, bad_high=FAR),
    weight=Fraction(2),
    subjects=_subjects,
    measure=_measure,
    basis="common practice; L2 as yardstick",
    family="light",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
    bad_words="none within 5 ft (1520 mm)",
)
