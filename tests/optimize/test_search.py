"""The search does not believe what it cannot count again."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from budgetfix.optimize import search, solve, solver
from budgetfix.optimize.problem import Answer, Option
from budgetfix.optimize.program import Program, Solved, Terms
from tests.optimize.worlds import points_problem, still


def blind(run: Callable[..., Solved], times: int) -> Callable[..., Solved]:
    """A solver that does not see the row about money, so many times."""
    left = [times]

    def told(program: Program, objective: Terms, *more: Any, **named: Any) -> Solved:
        if left[0] > 0:
            left[0] -= 1
            program = replace(program, rows=[row for row in program.rows if row.name != "budget"])
        return run(program, objective, *more, **named)

    return told


@pytest.mark.parametrize("times", [1, 2, 3, 4])
def test_a_set_that_is_wrongly_claimed_is_asked_for_no_more(times: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """A solver claims a set that is over the money, once or several times: the plan is the right one all the same."""
    options = tuple(Option(id, None, (), cost) for id, cost in (("a", 60), ("b", 50), ("c", 30)))
    problem = points_problem(options, {"a": 9, "b": 8, "c": 4}, budget_minor=90)
    monkeypatch.setattr(search, "run", blind(solver.run, times))
    answer = solve(problem, clock=still)
    assert isinstance(answer, Answer)
    assert (answer.plan.chosen, answer.plan.spent_minor, answer.proven) == (("a", "c"), 90, True)
