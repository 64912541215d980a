"""The plans for other sums of money with lists of their own, so that a reader may slide from one to the next."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from budgetfix.optimize.in_order import in_order
from budgetfix.optimize.problem import Plan
from budgetfix.outcome.book import Stop
from budgetfix.outcome.check import checked
from budgetfix.outcome.make import lists
from budgetfix.outcome.worth import Worth
from budgetfix.pipeline.plans import Chooser, with_money_for

MOMENT = 0.5
"""Seconds in which the order of a plan's steps is usually found."""


def stops(chooser: Chooser, mine: Plan, plans: Iterable[Plan], left: Callable[[], float]) -> tuple[Stop, ...]:
    """One stop a plan, by rising spend; `mine` stands as it is. Each is checked anew.

    `left`: seconds for putting steps into their one order; each plan gets a moment even where there are none.
    """
    worth = Worth(chooser.base, chooser.framed)
    made = []
    for plan in plans:
        this_one = (plan.spent_minor, plan.chosen) == (mine.spent_minor, mine.chosen)
        made.append(_stop(chooser, mine if this_one else _placed(chooser, plan, left), worth, this_one))
    return tuple(made)


def _placed(chooser: Chooser, plan: Plan, left: Callable[[], float]) -> Plan:
    problem, seconds = with_money_for(chooser.framed.problem, plan), max(MOMENT, left())
    return in_order(problem, plan, seconds=seconds, clock=chooser.clock, growth=chooser.growth)


def stop_of(chooser: Chooser, plan: Plan, left: Callable[[], float]) -> Stop:
    """One more plan as a stop, its steps in their one order as far as the clock allows."""
    return _stop(chooser, _placed(chooser, plan, left), Worth(chooser.base, chooser.framed), False)


def _stop(chooser: Chooser, plan: Plan, worth: Worth, this_one: bool) -> Stop:
    base = chooser.base
    framed = chooser.framed_for(plan)
    found = checked(base, framed, plan)
    made = lists(base, framed, plan, found, worth)
    return Stop(
        chooser.summed(plan, found),
        plan.hazards,
        made.money,
        made.tasks,
        made.sessions,
        made.faults,
        this_one,
    )
