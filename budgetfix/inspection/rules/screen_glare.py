"""A window without cloth or blind before or behind those who watch.

How to measure. From the main seat: the angle between the line to the screen
and the nearest edge of an unshaded window, in front or behind the head (that
one is mirrored in the screen).

Why: the brightest thing in the room is not the picture.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule
from budgetfix.inspection.screens import Point, degrees, eye_of, face, screens, seat_of, towards


def _measure(look: Look, subject: str) -> Measured | None:
    screen, seat = look.hung_one(subject), seat_of(look)
    if screen is None or seat is None:
        return None
    shaded = {one.window for one in look.curtains()} | {one.also_window for one in look.curtains()}
    bare = [one for one in look.openings(whats=("window",)) if not one.blind and one.name not in shaded]
    start = eye_of(look, seat)
    sight = towards(start, face(look, screen))
    angles = [90.0]
    for window in bare:
        line = look.lines.get(window.wall)
        if line is not None:
            ends = (line.point(window.from_left), line.point(window.from_left + window.width))
            angles.append(_off(sight, towards(start, ends[0]), towards(start, ends[1])))
    nearest = min(angles)
    return Measured(nearest, give=1.0, note="or more" if nearest == 90.0 else "off the line of sight")


def _off(sight: Point, one: Point, other: Point) -> float:
    """Degrees from the line of sight, ahead or behind, to the nearest part of a pane; 0 where it goes through."""
    sides = [sight[0] * end[1] - sight[1] * end[0] for end in (one, other)]
    if sides[0] * sides[1] <= 0:
        return 0.0
    off = [degrees(sight, end) for end in (one, other)]
    return min(min(angle, 180.0 - angle) for angle in off)


RULE = Rule(
    slug="screen-glare",
    title="Glare on the screen",
    measures="angle from the line of sight to the nearest unshaded window",
    unit="degree",
    band=Band(low=30.0, bad_low=0.0, aim=(30.0, None)),
    weight=Fraction(2),
    subjects=screens,
    measure=_measure,
    basis="common practice",
    family="screen",
    family_by_room=True,
    profiles={"listing": Fraction(0), "handing-back": Fraction(0)},
    sound_words="no unshaded window within 30°",
    bad_words="in the line of sight, 0°",
    aim_words="none at all",
)
