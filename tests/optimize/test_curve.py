"""Other sums of money, one point more, one hour more: against every subset in every placing."""

from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.optimize.answering import solve
from budgetfix.optimize.curve import Curve, Gap, an_hour_longer, curve, next_hour, next_point
from budgetfix.optimize.problem import Answer, NoPlan, Option, Plan, Problem
from budgetfix.optimize.recount import marks_of
from tests.optimize import brute
from tests.optimize.worlds import World, marked, points_problem, random_world, still, ticking

Reached = tuple[int, tuple[int, ...]]
"""(money, what remains)."""


def small_world(number: int, *, people: int = 1, options: int = 5) -> World:
    """A random job whose wishes are the usual ones: "do everything" has no use for other sums."""
    world = random_world(number, people=people, options=options)
    return replace(world, problem=replace(world.problem, must_all=False))


def worth(world: World, plan: Plan) -> tuple[int, ...]:
    """What remains after a plan, as it is compared."""
    both = (plan.hazards + plan.points,)
    return (plan.hazards, plan.points) if world.problem.hazards_first else both


def key(world: World, plan: Plan) -> tuple[int, ...]:
    """The same, and what it leaves behind."""
    return (*worth(world, plan), marks_of(world.problem, plan.chosen))


def marked_world(number: int) -> World:
    """One whose options leave something behind: less of that comes before money."""
    return marked(small_world(number, people=1 + number % 2, options=5 - number % 2), number)


def reached(world: World, problem: Problem) -> set[Reached]:
    """Money and what remains, of every set in every placing, whatever the budget."""
    found: set[Reached] = set()
    for chosen in brute.subsets(problem):
        left = world.left(chosen)
        if left is not None:
            for where in brute.placings(problem, chosen):
                money = brute.spent(problem, chosen, where)
                if money is not None:
                    both = left if problem.hazards_first else (sum(left),)
                    found.add((money, (*both, marks_of(problem, chosen))))
    return found


def efficient(everything: set[Reached]) -> list[Reached]:
    """Those than which nothing cheaper or as cheap does as much."""
    kept: list[Reached] = []
    for money, left in sorted(everything):
        if not kept or left < kept[-1][1]:
            kept.append((money, left))
    return kept


def solved(problem: Problem) -> Plan | None:
    """The best plan in figures, where there is one."""
    answer = solve(problem, clock=still, depth="figures")
    return answer.plan if isinstance(answer, Answer) else None


@pytest.mark.parametrize("number", range(60))
def test_the_whole_curve_is_every_efficient_plan(number: int) -> None:
    """With time enough, the curve holds each sum of money at which more can be had, and nothing else."""
    world = small_world(number, people=1 + number % 2, options=5 - number % 2)
    best = solved(world.problem)
    if best is None:
        return
    found = curve(world.problem, best, seconds=60, clock=still)
    assert found.complete
    assert [(plan.spent_minor, key(world, plan)) for plan in found.plans] == efficient(reached(world, world.problem))


@pytest.mark.parametrize("number", range(300, 330))
def test_the_curve_where_less_left_behind_comes_before_money(number: int) -> None:
    """There a dearer plan may do as much with less left behind; one point more is told without those."""
    world = marked_world(number)
    best = solved(world.problem)
    if best is None:
        return
    found = curve(world.problem, best, seconds=60, clock=still)
    every = efficient(reached(world, world.problem))
    assert found.complete
    assert [(plan.spent_minor, key(world, plan)) for plan in found.plans] == every
    mine = worth(world, best)
    more = [(money, left) for money, left in every if money > best.spent_minor and left[:-1] < mine]
    told = found.after(best.spent_minor)
    assert (told.spent_minor, key(world, told)) == more[0] if isinstance(told, Plan) else not more


