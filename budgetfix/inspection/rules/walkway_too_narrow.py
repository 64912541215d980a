"""A way between two doors, or from the doors to the seats or a bed, that is too
narrow.

How to measure. Walk from door to door by the widest way and measure across its
narrowest place. Furniture, heaters and chairs pushed in count; rugs and the
door openings themselves do not. To a seat or bed the way ends 36 in (910 mm)
before it. A pinch is as long as the stretch that is under the sound width.

One pinch is charged once: with several doors only as many ways are judged as
join them all, and only the best way to each seat or bed.

Why: people squeeze past every day, and run into it in the dark.

Basis: step-free homes are judged by the 2010 ADA Standards 403.5.1 (published
value C1), with weight 5. For others our band leaves C1 on purpose: 32 in is
what a practitioner lets pass at home, between the 24 in for circulation (HUD,
Manual of Acceptable Practices vol. 4 (1973), published value C15, and C16 for
bedrooms) and C1's 36; Approved Document M (2013) 7.5b (C14) lets a corridor
narrow to 750 mm for 2 m in the same spirit.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, slope, tape_give
from budgetfix.inspection.ways import Route, Ways, door_routes, doors, piece_routes, ways
from budgetfix.room.routes import Passing, Way

GLARING = Twin(18)
AIM = (Twin(36), None)
BETWEEN_DOORS = Band(low=Twin(32, 810), bad_low=GLARING, aim=AIM)
TO_PIECE = Band(low=Twin(24, 610), bad_low=GLARING, aim=AIM)
STEP_FREE = Band(low=Twin(36, 915), bad_low=GLARING, aim=(Twin(36, 915), None))
PINCH, RUN = Twin(28, 710), Twin(24, 610)
C1_PINCH, C1_APART = Twin(32, 815), Twin(48, 1220)
STEP_FREE_SHARE = Fraction(5, 4)


def _band(look: Look, route: Route) -> Band:
    if look.household.step_free:
        return STEP_FREE
    return TO_PIECE if route.to_piece else BETWEEN_DOORS


def _passing(look: Look, route: Route) -> Passing | None:
    if look.household.step_free:
        return Passing(*(look.mm(twin) for twin in (Twin(36, 915), C1_PINCH, RUN, C1_APART)))
    if route.to_piece:
        return None
    return Passing(*(look.mm(twin) for twin in (Twin(32, 810), PINCH, RUN)))


def _severity(look: Look, found: Ways, route: Route, way: Way, start: str) -> Fraction:
    severity = slope(way.width_mm, _band(look, route), "mm", look.household.metric)
    passing = _passing(look, route)
    if severity > 0 and passing is not None and found.passes(start, route.end, passing):
        return Fraction(0)
    return severity * (STEP_FREE_SHARE if look.household.step_free else 1)


def _charged(look: Look, found: Ways) -> tuple[tuple[Route, Way, Fraction], ...]:
    """The ways that join all doors, soundest first (the others follow from them)."""
    judged = []
    for route in door_routes(look):
        way = found.between(route.start, route.end)
        judged.append((_severity(look, found, route, way, route.start), route.name, route, way))
    joined: dict[str, str] = {}

    def root(door: str) -> str:
        while joined.get(door, door) != door:
            door = joined[door]
        return door

    charged = []
    for severity, _, route, way in sorted(judged, key=lambda one: one[:2]):
        if root(route.start) != root(route.end):
            joined[root(route.start)] = root(route.end)
            charged.append((route, way, severity))
    return tuple(charged)


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(route.name for route in (*door_routes(look), *piece_routes(look)))


def _measure(look: Look, subject: str) -> Measured | None:
    found = ways(look)
    for route in piece_routes(look):
        if route.name == subject:
            tried = [(door.name, found.between(door.name, route.end)) for door in doors(look)]
            graded = [(_severity(look, found, route, way, door), -way.width_mm, door, way) for door, way in tried]
            severity, _, door, way = min(graded, key=lambda one: one[:3])
            return _measured(look, route, way, severity, "" if door == route.start else f"from {door}, ")
    for route, way, severity in _charged(look, found):
        if route.name == subject:
            return _measured(look, route, way, severity, "")
    return None


def _measured(look: Look, route: Route, way: Way, severity: Fraction, start: str) -> Measured:
    place = "no way through" if way.at is None else f"narrowest at x {way.at[0]:.0f}, y {way.at[1]:.0f} mm"
    low = look.mm(_band(look, route).low)  # type: ignore[arg-type]
    unsure = way.at is not None and abs(way.width_mm - low) < tape_give(way.width_mm, way.width_mm)
    return Measured(way.width_mm, band=_band(look, route), severity=severity, note=start + place, uncertain=unsure)


RULE = Rule(
    slug="walkway-too-narrow",
    title="Way too narrow",
    measures="the narrowest place of the widest way between doors, or from the doors to the seats or a bed",
    unit="mm",
    band=BETWEEN_DOORS,
    weight=Fraction(4),
    subjects=_subjects,
    measure=_measure,
    basis="C1 (2010 ADA Standards 403.5.1), C14, C15, C16; common practice",
    safety=True,
    lifting_helps=True,
    shown=(
        ("Between doors; one pinch of 28 in (710 mm) over at most 24 in (610 mm) passes", BETWEEN_DOORS),
        ("To a seat or a bed", TO_PIECE),
        (
            "Step-free homes; pinches of 32 in (815 mm) over at most 24 in (610 mm), 48 in (1220 mm) apart, pass",
            STEP_FREE,
        ),
    ),
)
