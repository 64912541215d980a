"""What must hold for every job, whatever its numbers: more is never worse, twins go by name, prices have no scale."""

from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.optimize.answering import solve
from budgetfix.optimize.curve import an_hour_longer
from budgetfix.optimize.problem import Answer, NoPlan, Option, Plan, Problem, Product, Session, Shop, Step, Tool
from tests.optimize.worlds import points_problem, random_world, still, ticking

NUMBERS = range(700, 724)


def usual(number: int) -> Problem:
    """A random job whose wishes are the usual ones."""
    problem = random_world(number, people=1 + number % 2, options=6, long=number % 3 == 0).problem
    return replace(problem, must_all=False)


def left(problem: Problem, answer: Answer | NoPlan) -> tuple[int, ...]:
    """What remains, as it is compared; no plan is worst of all."""
    if isinstance(answer, NoPlan):
        return (10**9,)
    plan = answer.plan
    return (plan.hazards, plan.points) if problem.hazards_first else (plan.hazards + plan.points,)


@pytest.mark.parametrize("number", NUMBERS)
def test_more_is_never_worse(number: int) -> None:
    """More money, a longer evening, one more remedy: never more hazards or points left."""
    problem = usual(number)
    before = left(problem, solve(problem, clock=still, depth="figures"))
    more = [replace(problem, budget_minor=None if problem.budget_minor is None else problem.budget_minor + 500)]
    more += [longer for longer in (an_hour_longer(problem),) if longer is not None]
    more += [replace(problem, limits=tuple(replace(limit, most=limit.most + 2) for limit in problem.limits))]
    more += [replace(problem, options=(*problem.options, Option("z0", steps=(Step(10),), cost_minor=5)))]
    for other in more:
        assert left(other, solve(other, clock=still, depth="figures")) <= before


def dearer(problem: Problem, by: int) -> Problem:
    """All money times a factor."""

    def times(price: int | None) -> int | None:
        return None if price is None else price * by

    return replace(
        problem,
        options=tuple(replace(one, cost_minor=one.cost_minor * by) for one in problem.options),
        products=tuple(
            Product(one.id, one.price_minor * by, one.pack, one.on_hand, one.shop) for one in problem.products
        ),
        tools=tuple(Tool(one.id, one.owned, times(one.buy_minor), times(one.hire_minor)) for one in problem.tools),
        shops=tuple(Shop(one.id, one.delivery_minor * by, times(one.free_over_minor)) for one in problem.shops),
        budget_minor=times(problem.budget_minor),
    )


@pytest.mark.parametrize("number", NUMBERS)
def test_money_has_no_scale(number: int) -> None:
    """Without tax and mark-up, prices a hundred times as high choose the same set, in the same sessions."""
    one, other = (solve(dearer(usual(number), by), clock=still) for by in (1, 100))
    assert isinstance(one, NoPlan) == isinstance(other, NoPlan)
    if isinstance(one, Answer) and isinstance(other, Answer):
        assert (other.plan.chosen, other.plan.placed) == (one.plan.chosen, one.plan.placed)
        assert other.plan.spent_minor == 100 * one.plan.spent_minor


@pytest.mark.parametrize("number", NUMBERS)
def test_a_stop_has_a_true_floor(number: int) -> None:
    """Stopped somewhere on the way: a plan that is no better than the best, and floors that are no higher."""
    problem = usual(number)
    whole = solve(problem, clock=still, depth="figures")
    if isinstance(whole, NoPlan):
        return
    for step in (0.2, 1.0, 5.0):
        stopped = solve(problem, seconds=20, clock=ticking(step))
        assert isinstance(stopped, Answer)
        assert left(problem, stopped) >= left(problem, whole)
        assert stopped.least_hazards <= whole.plan.hazards
        if problem.hazards_first and stopped.plan.hazards == whole.plan.hazards:
            assert stopped.least_points <= whole.plan.points


def test_twins_go_by_name() -> None:
    """Of two remedies alike in everything the one with the smaller id is chosen."""
    options = tuple(Option(id, "g", (Step(30),), 100) for id in ("b", "a", "c"))
    problem = points_problem(options, dict.fromkeys("abc", 7))
    answer = solve(problem, clock=still)
    assert isinstance(answer, Answer)
    assert answer.plan.chosen == ("a",)


def test_waits_are_plain_minutes() -> None:
    """A wait of 24 h from Saturday noon is over on Sunday noon, the night of the clock change as any other."""
    day = 1440
    hours = (Session(600, 720, (120,)), Session(day + 600, day + 719, (119,)), Session(day + 720, day + 800, (80,)))
    painted = Option("paint", steps=(Step(60), Step(30, wait_minutes=day)))
    answer = solve(points_problem((painted,), {"paint": 9}, sessions=hours), clock=still)
    assert isinstance(answer, Answer)
    assert isinstance(answer.plan, Plan)
    assert [one.session for one in answer.plan.placed] == [0, 2]
