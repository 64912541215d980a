"""Why an option is not in the plan: against every subset in every placing."""

from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.optimize.cannot import impossible
from budgetfix.optimize.problem import Limit, Option, Problem, Session, Step
from budgetfix.optimize.recount import marks_of
from budgetfix.optimize.why_not import why_not
from tests.optimize import brute
from tests.optimize.test_curve import small_world, solved, worth
from tests.optimize.worlds import World, marked, points_problem, still, ticking

Left = tuple[int, ...]


def holding(world: World, problem: Problem, id: str) -> list[tuple[int, Left]]:
    """Money and what remains, of every set in every placing that holds an option; whatever the budget."""
    found: list[tuple[int, Left]] = []
    for chosen in brute.subsets(problem):
        left = world.left(chosen)
        if left is not None and id in chosen:
            for where in brute.placings(problem, chosen):
                money = brute.spent(problem, chosen, where)
                if money is not None:
                    found.append((money, left if problem.hazards_first else (sum(left),)))
    return found


@pytest.mark.parametrize("number", range(500, 540))
def test_every_answer_is_what_trying_everything_finds(number: int) -> None:
    """The best plan with it, that there is none, and the least money with which it costs nothing."""
    world = small_world(number, people=1 + number % 2, options=5 - number % 2)
    problem = world.problem
    best = solved(problem)
    if best is None:
        return
    cannot = impossible(problem)
    found = why_not(problem, best, [one.id for one in problem.options], seconds=60, clock=still)
    assert set(found) == {one.id for one in problem.options} - set(best.chosen) - set(cannot)
    for id, why in found.items():
        every = holding(world, problem, id)
        within = [one for one in every if problem.budget_minor is None or one[0] <= problem.budget_minor]
        assert why.nothing == (not within)
        if why.held is not None:
            left, money = min((left, money) for money, left in within)
            assert (worth(world, why.held), why.held.spent_minor) == (left, money)
        as_good = [money for money, left in every if left <= worth(world, best)]
        if why.enough is not None:
            assert why.enough.spent_minor == min(as_good) > (problem.budget_minor or 0)
        assert not why.open
        if why.dear is not None:
            assert why.dear.spent_minor == min(money for money, _ in every) > (problem.budget_minor or 0)
            assert not as_good
        if why.nothing and why.enough is None and why.dear is None:
            assert not every


@pytest.mark.parametrize("number", range(560, 580))
def test_what_is_held_leaves_least_behind_before_money(number: int) -> None:
    """The best plan that holds an option: of those that do as much the one that leaves least behind, then the cheapest;
    the money with which it costs no points is asked whatever is left behind.
    """
    world = marked(small_world(number, options=5), number)
    problem = world.problem
    best = solved(problem)
    if best is None:
        return
    for id, why in why_not(problem, best, [one.id for one in problem.options], seconds=60, clock=still).items():
        sets = [chosen for chosen in brute.subsets(problem) if id in chosen and world.left(chosen) is not None]
        every = [
            (_compared(world, chosen), marks_of(problem, chosen), money)
            for chosen in sets
            for where in brute.placings(problem, chosen)
            if (money := brute.spent(problem, chosen, where)) is not None
        ]
        within = [one for one in every if problem.budget_minor is None or one[-1] <= problem.budget_minor]
        assert why.nothing == (not within)
        if why.held is not None:
            marks = marks_of(problem, why.held.chosen)
            assert (worth(world, why.held), marks, why.held.spent_minor) == min(within)
        if why.enough is not None:
            assert why.enough.spent_minor == min(money for left, _, money in every if left <= worth(world, best))


def _compared(world: World, chosen: frozenset[str]) -> Left:
    """What remains of a set, as it is compared."""
    left = world.left(chosen) or (0, 0)
    return left if world.problem.hazards_first else (sum(left),)


@pytest.mark.parametrize("number", range(540, 560))
def test_what_is_screened_is_never_too_much(number: int) -> None:
    """Where the clock leaves only the relaxation, "at least so many points worse" is never more than the truth."""
    world = small_world(number, options=5)
    problem = world.problem
    best = solved(problem)
    if best is None:
        return
    for id, why in why_not(problem, best, [one.id for one in problem.options], seconds=3, clock=ticking(1.0)).items():
        every = holding(world, problem, id)
        within = [left for money, left in every if problem.budget_minor is None or money <= problem.budget_minor]
        fine = [left for left in within if not problem.hazards_first or left[0] <= best.hazards]
        if why.held is None and why.worse and fine:
            assert worth(world, best)[-1] + why.worse <= min(left[-1] for left in fine)


def test_barred_is_not_the_same_as_too_dear() -> None:
    """Two remedies that want the same holes, and one that wants more money: each could be had with 50.00 more."""
    options = (
        Option("a", cost_minor=100, spends=(("holes", 2),)),
        Option("b", cost_minor=100, spends=(("holes", 2),)),
        Option("c", cost_minor=250),
    )
    gains = {"a": 50, "b": 40, "c": 30}
    problem = points_problem(options, gains, budget_minor=300, limits=(Limit("holes", 2),))
    best = solved(problem)
    assert best is not None
    assert best.chosen == ("a",)
    found = why_not(problem, best, "bc", seconds=60, clock=still)
    assert found["b"].held is not None
    assert found["b"].worse == 10
    both = found["b"].enough
    assert both is not None
    assert (both.chosen, both.spent_minor) == (("b", "c"), 350)
    assert found["c"].enough is not None
    assert found["c"].enough.spent_minor == 350


def test_no_room_in_the_hours_is_not_barred() -> None:
    """A must fills the only session: nothing else fits, though with more time it would."""
    evening = (Session(0, 60, (60,)),)
    options = (Option("a", steps=(Step(60),)), Option("b", steps=(Step(30),)))
    problem = points_problem(options, {"a": 5, "b": 50}, sessions=evening, must=(("a",),))
    best = solved(problem)
    assert best is not None
    why = why_not(problem, best, "b", seconds=60, clock=still)["b"]
    assert why.nothing
    assert not why.barred
    assert why_not(replace(problem, sessions=None), best, "b", seconds=0, clock=still)["b"].held is None
