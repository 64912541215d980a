"""A candidate: one remedy with one product (or none) on one subject, its changes and needs as data."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from budgetfix.room.survey import Change

Leaves = Literal["nothing", "pins", "strips", "plugs", "peels off", "asks leave"]
"""What a remedy leaves in the walls when it is taken away again: what a lease asks about."""


def planned(low: Fraction, likely: Fraction, high: Fraction) -> int:
    """The mean of the three, rounded up to whole minutes."""
    return math.ceil((low + likely + high) / 3)


@dataclass(frozen=True, slots=True)
class Work:
    """One step of a task. `minutes` planned (mean of three), `text` tells what to do with heights from the floor
    and distances from the left corner. `phase` orders steps inside a session (trade: 1 safety ... 13 sweep).
    """

    text: str
    minutes: int
    low: int
    likely: int
    high: int
    people: int = 1
    phase: int = 8
    wait_sessions: int = 0
    wait_minutes: int = 0
    from_stock: bool = True
    """False: it takes nothing from stock, so it may be done before the van is there."""
    help: int = 0
    """Minutes of a second pair of hands, at its start; 0 for none."""
    base: tuple[int, ...] = ()
    """(minutes, low, likely, high, help) before the household's pace was applied; empty where none was."""

    @property
    def base_minutes(self) -> int:
        """Planned minutes before any pace: real minutes are held against these."""
        return self.base[0] if self.base else self.minutes

    @property
    def person_minutes(self) -> int:
        """Planned minutes of everybody at work on it."""
        return self.minutes * self.people + self.help


@dataclass(frozen=True, slots=True)
class Candidate:
    """`id` unique and stable; `key` joins candidates that do the same thing in another size (one is picked).

    `uses`: (product id, units). `spends`: (limit, amount), e.g. ("holes", 4). `answers`: listed faults with
    their relief. `targets`: rule slugs that it is meant for. `hazards`: words matched against what people
    refuse (ladder, drill, lifting). `own`: True when the tool itself sized it from the survey (may be dropped
    as a crumb), False for the user's catalog.
    """

    id: str
    kind: str
    name: str
    subject: str = ""
    room: str = ""
    key: str = ""
    changes: tuple[Change, ...] = ()
    uses: tuple[tuple[str, Fraction], ...] = ()
    tools: tuple[str, ...] = ()
    cost_minor: int = 0
    work: tuple[Work, ...] = ()
    spends: tuple[tuple[str, Fraction], ...] = ()
    needs: tuple[str, ...] = ()
    excludes: tuple[str, ...] = ()
    pick_one: str = ""
    answers: tuple[tuple[str, Fraction], ...] = ()
    targets: tuple[str, ...] = ()
    hazards: tuple[str, ...] = ()
    cares: tuple[str, ...] = ()
    done_when: str = ""
    accepts: str = ""
    """The range of sizes that would do as well, in words; of the product `accepts_of`."""
    accepts_of: str = ""
    own: bool = False
    leaves: Leaves = "nothing"
    later: tuple[tuple[str, Fraction], ...] = ()
    """(product id, units) that are bought with it and kept until it is undone; no step waits for them."""
    client: str = ""
    """What it is called to a client; empty: its name."""
    paint_mm2: float = 0.0
    """Paint that it disturbs (drilled, rubbed down, scraped); 0 where the home is known to be from 1978 or later."""

    @property
    def goods(self) -> tuple[tuple[str, Fraction], ...]:
        """Everything that is bought for it, now and to keep, by product."""
        if not self.later:
            return self.uses
        total = dict(self.uses)
        for product, units in self.later:
            total[product] = total.get(product, Fraction(0)) + units
        return tuple(sorted(total.items()))
