"""The first plan of a large house: it keeps every promise, counts as the trees do, and is there in time."""

from __future__ import annotations

from random import Random

import pytest

from budgetfix.optimize import answering, recount
from budgetfix.optimize.answering import solve
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.greedy import Greedy
from budgetfix.optimize.growth import Growth, value
from budgetfix.optimize.problem import Answer, Extra, Option, Problem
from budgetfix.optimize.search import Search
from budgetfix.optimize.start import begin
from tests.framing.test_measured import FRAMED
from tests.optimize.worlds import points_problem, random_world, still, ticking


def never() -> bool:
    """Nobody ends it."""
    return False


def search_of(problem: Problem) -> Search:
    """A search of which nothing is known yet."""
    return Search(Facts.of(problem), Growth(problem, asks=0), Extra(), still, None, 60.0)


def greedy_of(problem: Problem) -> Greedy:
    """The rule at work on a problem."""
    search = search_of(problem)
    return Greedy(search, never)


@pytest.mark.parametrize("number", range(40))
def test_what_is_added_keeps_every_promise_and_never_leaves_more(number: int) -> None:
    """Random jobs with groups, needs, goods, tools, limits and sessions, from what must be chosen on."""
    problem = random_world(number, people=1 + number % 2, options=7, sessions=3).problem
    search = search_of(problem)
    begin(search)
    if search.best is None:
        return
    before = search.best
    chosen = Greedy(search, never).add(before.chosen)
    assert before.chosen <= chosen
    one, other = search.left_over(chosen), search.left_over(before.chosen)
    assert chosen == before.chosen or (one < other if problem.hazards_first else sum(one) < sum(other))
    placing = search.placer.quick(chosen, search.horizon, search.money)
    assert placing is not None
    assert recount.broken(search.facts, chosen, placing.placed) == ()
    assert search.growth.allowed(chosen)


def test_the_most_for_its_share_goes_first_until_the_money_is_spent() -> None:
    """Of four with points of their own, those with most points for their money: the greedy rule for knapsacks
    (G.B. Dantzig, Discrete-variable extremum problems, Operations Research 5, 1957), here not the best.
    """
    options = tuple(Option(id, None, (), cost) for id, cost in (("a", 60), ("b", 50), ("c", 50), ("d", 40)))
    problem = points_problem(options, {"a": 66, "b": 50, "c": 50, "d": 10}, budget_minor=100)
    assert greedy_of(problem).add(frozenset()) == {"a", "d"}
    answer = solve(problem, clock=still)
    assert isinstance(answer, Answer)
    assert answer.plan.chosen == ("b", "c")


def test_what_is_needed_comes_along() -> None:
    """A lamp that needs its socket: neither does anything alone."""
    options = (Option("lamp", needs=("socket",), cost_minor=5), Option("socket", cost_minor=5))
    problem = points_problem(options, {"lamp": 9}, budget_minor=10)
    assert greedy_of(problem).add(frozenset()) == {"lamp", "socket"}
    assert greedy_of(points_problem(options, {"lamp": 9}, budget_minor=9)).add(frozenset()) == frozenset()


@pytest.mark.parametrize("number", range(12))
def test_a_tree_asked_along_a_set_says_what_the_grown_one_says(number: int) -> None:
    """A measured room and sets drawn at random: the same hazard points and points as by growing its trees."""
    problem = FRAMED.problem
    rule, dice = greedy_of(problem), Random(number)
    ids = sorted(rule.search.facts.by_id)
    chosen: frozenset[str] = frozenset()
    for id in dice.sample(ids, len(ids)):
        if not rule.search.wrong(chosen | {id}) and dice.random() < 0.6:
            chosen |= {id}
    answers = [rule._answer(at, chosen) for at in range(len(problem.trees))]
    assert (sum(one.hazards for one in answers), sum(one.points for one in answers)) == value(Growth(problem), chosen)


def test_a_plan_is_there_though_the_clock_stops_the_growth(monkeypatch: pytest.MonkeyPatch) -> None:
    """A clock that runs out while trees are grown, and a solver that is never reached: what the rule found is told."""
    problem = FRAMED.problem
    monkeypatch.setattr(answering, "_proven_wishes", lambda *_: "stopped")
    answer = solve(problem, seconds=60.0, clock=ticking(1.0))
    assert isinstance(answer, Answer)
    assert not answer.proven
    assert answer.plan.points < value(Growth(problem), ())[1]
