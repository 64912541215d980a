"""A picture light too short for its picture, or too far above it.

How to measure. The lamp's width, divided by the picture's; and from the
frame's upper edge to the lamp. The lamp belongs to the group or picture that
the survey names, else to the nearest one below it. Over the middle of a pair
it is measured against one of the two. The worse counts.

Why: a short lamp lights a stripe, a high one the wall.

Basis: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.art import lit_by, rows_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, slope, tape_give
from budgetfix.room.groups import ART, PictureGroup, picture_groups
from budgetfix.room.items import Hung

ABOVE = Band(Twin(2), Twin(8), 0.0, Twin(18), (Twin(6), Twin(7)))
ONE = Band(low=0.5, bad_low=0.25, aim=(0.5, 0.75))
PAIR = Band(low=1.0, bad_low=0.5, aim=(1.0, 1.5))


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(one.name for one in look.hung(whats=("picture light",)) if one.wall in look.lines)


def _lit(look: Look, lamp: Hung) -> PictureGroup | None:
    """The group under the lamp."""
    return lit_by(lamp, picture_groups(look.hung(whats=ART, wall=lamp.wall), look.household.metric))


def _of(lamp: Hung, group: PictureGroup) -> tuple[Hung, bool]:
    """The frame that the lamp is measured against, and whether it lights a pair."""
    middle = lamp.from_left + lamp.width / 2

    def off(frame: Hung) -> float:
        return abs(frame.from_left + frame.width / 2 - middle)

    nearest = min(group.frames, key=lambda frame: (off(frame), frame.name))
    rows = rows_of(group)
    pair = len(group.frames) == 2 and len(rows) == 1 and abs(group.middle - middle) < off(nearest)
    return nearest, pair


def _measure(look: Look, subject: str) -> Measured | None:
    lamp = look.hung_one(subject)
    group = _lit(look, lamp) if lamp is not None and lamp.wall in look.lines else None
    if lamp is None or group is None:
        return None
    frame, pair = _of(lamp, group)
    share, above = lamp.width / frame.width, lamp.bottom - frame.bottom - frame.height
    band, metric = PAIR if pair else ONE, look.household.metric

    def worst(off: float) -> tuple[Fraction, Fraction]:
        return slope(share + off / frame.width, band, "ratio", metric), slope(above + off, ABOVE, "mm", metric)

    short, high = worst(0.0)
    give = tape_give(lamp.bottom)
    unsure = any((max(worst(off)) > 0) != (max(short, high) > 0) for off in (-give, give))
    note = "wide, too high or low" if high > short else "of one picture" if pair else "of the picture"
    return Measured(share, band=band, severity=max(short, high), note=note, uncertain=unsure)


RULE = Rule(
    slug="art-light-off",
    title="Picture light off",
    measures="width of the lamp over the picture, and its height above the frame",
    unit="ratio",
    band=ONE,
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="picture group",
    profiles={"handing-back": Fraction(0)},
    shown=(("Width over one picture", ONE), ("Width over a pair, of one of them", PAIR), ("Above the frame", ABOVE)),
)
