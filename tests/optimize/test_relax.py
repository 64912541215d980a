"""No plan: the fewest wishes that clash, against every subset of them and every plan there is."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import combinations

import pytest

from budgetfix.optimize.answering import solve
from budgetfix.optimize.problem import Limit, NoPlan, Option, Problem, Session, Step
from budgetfix.optimize.relax import relaxed
from tests.optimize import brute
from tests.optimize.worlds import World, points_problem, random_world, still, ticking

WISHES = ("budget", "limit:holes", "sessions", "last_session")


def strict(number: int) -> World:
    """A random job with little money and time and two musts, so that often nothing fits."""
    world = random_world(number, options=4, sessions=2)
    ids = sorted(one.id for one in world.problem.options)
    musts = ((ids[number % 4],), (ids[(number + 1) % 4], ids[(number + 2) % 4]))
    last = 0 if number % 2 else None
    problem = replace(world.problem, must=musts, must_all=False, budget_minor=900, last_session=last)
    return replace(world, problem=problem)


def names(problem: Problem) -> list[str]:
    """All wishes of a problem."""
    musts = [f"must:{','.join(must)}" for must in problem.must]
    kept = [name for name in WISHES if name != "last_session" or problem.last_session is not None]
    used: Counter[str] = Counter()
    for one in problem.options:
        used.update(dict(one.uses))
    vans = [f"load:{load.id}" for load in problem.loads]
    short = [one.id for one in problem.products if one.most is not None]
    most = {one.id: one.on_hand + one.pack * (one.most or 0) for one in problem.products}
    return list(dict.fromkeys([*musts, *kept, *(f"most:{id}" for id in short if used[id] > most[id]), *vans]))


def with_only(problem: Problem, kept: frozenset[str]) -> Problem:
    """The problem with some of its wishes."""
    return replace(
        problem,
        must=tuple(must for must in problem.must if f"must:{','.join(must)}" in kept),
        budget_minor=problem.budget_minor if "budget" in kept else None,
        limits=problem.limits if "limit:holes" in kept else (),
        products=tuple(one if f"most:{one.id}" in kept else replace(one, most=None) for one in problem.products),
        sessions=problem.sessions if "sessions" in kept else None,
        loads=problem.loads if "load:van" in kept else (),
        last_session=problem.last_session if {"sessions", "last_session"} <= kept else None,
    )


def enough_people(problem: Problem, chosen: frozenset[str]) -> bool:
    """Whether each step finds as many people as it takes, hours or none."""
    steps = [step for one in problem.options if one.id in chosen for step in one.steps]
    return all(len(set(problem.people) - set(step.barred)) >= step.people for step in steps)


def least(world: World, problem: Problem) -> int | None:
    """The least money of any plan, by trying everything; None: there is none."""
    found = []
    for chosen in brute.subsets(problem):
        if world.left(chosen) is None or not enough_people(problem, chosen):
            continue
        wheres = brute.placings(problem, chosen) if problem.sessions is not None else iter([{}])
        for where in wheres:
            money = brute.spent(problem, chosen, where)
            if money is not None and (problem.budget_minor is None or money <= problem.budget_minor):
                found.append(money)
    return min(found, default=None)


@pytest.mark.parametrize("number", range(60))
def test_the_clash_is_the_smallest_there_is(number: int) -> None:
    """No plan keeps the named wishes; a plan keeps any fewer; and each that may be given up is named."""
    world = strict(number)
    problem = world.problem
    answer = solve(problem, clock=still, depth="figures")
    possible = {
        frozenset(some): least(world, with_only(problem, frozenset(some))) is not None
        for size in range(len(names(problem)) + 1)
        for some in combinations(names(problem), size)
    }
    everything = frozenset(names(problem))
    assert isinstance(answer, NoPlan) != possible[everything]
    if not isinstance(answer, NoPlan):
        return
    assert not possible[frozenset(answer.clash)]
    assert len(answer.clash) == min(len(some) for some, fits in possible.items() if not fits)
    assert set(answer.relax) == {name for name in everything if possible[everything - {name}]}
    if "budget" in answer.relax:
        assert answer.least_minor == least(world, with_only(problem, everything - {"budget"}))


def test_one_wish_may_clash_with_itself() -> None:
    """A must that takes longer than every session: both are named, and why it could never be done."""
    evening = (Session(0, 60, (60,)),)
    problem = points_problem((Option("a", steps=(Step(90),)),), {"a": 5}, sessions=evening, must=(("a",),))
    found = solve(problem, clock=still)
    assert found == NoPlan(("must:a", "sessions"), ("must:a", "sessions"), None, (("a", "step-too-long"),))


def test_musts_that_exclude_each_other() -> None:
    """Two of one group: the two musts alone, whatever else is asked for."""
    options = (Option("a", "g", cost_minor=1), Option("b", "g", cost_minor=1))
    more = {"budget_minor": 5, "limits": (Limit("holes", 1),)}
    problem = points_problem(options, {"a": 5, "b": 5}, must=(("a",), ("b",)), **more)
    assert solve(problem, clock=still) == NoPlan(("must:a", "must:b"), ("must:a", "must:b"))


def test_everything_is_one_wish() -> None:
    """To do everything is named as one wish, with the least money that would do it."""
    options = tuple(Option(name, cost_minor=300) for name in "abc")
    problem = points_problem(
        options, dict.fromkeys("abc", 5), budget_minor=700, must=(("a",), ("b",), ("c",)), must_all=True
    )
    assert solve(problem, clock=still) == NoPlan(("must:all", "budget"), ("must:all", "budget"), 900)


def test_without_time_nothing_is_named() -> None:
    """Wherever the clock stops: what is not worked out is said to be open, and nothing false is claimed."""
    options = (Option("a", cost_minor=9), Option("b", cost_minor=1))
    problem = points_problem(options, {"a": 5, "b": 5}, budget_minor=5, must=(("a",),))
    why = (("a", "over-budget"),)
    whole = NoPlan(("must:a", "budget"), ("must:a", "budget"), 9, why)
    found = [relaxed(problem, 10.0, ticking(10.0 / count), "highs") for count in range(1, 60)]
    assert whole in found
    assert {replace(one, least_minor=9) for one in found if not one.open} == {whole}
    assert {one.clash for one in found if one.open} <= {(), whole.clash}
    assert all(one.relax == () for one in found if one.open)
    assert all(one.hopeless == why for one in found if one.clash)
    assert not any(isinstance(one, NoPlan) and one.proven for one in [stopped_at_once(problem)])


def stopped_at_once(problem: Problem) -> object:
    """A solve that the clock stops before anything is known."""
    return solve(problem, seconds=0, clock=ticking(100.0))
