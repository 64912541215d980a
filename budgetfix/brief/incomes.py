"""Money that comes on several days: what there is by when, and what is left of it later on."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from itertools import accumulate


@dataclass(frozen=True, slots=True)
class Income:
    """So much comes on a day, or, where sessions have no dates, at the start of a session (from 1). Minor units."""

    amount_minor: int
    on: date | None = None
    session: int | None = None
    held_minor: int | None = None
    """Held back of all that has come by then; None where the contingency says it."""


def total_minor(incomes: Iterable[Income]) -> int:
    """All that comes, in minor units."""
    return sum(one.amount_minor for one in incomes)


def running_minor(incomes: Iterable[Income]) -> tuple[int, ...]:
    """What has come with each income, those before it counted in."""
    return tuple(accumulate(one.amount_minor for one in incomes))


def capped(incomes: tuple[Income, ...], budget_minor: int) -> tuple[Income, ...]:
    """The same days with another sum in all: what is less comes off the last days, what is more comes on the last."""
    left, kept = budget_minor, []
    for place, one in enumerate(incomes):
        amount = left if place == len(incomes) - 1 else min(left, one.amount_minor)
        left -= amount
        if amount:
            kept.append(replace(one, amount_minor=amount))
    return tuple(kept)


def with_held(incomes: Iterable[Income], whole: Iterable[Income], held_minor: Iterable[int]) -> tuple[Income, ...]:
    """What is left of incomes, each with what was held back of the running sum of all by its day, or its session.

    `held_minor`: of each of `whole`, in their order.
    """
    known = tuple(zip(whole, held_minor, strict=True))
    found = []
    for one in incomes:
        when = one.session if one.on is None else one.on
        by_then = [held for each, held in known if when is not None and has_come(each, when)]
        found.append(replace(one, held_minor=by_then[-1] if by_then else 0))
    return tuple(found)


def has_come(one: Income, day: date | int) -> bool:
    """Whether an income is there on a day, or in a session (from 1); neither tells anything of the other."""
    if isinstance(day, date):
        return one.on is not None and one.on <= day
    return one.session is not None and one.session <= day


def left_after(incomes: tuple[Income, ...], day: date | int, spent_minor: int) -> tuple[Income, ...]:
    """What is left on a day (or in a session, from 1): all that has come as one income, less what was spent.

    What was spent above that comes off the next incomes; those with nothing left fall away. Negative `spent_minor`
    (more came back than was paid) adds to what has come.
    """
    come = total_minor(one for one in incomes if has_come(one, day)) - spent_minor
    now = Income(come, day) if isinstance(day, date) else Income(come, session=day)
    found = [now] if come > 0 else []
    owed = max(0, -come)
    for one in incomes:
        if has_come(one, day):
            continue
        taken = min(owed, one.amount_minor)
        owed -= taken
        if one.amount_minor > taken:
            found.append(replace(one, amount_minor=one.amount_minor - taken))
    return tuple(found)
