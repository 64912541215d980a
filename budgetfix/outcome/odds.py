"""What can be told of chances, as records: every figure is a count of draws, none is a promise."""

from __future__ import annotations

from dataclasses import dataclass

DRAWS = 20_000
"""How often a plan is played out."""
HARDLY, NEARLY = DRAWS // 20, DRAWS - DRAWS // 20
"""Under 1 in 20 and over 19 in 20 are said in words."""


@dataclass(frozen=True, slots=True)
class FallsOff:
    """A remedy that finds no place in `times` of the draws. `worth`: points lost where it alone is missing."""

    id: str
    name: str
    times: int
    worth: int


@dataclass(frozen=True, slots=True)
class InTime:
    """A session at whose end nothing is put off, in `times` of the draws. `leave` names what to leave first.

    `leave_worth`, `leave_minutes`: the points of that remedy, and the person-minutes that leaving it saves from this
    session on. Empty where the session is nearly always in time, or everything in it is needed or a must.
    """

    session: int
    times: int
    leave: str = ""
    leave_worth: int = 0
    leave_minutes: int = 0


@dataclass(frozen=True, slots=True)
class Spread:
    """All work together in person-minutes: planned, and what it usually takes, from `least` to `most`."""

    planned: int
    least: int
    most: int


@dataclass(frozen=True, slots=True)
class PriceRange:
    """A line with three prices, of one pack (of `packs`) or of a remedy itself (0 packs); planned is their mean."""

    id: str
    name: str
    packs: int
    low_minor: int
    likely_minor: int
    high_minor: int
    planned_minor: int


@dataclass(frozen=True, slots=True)
class MoneyOdds:
    """What all chosen lines may come to, minor units; `covered`: draws in which the money that there is pays for them.

    `above_minor`: how much dearer than planned the lines would be, every price at its highest. `covered` None: no
    limit of money. `ranges`: the lines with low and high prices.
    """

    least_minor: int
    most_minor: int
    above_minor: int
    held_back_minor: int
    covered: int | None
    ranges: tuple[PriceRange, ...]

    @property
    def lacking_minor(self) -> int:
        """What the money held back does not cover, every price at its highest."""
        return max(0, self.above_minor - self.held_back_minor)


@dataclass(frozen=True, slots=True)
class Chances:
    """A plan played out `DRAWS` times. `fits`: draws in which nothing falls off.

    `fits` None: no chance can be told, because there are no sessions or no step has a range. Shares are per cent of
    the planned improvement (hazard points counted in): the mean over all draws, and what nine in ten draws reach.
    """

    steps: int
    sure: int
    """Steps with one figure only: they are taken as sure."""
    fits: int | None = None
    falls: tuple[FallsOff, ...] = ()
    """What falls off most often first."""
    sessions: tuple[InTime, ...] = ()
    """Those with work planned in them."""
    reached: int | None = None
    reached_worst: int | None = None
    """At least this is reached in nine of ten draws: the worst tenth is below."""
    work: Spread | None = None
    """None where no step has a range."""
    money: MoneyOdds | None = None
    """None where no price has a range."""

    @property
    def said(self) -> bool:
        """Whether there is more to say than that nothing can be told."""
        return self.work is not None or self.money is not None


def in_ten(times: int) -> str:
    """A count of draws as people say it: "7 in 10", "hardly ever", "nearly always"."""
    if times < HARDLY:
        return "hardly ever"
    if times > NEARLY:
        return "nearly always"
    tenths = (times * 20 + DRAWS) // (2 * DRAWS)
    return f"{min(9, max(1, tenths))} in 10"
