"""Any plan's steps put into the one order that a whole solve gives them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.optimize.answering import solve
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.in_order import in_order
from budgetfix.optimize.problem import Answer
from tests.optimize.worlds import random_world, still


@pytest.mark.parametrize("number", range(40))
def test_a_set_placed_somehow_ends_in_the_order_of_a_whole_solve(number: int) -> None:
    """The same set, money and steps, whether the order is asked for at once or afterwards."""
    problem = random_world(number, people=1 + number % 2).problem
    growth = Growth(problem)
    whole = solve(problem, seconds=60, clock=still, growth=growth)
    some = solve(problem, seconds=60, clock=still, growth=growth, depth="set")
    if not isinstance(whole, Answer) or not isinstance(some, Answer):
        assert type(whole) is type(some)
        return
    assert in_order(problem, some.plan, seconds=60, clock=still, growth=growth) == whole.plan


def test_the_budget_is_no_matter() -> None:
    """A plan for more money than there is may be put in order, too, and keeps its bill."""
    problem = replace(random_world(3).problem, budget_minor=None, must=())
    found = solve(problem, seconds=60, clock=still, depth="set")
    assert isinstance(found, Answer)
    poor = replace(problem, budget_minor=0)
    assert in_order(poor, found.plan, seconds=60, clock=still).spent_minor == found.plan.spent_minor
