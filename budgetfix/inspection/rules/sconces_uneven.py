"""Two wall lights of a pair at different heights, or not the same way off the
middle of what they flank.

How to measure. The middle of each above the floor; and across, from the middle
of each to the middle of the piece or picture between them. A pair is two
lights that hang over the same piece, or the only two of a wall. The worse
counts.

Why: a pair that is not a pair looks like a mistake.

Basis: common practice. A band in the brief speaks of the height.
"""

from __future__ import annotations

from fractions import Fraction

from budgetfix.base.twin import Twin
from budgetfix.inspection.art import stretch_of
from budgetfix.inspection.look import Look
from budgetfix.inspection.rule import Band, Measured, Rule, slope, tape_give
from budgetfix.room.groups import picture_groups
from budgetfix.room.items import Hung

ACROSS = Band(high=Twin(1), bad_high=Twin(6), aim=(None, 0.0))
HEIGHT = Band(high=Twin(0.5), bad_high=Twin(2), aim=(None, 0.0))
Pair = tuple[Hung, Hung]


def _pairs(look: Look, letter: str) -> dict[str, Pair]:
    """The pairs of a wall by the piece that they flank, or by the wall."""
    lamps = sorted(look.hung(whats=("sconce",), wall=letter), key=lambda one: (one.from_left, one.name))
    if len(lamps) == 2:
        return {f"wall {letter}": (lamps[0], lamps[1])}
    found: dict[str, list[Hung]] = {}
    for lamp in lamps:
        found.setdefault(lamp.over or lamp.group, []).append(lamp)
    return {f"wall {letter}, {name}": (two[0], two[1]) for name, two in found.items() if name and len(two) == 2}


def _subjects(look: Look) -> tuple[str, ...]:
    return tuple(name for letter in sorted(look.lines) for name in _pairs(look, letter))


def _axis(look: Look, pair: Pair) -> float | None:
    """The middle of what the pair flanks: the piece below, else the one picture group between."""
    wall, over = pair[0].wall, pair[0].over
    piece = look.piece(over) if over and over == pair[1].over else None
    if piece is not None and piece.wall in look.lines:
        low, high = stretch_of(look, piece, wall)
        return (low + high) / 2
    groups = picture_groups(look.hung(whats=("picture", "mirror"), wall=wall), look.household.metric)
    between = [one.middle for one in groups if pair[0].from_left < one.middle < pair[1].from_left + pair[1].width]
    return between[0] if len(between) == 1 else None


def _measure(look: Look, subject: str) -> Measured | None:
    pair = _pairs(look, subject.removeprefix("wall ").split(",")[0]).get(subject)
    if pair is None:
        return None
    left, right = pair
    apart = abs(right.bottom + right.height / 2 - left.bottom - left.height / 2)
    up = Measured(apart, give=tape_give(left.bottom, right.bottom), note="in height")
    axis = _axis(look, pair)
    if axis is None:
        return up
    off = abs(left.from_left + left.width / 2 + right.from_left + right.width / 2 - 2 * axis)
    metric = look.household.metric
    if slope(off, ACROSS, "mm", metric) <= slope(apart, HEIGHT, "mm", metric):
        return up
    return Measured(off, give=tape_give(left.from_left, right.from_left), band=ACROSS, note="across", own_band=True)


RULE = Rule(
    slug="sconces-uneven",
    title="Wall lights uneven",
    measures="difference of a pair of wall lights in height, and in distance from the middle",
    unit="mm",
    band=HEIGHT,
    weight=Fraction(1),
    subjects=_subjects,
    measure=_measure,
    basis="common practice",
    family="picture group",
    profiles={"handing-back": Fraction(0)},
    shown=(("In height", HEIGHT), ("Across", ACROSS)),
)
