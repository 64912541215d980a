"""What a rule is: a slug, a band, a weight, and one function that measures one subject."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from types import MappingProxyType

from budgetfix.base.numbers import TOLERANCE, MeasureUnit, exact
from budgetfix.base.twin import Twin
from budgetfix.inspection.look import Look

Edge = float | Twin | None


@dataclass(frozen=True, slots=True)
class Band:
    """Sound from `low` to `high` (edges belong to it); severity 1 at `bad_low` / `bad_high`.

    Lengths are `Twin`s (or plain millimetres where a rule works its band out), other units plain numbers.
    `aim` is what a remedy is sized to. A side without an edge is open.
    """

    low: Edge = None
    high: Edge = None
    bad_low: Edge = None
    bad_high: Edge = None
    aim: tuple[Edge, Edge] = (None, None)


@dataclass(frozen=True, slots=True)
class Measured:
    """What a rule measured on one subject.

    `value` in the rule's unit. `give`: how far the tape may be off, same unit (mm readings: use
    `tape_give`). `band` replaces the rule's band where it moves with the room; `severity` replaces the
    slope (yes-or-no rules, shares of what is asked). `note`: a few words shown beside the figure.
    """

    value: float
    give: float = 0.0
    band: Band | None = None
    severity: Fraction | None = None
    note: str = ""
    uncertain: bool = False
    """A figure that was guessed decided it."""
    own_band: bool = False
    """Another measure than the one the rule's band speaks of: a band in the brief does not reach it."""
    hazard: bool | None = None
    """Whether this very finding is a hazard, where the rule is one on some subjects only."""


NO_PROFILES: Mapping[str, Fraction] = MappingProxyType({})
NO_BANDS: Mapping[str, Band] = MappingProxyType({})


@dataclass(frozen=True)
class Rule:
    """One rule. The module's docstring is its manual page.

    `subjects` lists what it is judged on in a room; `measure` gives None where the rule is silent.
    `family`: within a family on one subject the worst finding counts whole, each other a third; None: no family.
    `family_by_room`: the family counts over the whole room (screen, light), not on each subject apart.
    `lifting_helps`: taking any piece away can never make it worse (routes, doors): allows lazy growth.
    `absence`: slug of the rule that must pass before a subject taken away counts as cured.
    `gone_cures`: the thing itself is the hazard and nobody misses it there: once it leaves the room, so does the fault.
    `off`: off unless the brief switches it on. `profiles`: weight factors by profile (0 = off).
    """

    slug: str
    title: str
    measures: str
    unit: MeasureUnit
    band: Band
    weight: Fraction
    subjects: Callable[[Look], tuple[str, ...]]
    measure: Callable[[Look, str], Measured | None]
    basis: str
    family: str | None = None
    safety: bool = False
    family_by_room: bool = False
    lifting_helps: bool = False
    absence: str | None = None
    gone_cures: bool = False
    off: bool = False
    profiles: Mapping[str, Fraction] = field(default_factory=lambda: NO_PROFILES)
    sound_words: str = ""
    """The sound band in words, where numbers alone would not be read (fixed to the wall, a pad)."""
    bad_words: str = ""
    """What is glaring in words, where no number says it: with flat severities, who it depends on."""
    aim_words: str = ""
    shown: tuple[tuple[str, Band], ...] = ()
    """For the page, where `measure` judges by several bands: each with where it holds."""
    bands: Mapping[str, Band] = field(default_factory=lambda: NO_BANDS)
    """Bands that hold in a profile instead of `band`."""


def tape_give(*readings_mm: float) -> float:
    """How far the tape may be off over these readings: 5 mm each, 10 mm above 2 m (common practice)."""
    return sum(10.0 if abs(reading) > 2000 else 5.0 for reading in readings_mm)


def edge_mm(edge: Edge, metric: bool) -> float | None:
    """An edge as a number in the rule's unit."""
    return edge.in_mm(metric) if isinstance(edge, Twin) else edge


def slope(value: float, band: Band, unit: MeasureUnit, metric: bool) -> Fraction:
    """Severity: 0 inside the band, 1 at the glaring limit, on in a straight line to a cap of 3."""
    tolerance = TOLERANCE[unit]
    low, high = edge_mm(band.low, metric), edge_mm(band.high, metric)
    if low is not None and value < low - tolerance:
        return _straight(low - value, low, edge_mm(band.bad_low, metric))
    if high is not None and value > high + tolerance:
        return _straight(value - high, high, edge_mm(band.bad_high, metric))
    return Fraction(0)


def _straight(beyond: float, edge: float, bad: float | None) -> Fraction:
    if bad is None or bad == edge:
        return Fraction(1)
    return min(Fraction(3), exact(beyond) / abs(exact(bad) - exact(edge)))
