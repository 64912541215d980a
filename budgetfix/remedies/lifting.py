"""How much one person should lift: the revised lifting equation, in inches and pounds or in centimetres and kilograms.

Source: NIOSH Publication 94-110 (rev. 2021), Applications Manual for the Revised Lifting Equation: pages 7 to 20.
The two systems are not exact conversions of each other (51 lb is 23.13 kg, not 23), so each has its own constants and
a survey is worked out in the system that it was measured in. The multipliers are not rounded: the manual's own
worksheets multiply rounded ones, and differ in the last digit.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from budgetfix.base.twin import MM_PER_INCH
from budgetfix.room.items import Hung, Item, Piece
from budgetfix.room.survey import Change, Survey, moved


@dataclass(frozen=True, slots=True)
class System:
    """Constants of one system of units: inches and pounds, or centimetres and kilograms."""

    load: float
    horizontal: float
    horizontal_most: float
    vertical: float
    vertical_share: float
    vertical_most: float
    travel_share: float
    travel_least: float
    travel_most: float
    under: float
    """Below this height of the hands a load is held farther off (the manual's page 8)."""
    close: float
    """How far in front of the ankles the near edge of a load is held."""
    farther: float
    unit: str


INCHES = System(51.0, 10.0, 25.0, 30.0, 0.0075, 70.0, 1.8, 10.0, 70.0, 10.0, 8.0, 10.0, "lb")
METRIC = System(23.0, 25.0, 63.0, 75.0, 0.003, 175.0, 4.5, 25.0, 175.0, 25.0, 20.0, 25.0, "kg")
TURN_SHARE, TURN_MOST = 0.0032, 135.0
SELDOM = 0.2
FREQUENCY = (
    (0.2, 1.00), (0.5, 0.97), (1.0, 0.94), (2.0, 0.91), (3.0, 0.88), (4.0, 0.84), (5.0, 0.80), (6.0, 0.75), (7.0, 0.70),
)  # fmt: skip
"""(Lifts a minute, multiplier) for up to an hour: the manual's table 5. Faster work than this is not ours."""
FAIR_LOW, FAIR_HIGH = 0.95, 1.0
"""A fair hold, with the hands below and from 30 in (75 cm) up."""
HELP, HARD = 1.0, 3.0
"""Above the first a lift is a risk for some, above the second for many (the manual's page 20)."""
TINY = 1e-9
POUND_KG = 0.45359237
"""Exactly: the international agreement on yard and pound, 1959."""


@dataclass(frozen=True, slots=True)
class Lift:
    """One lift, in the inches or centimetres of its system; `turn` in degrees, `often` in lifts a minute.

    `hands` is the height of the hands at the end that is looked at, `travel` how far up or down the load goes.
    """

    reach: float
    hands: float
    travel: float
    turn: float = 0.0
    often: float = SELDOM
    fair: bool = True


def multipliers(lift: Lift, system: System) -> tuple[float, ...]:
    """How far off, how high, how far up or down, how turned, how often, how held: each from 0 to 1."""
    reach, travel = max(lift.reach, system.horizontal), max(abs(lift.travel), system.travel_least)
    return (
        0.0 if lift.reach > system.horizontal_most + TINY else system.horizontal / reach,
        0.0
        if lift.hands > system.vertical_most + TINY
        else 1 - system.vertical_share * abs(lift.hands - system.vertical),
        0.0 if travel > system.travel_most + TINY else 0.82 + system.travel_share / travel,
        0.0 if lift.turn > TURN_MOST + TINY else 1 - TURN_SHARE * lift.turn,
        often(lift.often),
        hold(lift, system),
    )


def often(lifts_a_minute: float) -> float:
    """The frequency multiplier, between the rows in a straight line; 0 above the last row, which claims nothing."""
    rate = max(lifts_a_minute, SELDOM)
    for (low, at_low), (high, at_high) in pairwise(FREQUENCY):
        if rate <= high:
            return at_low + (at_high - at_low) * (rate - low) / (high - low)
    return 0.0


def hold(lift: Lift, system: System) -> float:
    """The coupling multiplier of a fair hold, else of a good one."""
    return FAIR_LOW if lift.fair and lift.hands < system.vertical else FAIR_HIGH


def recommended(lift: Lift, system: System) -> float:
    """The recommended weight limit, in pounds or kilograms; 0 where the equation does not reach."""
    limit = system.load
    for share in multipliers(lift, system):
        limit *= share
    return limit


def best_lift(system: System) -> Lift:
    """A load held close at the best height, straight ahead, a good hold: what the most may be lifted in."""
    return Lift(system.horizontal, system.vertical, system.travel_least, fair=False)


def index(weight: float, lift: Lift, system: System) -> float | None:
    """Weight over its limit; None where the limit is 0: no lift like this is recommended, and no figure says more."""
    limit = recommended(lift, system)
    return None if limit <= 0 else weight / limit


def reach_of(depth: float, hands: float, system: System) -> float:
    """How far off a load of that depth is held, where nobody measured it: half its depth and 8 in (10 in low down)."""
    return (system.close if hands >= system.under else system.farther) + depth / 2


@dataclass(frozen=True, slots=True)
class Load:
    """A thing of known weight that a task lifts. `index` None: the equation gives no figure for such a lift."""

    name: str
    weight_kg: float
    index: float | None

    @property
    def too_much(self) -> bool:
        """True where one person alone should not lift it."""
        return self.index is None or self.index > HELP + TINY

    def says(self, metric: bool) -> str:
        """The caution; empty where one person may lift it, of which we say nothing."""
        if not self.too_much:
            return ""
        weight = f"{self.weight_kg:g} kg" if metric else f"{self.weight_kg / POUND_KG:.0f} lb"
        if self.index is not None and self.index > HARD + TINY:
            return f"{self.name}, {weight}: not without two people and a dolly, or movers."
        return f"{self.name}, {weight}: too much for one to lift here; get help."


def loads(survey: Survey, changes: Iterable[Change]) -> tuple[Load, ...]:
    """Everything of known weight that the changes lift, by name; what was not weighed is not judged."""
    found = {}
    for change in changes:
        before = survey.named.get(change.item, (None, None))[1]
        after = _after(before, change)
        one = after if after is not None else before
        if isinstance(one, (Piece, Hung)) and one.weight is not None and _goes(before, after):
            found[one.name] = Load(one.name, one.weight, _worst(one.weight, before, after, survey.household.metric))
    return tuple(found[name] for name in sorted(found))


def load_cares(survey: Survey, changes: Iterable[Change]) -> tuple[str, ...]:
    """The cautions on what is too much for one."""
    return tuple(words for load in loads(survey, changes) if (words := load.says(survey.household.metric)))


def _after(before: Item | None, change: Change) -> Item | None:
    if change.add is not None or before is None or change.remove:
        return change.add
    return moved(before, **dict(change.set))


PLACE = ("wall", "from_left", "gap", "bottom", "faces", "on")


def _goes(before: Item | None, after: Item | None) -> bool:
    """True where a thing comes, goes, or stands elsewhere afterwards."""
    if before is None or after is None:
        return True
    one, other = dict(before), dict(after)
    return any(one.get(name) != other.get(name) for name in PLACE)


def _worst(weight_kg: float, before: Item | None, after: Item | None, metric: bool) -> float | None:
    """The higher index of the two ends of the lift; None as soon as one end is beyond the equation.

    A slide along its wall is no lift, and the equation is silent on pushing: it counts as the best lift there is.
    """
    system = METRIC if metric else INCHES
    scale, weight = (10.0, weight_kg) if metric else (MM_PER_INCH, weight_kg / POUND_KG)
    thing = after if after is not None else before
    assert isinstance(thing, (Piece, Hung))
    if isinstance(before, Piece) and isinstance(after, Piece) and before.wall == after.wall:
        return index(weight, best_lift(system), system)
    ends = (_hands(before, thing) / scale, _hands(after, thing) / scale)
    found = []
    for hands in ends:
        reach = reach_of(thing.depth / scale, hands, system)
        found.append(index(weight, Lift(reach, hands, ends[1] - ends[0]), system))
    known = [one for one in found if one is not None]
    return max(known) if len(known) == len(found) else None


HANDS_MM = 500.0
"""Furniture is held by its frame, at this height or half its own (common practice)."""


def _hands(end: Item | None, thing: Piece | Hung) -> float:
    """Height of the hands at one end: what hangs is held by its lower edge and comes off the floor, or goes there."""
    if isinstance(thing, Piece):
        return min(HANDS_MM, thing.height / 2)
    return end.bottom if isinstance(end, Hung) else 0.0