@pytest.mark.parametrize("number", range(60, 80))
def test_a_curve_that_is_cut_off_says_so_and_holds_only_truth(number: int) -> None:
    """Stopped early, its plans are still efficient ones, and what is missing lies in the gaps it names."""
    world = small_world(number, options=6)
    best = solved(world.problem)
    if best is None:
        return
    found = curve(world.problem, best, seconds=12, clock=ticking(0.1))
    truth = efficient(reached(world, world.problem))
    mine = [(plan.spent_minor, key(world, plan)) for plan in found.plans]
    inside = [one for one in truth if mine[0][0] <= one[0] <= mine[-1][0]]
    assert (best.spent_minor, key(world, best)) in mine
    for money, left in inside:
        assert (money, left) in mine or any(gap.known < money < gap.above for gap in found.gaps)
    assert found.complete == (not found.gaps and found.topped)


@pytest.mark.parametrize("number", range(80, 110))
def test_one_point_more_is_the_least_money_that_buys_any(number: int) -> None:
    """The next step is the first sum of money at which anything better exists; none means that nothing does."""
    world = small_world(number, options=5)
    best = solved(world.problem)
    if best is None:
        return
    found = next_point(world.problem, best, seconds=60, clock=still)
    dearer = [one for one in sorted(reached(world, world.problem)) if one[1] < key(world, best)]
    if not dearer:
        assert isinstance(found, NoPlan)
    else:
        assert isinstance(found, Plan)
        assert found.spent_minor == dearer[0][0]
        assert key(world, found) < key(world, best)


@pytest.mark.parametrize("number", range(110, 130))
def test_one_hour_more_is_the_best_plan_of_the_longer_list(number: int) -> None:
    """With an hour more in the last session: what trying everything there comes to, for the same money."""
    world = small_world(number, options=5)
    best, longer = solved(world.problem), an_hour_longer(world.problem)
    if best is None or longer is None:
        return
    found = next_hour(world.problem, best, seconds=60, clock=still)
    most = world.problem.budget_minor
    left = min(left for money, left in reached(world, longer) if most is None or money <= most)
    assert found is not None
    assert key(world, found) == left <= key(world, best)


def test_a_curve_by_hand() -> None:
    """Three things for 1.00, 2.00 and 4.00, worth 10, 25 and 60 points: eight sums of money, each does more."""
    prices = {"a": (100, 10), "b": (200, 25), "c": (400, 60)}
    options = tuple(Option(id, cost_minor=cost) for id, (cost, _) in prices.items())
    problem = points_problem(options, {id: points for id, (_, points) in prices.items()}, budget_minor=400)
    best = solved(problem)
    assert best is not None
    found = curve(problem, best, seconds=60, clock=still)
    assert [plan.spent_minor for plan in found.plans] == [0, 100, 200, 300, 400, 500, 600, 700]
    assert found.complete
    more = next_point(problem, best, seconds=60, clock=still)
    assert isinstance(more, Plan)
    assert more.spent_minor == 500
    assert next_hour(problem, best, seconds=60, clock=still) is None


def test_without_time_or_budget_nothing_is_called_complete() -> None:
    """No limit of money and no second to look: the one plan in hand is not said to be all there is."""
    options = tuple(Option(id, cost_minor=cost) for id, cost in (("a", 100), ("b", 200), ("c", 400)))
    problem = points_problem(options, {"a": 10, "b": 25, "c": 60})
    best = solved(problem)
    assert best is not None
    found = curve(problem, best, seconds=0, clock=still)
    assert [plan.spent_minor for plan in found.plans] == [700]
    assert not found.complete
    assert curve(problem, best, seconds=60, clock=still).complete


def test_a_gap_is_open_until_it_is_closed() -> None:
    """A curve with a gap, or without a top, is not complete; what comes next is told only where that is known."""
    assert not Curve((), (Gap(0, 100),), topped=True).complete
    assert not Curve((), (), topped=False).complete
    here, there = (Plan((), (), 0, 300 - spent, spent, 0) for spent in (100, 300))
    assert Curve((here, there), (), topped=True).after(100) == there
    assert Curve((here, there), (Gap(150, 300),), topped=True).after(100) is None
    assert Curve((here, there), (), topped=True).after(300) == NoPlan()
    assert Curve((here, there), (), topped=False).after(300) is None
