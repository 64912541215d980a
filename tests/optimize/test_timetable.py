"""Reduced costs and the narrowing timetable: what they rule out is never in a best answer."""

from __future__ import annotations

from itertools import product
from random import Random

import pytest

from budgetfix.optimize import search, timetable
from budgetfix.optimize.answering import solve
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.linear import relaxed, relaxed_with
from budgetfix.optimize.problem import Answer, NoPlan
from budgetfix.optimize.solver import Program, Row, run
from tests.optimize.worlds import random_world, still


def _knapsack(number: int) -> tuple[Program, tuple[tuple[int, str], ...], list[int], list[int], int]:
    """Ten things, worth and weight alike enough to be hard; minimising what is left behind."""
    dice = Random(number)
    weights = [dice.randint(10, 60) for _ in range(10)]
    worths = [weight + dice.randint(-5, 5) for weight in weights]
    room = sum(weights) // 2
    program = Program()
    for place in range(10):
        program.binary(f"x{place}")
    program.add([Row("room", tuple((weight, f"x{place}") for place, weight in enumerate(weights)), "<=", room)])
    return program, tuple((-worth, f"x{place}") for place, worth in enumerate(worths)), weights, worths, room


@pytest.mark.parametrize("number", range(12))
def test_reduced_costs_rule_out_no_best_answer(number: int) -> None:
    """Whatever is called dearer is the other way in each of the best of all 1,024 choices, and the bound holds."""
    program, objective, weights, worths, room = _knapsack(number)
    found = relaxed(program, objective, 10.0)
    assert found is not None
    fitting = [
        choice
        for choice in product((0, 1), repeat=10)
        if sum(weight for weight, taken in zip(weights, choice, strict=True) if taken) <= room
    ]
    most = max(sum(worth for worth, taken in zip(worths, choice, strict=True) if taken) for choice in fitting)
    assert found.bound <= -most
    ways = [found.dearer(f"x{place}", -most) for place in range(10)]
    for choice in fitting:
        if sum(worth for worth, taken in zip(worths, choice, strict=True) if taken) == most:
            assert all(way != ("up" if taken else "down") for way, taken in zip(ways, choice, strict=True))


def test_reduced_costs_rule_something_out() -> None:
    """Of things of one weight, the clearly worst is never in the best choice and the clearly best always."""
    program = Program()
    for name in "abc":
        program.binary(name)
    program.add([Row("one", ((2, "a"), (2, "b"), (2, "c")), "<=", 3)])
    found = relaxed(program, ((-90, "a"), (-50, "b"), (-10, "c")), 10.0)
    assert found is not None
    assert [found.dearer(name, -90) for name in "abc"] == ["down", None, "up"]


@pytest.mark.parametrize("number", range(6))
def test_a_floor_with_each_thing_taken_is_below_the_truth(number: int) -> None:
    """One thing at a time in the bag: no choice that holds it does better than its floor; too heavy is no choice."""
    program, objective, weights, worths, room = _knapsack(number)
    program.binary("stone")
    program.add([Row("stone", ((1, "stone"),), "<=", 0)])
    floors = relaxed_with(program, objective, [*(f"x{place}" for place in range(10)), "stone", "nothing"], 10.0)
    assert set(floors) == {*(f"x{place}" for place in range(10)), "stone"}
    assert floors["stone"] == float("inf")
    alone = relaxed(program, objective, 10.0)
    assert alone is not None
    for place in range(10):
        held = [
            sum(worth for worth, taken in zip(worths, choice, strict=True) if taken)
            for choice in product((0, 1), repeat=10)
            if choice[place] and sum(weight for weight, taken in zip(weights, choice, strict=True) if taken) <= room
        ]
        assert alone.bound - 0.01 <= floors[f"x{place}"] <= -max(held)
    assert relaxed_with(program, objective, ["x1"], 0.0) == {}


def test_a_relaxation_without_a_solution_says_nothing() -> None:
    """Rows that no number keeps give no bound; nor does a clock that has run out."""
    program = Program()
    program.binary("x")
    program.add([Row("too_much", ((1, "x"),), ">=", 2)])
    assert relaxed(program, ((1, "x"),), 10.0) is None
    assert relaxed(Program(), (), 0.0) is None


def test_what_can_only_be_nothing_is_left_out_and_still_answered() -> None:
    """A variable pinned to 0 is no column of the solver's, and 0 in the answer."""
    program = Program()
    program.binary("x")
    program.binary("y")
    program.fix("x", 0)
    program.add([Row("one", ((1, "x"), (1, "y")), ">=", 1)])
    solved = run(program, ((1, "x"), (1, "y")), 10.0)
    assert solved.values == {"x": 0.0, "y": 1.0}
    program.fix("y", 0)
    assert run(program, (), 10.0).status == "infeasible"


@pytest.mark.parametrize("number", range(400, 415))
def test_short_cuts_change_no_answer(number: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """Pinning after each wish and asking for whole numbers in parts give the very plan that neither gives."""
    problem = random_world(number, people=1 + number % 2, options=7, sessions=4).problem
    plain = solve(problem, clock=still)
    monkeypatch.setattr(timetable, "LARGE", 0)
    monkeypatch.setattr(search, "WORTH_PINNING", 0)
    monkeypatch.setattr(Facts, "long_steps", True)
    short = solve(problem, clock=still)
    assert isinstance(short, NoPlan) == isinstance(plain, NoPlan)
    if isinstance(plain, Answer) and isinstance(short, Answer):
        assert short.plan == plain.plan
        assert short.proven
        assert plain.proven
