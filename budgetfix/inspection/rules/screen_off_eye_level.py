"""A screen that hangs or stands too high or too low for who sits before it.

How to measure. The screen's lower edge above the floor, and its height; the
centre is worked out. The height of the main seat too: the band moves up and
down with it.

Why: a screen above eye level is watched with the head thrown back; after an
hour the neck knows it.

Basis: common practice. The reasoning: over a 17 in seat the eye is 45 1/2 to
51 in above the floor (NUREG-0700 rev. 3, Table 11.4, published value A1; ANSUR
II, 2012 survey, sitting eye heights A5 and A6), an inch and a half lower when
people slump (City University of Hong Kong, anthropometry course, A10); a
display is watched with ease from 20 degrees above to 40 below the line of
sight (NUREG-0700 rev. 2, T8). So a screen's middle belongs at or below the
eye.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, tape_give
from budgetfix.inspection.screens import screens, seat_of

SEAT = Twin(17, 430)
BED = Band(low=Twin(40, 1020), high=Twin(60, 1520), bad_low=Twin(28, 710), bad_high=Twin(74, 1880))
LOW, HIGH, BAD_LOW, BAD_HIGH = Twin(32, 810), Twin(44, 1120), Twin(20, 510), Twin(58, 1470)


BAND = Band(LOW, HIGH, BAD_LOW, BAD_HIGH, (Twin(40), HIGH))


def _measure(look: Look, subject: str) -> Measured | None:
    screen = look.hung_one(subject)
    if screen is None:
        return None
    centre = screen.bottom + screen.height / 2
    seat = seat_of(look)
    give = tape_give(screen.bottom) + tape_give(screen.height) / 2
    if seat is None and look.facts.kind == "bedroom":
        return Measured(centre, give=give, band=BED)
    if seat is None:
        return None
    unsure = seat.seat is None or look.guessed(seat.name, "seat")
    shift = (look.mm(SEAT) if seat.seat is None else seat.seat) - look.mm(SEAT)
    low, high, bad_low, bad_high = (look.mm(edge) + shift for edge in (LOW, HIGH, BAD_LOW, BAD_HIGH))
    moved = Band(low, high, bad_low, bad_high, (look.mm(Twin(40)) + shift, high))
    return Measured(centre, give=give + tape_give(look.mm(SEAT)), band=moved, uncertain=unsure)


RULE = Rule(
    slug="screen-off-eye-level",
    title="Screen off eye level",
    measures="height of the screen's centre above the floor",
    unit="mm",
    band=BAND,
    weight=Fraction(3),
    subjects=screens,
    measure=_measure,
    basis="common practice; A1, A5, A6, A10, T8 for the reasoning",
    family="screen",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
    shown=(("From a seat of 17 in (430 mm)", BAND), ("From a bed, in a bedroom without seats", BED)),
)
