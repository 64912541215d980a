"""Cloth too near a heater.

How to measure. Open the curtains. From the nearest edge of the cloth to the
heater, along the floor. Cloth that ends higher above the heater than the sound
distance does not count, nor does a radiator under the curtain's own window
(that is radiator-blocked).

Why: cloth on a hot heater catches fire. Over a radiator it only keeps the
warmth at the window, so there the severity is divided by five (weight 1
against 5).

Basis: city fire-department messages, portable heater 3 ft from anything that
burns, baseboard heater at least 12 in (published value S8). The radiator's 2
in is common practice.
"""

from __future__ import annotations

import math
from fractions import Fraction

from budgetfix.base.numbers import TOLERANCE
from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, slope, tape_give
from budgetfix.room.items import HEATERS, Curtain, Opening, Piece
from budgetfix.room.places import extent, footprint, rectangle
from budgetfix.room.sides import Lines
from budgetfix.room.stretches import cloth_of

ELECTRIC = Band(low=Twin(12), bad_low=Twin(2))
PORTABLE = Band(low=Twin(36), bad_low=Twin(12))
RADIATOR = Band(low=Twin(2), bad_low=0.0)
BANDS = {"radiator": RADIATOR, "portable heater": PORTABLE}
RADIATOR_SHARE = Fraction(1, 5)
CLOTH_DEPTH_MM = 100.0


def _distance(curtain: Curtain, wall: str, heater: Piece, lines: Lines) -> float:
    apart = math.inf
    for start, end in cloth_of(curtain):
        if heater.wall == wall:
            along, _ = extent(heater, lines)
            beside = max(start - heater.from_left - along, heater.from_left - end, 0.0)
            apart = min(apart, math.hypot(beside, max(heater.gap - CLOTH_DEPTH_MM, 0.0)))
        else:
            (x0, y0), (x1, y1) = lines[wall].point(start), lines[wall].point(end, CLOTH_DEPTH_MM)
            cloth = rectangle(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))
            apart = min(apart, float(cloth.distance(footprint(heater, lines))))
    return apart


def _below(window: Opening, heater: Piece, lines: Lines) -> bool:
    """True where a heater stands under the window itself."""
    if heater.wall != window.wall or heater.wall not in lines:
        return False
    along, _ = extent(heater, lines)
    return heater.from_left < window.from_left + window.width and window.from_left < heater.from_left + along


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(curtain.name for curtain in look.curtains()) if look.pieces(whats=HEATERS) else ()


def _measure(look: Look, subject: str) -> Measured | None:
    curtain = look.curtain(subject)
    window = look.opening(curtain.window) if curtain is not None else None
    if curtain is None or window is None or window.wall not in look.lines:
        return None
    found = []
    for heater in look.pieces(whats=HEATERS):
        band = BANDS.get(heater.what, ELECTRIC)
        clear = look.mm(band.low) if isinstance(band.low, Twin) else 0.0
        if heater.what == "radiator" and _below(window, heater, look.lines):
            continue
        if heater.wall not in look.lines or curtain.hem > heater.height + clear + TOLERANCE["mm"]:
            continue
        apart = _distance(curtain, window.wall, heater, look.lines)
        severity = slope(apart, band, "mm", look.household.metric)
        found.append((severity * (RADIATOR_SHARE if band is RADIATOR else 1), -apart, heater.name, band))
    if not found:
        return None
    severity, nearest, name, band = max(found, key=lambda one: one[:3])
    unsure = abs(-nearest - (look.mm(band.low) if isinstance(band.low, Twin) else 0.0)) < tape_give(nearest)
    return Measured(-nearest, band=band, severity=severity, note=f"to {name}", uncertain=unsure)


RULE = Rule(
    slug="curtain-near-heater",
    title="Curtain too near a heater",
    measures="distance from the open curtain to the nearest heater",
    unit="mm",
    band=ELECTRIC,
    weight=Fraction(5),
    subjects=_subjects,
    measure=_measure,
    basis="S8 (fire-service guidance); radiator: common practice",
    safety=True,
    absence="window-bare",
    shown=(
        ("Electric panel or baseboard heater", ELECTRIC),
        ("Portable heater", PORTABLE),
        ("Hot-water radiator", RADIATOR),
    ),
)
