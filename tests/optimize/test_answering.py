"""Whole solves: stopping early, other orders of input, another solver, forced choices, no plan at all."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest

from budgetfix.optimize import Growth
from budgetfix.optimize.answering import solve
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Answer, Extra, Limit, NoPlan, Option, Problem, Round, Rounds, Session, Step
from budgetfix.optimize.recount import broken
from tests.optimize.big import big
from tests.optimize.worlds import points_problem, random_world, still, ticking


def evening(*minutes: int) -> tuple[Session, ...]:
    """One evening a day, for one person."""
    return tuple(Session(day * 1440, day * 1440 + long, (long,)) for day, long in enumerate(minutes))


@pytest.mark.parametrize("number", range(100, 124))
def test_the_big_program_agrees(number: int) -> None:
    """Larger random jobs with long steps and two people: hazards, points, spend, minutes as in the one big program."""
    world = random_world(number, people=1 + number % 3, options=8, sessions=4, long=number % 4 == 0)
    problem = replace(world.problem, must_all=False, hazards_first=True)
    answer = solve(problem, clock=still)
    slow = big(problem)
    if isinstance(answer, NoPlan):
        assert slow is None
        return
    plan = answer.plan
    assert (plan.hazards, plan.points, plan.spent_minor, plan.person_minutes) == slow


@pytest.mark.parametrize("number", range(200, 216))
def test_the_order_of_input_does_not_matter(number: int) -> None:
    """Options, trees, tools, products and shops in another order: the same plan to the last step."""
    problem = random_world(number, people=2, options=6).problem
    dice = random.Random(number)
    mixed = replace(
        problem,
        options=tuple(dice.sample(problem.options, len(problem.options))),
        trees=tuple(dice.sample(problem.trees, len(problem.trees))),
        products=tuple(dice.sample(problem.products, len(problem.products))),
        tools=tuple(dice.sample(problem.tools, len(problem.tools))),
        limits=tuple(dice.sample(problem.limits, len(problem.limits))),
    )
    one, other = solve(problem, clock=still), solve(mixed, clock=still)
    if isinstance(one, NoPlan) or isinstance(other, NoPlan):
        assert one == other
    else:
        assert one.plan == other.plan


@pytest.mark.parametrize("number", range(300, 324))
def test_another_solver_gives_the_same_plan(number: int) -> None:
    """CBC, where PuLP brings it, picks the same set and the same sessions as HiGHS."""
    import pulp

    cbc = getattr(pulp, "PULP_CBC_CMD", None)
    if cbc is None or not cbc(msg=False).available():
        pytest.skip("NOT RUN: this PuLP brings no CBC")
    problem = random_world(number, people=1 + number % 2, options=6, long=number % 3 == 0).problem
    one, other = solve(problem, clock=still), solve(problem, clock=still, engine="cbc")
    if isinstance(one, NoPlan) or isinstance(other, NoPlan):
        assert one == other
    else:
        assert one.plan == other.plan


@pytest.mark.parametrize("number", range(400, 406))
def test_lazy_leaves_give_the_same_plan(number: int) -> None:
    """Trees that are only grown where the search goes end in the same plan as whole tables."""
    problem = random_world(number, options=6).problem
    lazy = solve(problem, clock=still, growth=Growth(problem, asks=0, asks_a_tree=0, asks_a_round=0))
    whole = solve(problem, clock=still)
    if isinstance(lazy, NoPlan) or isinstance(whole, NoPlan):
        assert lazy == whole
        return
    assert lazy.plan == whole.plan
    assert whole.rounds.inspections == 0


def test_lazy_leaves_take_inspections() -> None:
    """Nothing asked up front, and a first plan that is not the best: the search has to look again before it knows."""
    options = tuple(Option(id, None, (), cost) for id, cost in (("art", 60), ("rod", 50), ("rug", 50), ("tray", 40)))
    problem = points_problem(options, {"art": 66, "rod": 50, "rug": 50, "tray": 10}, budget_minor=100)
    lazy = solve(problem, clock=still, growth=Growth(problem, asks=0, asks_a_tree=0, asks_a_round=0))
    assert isinstance(lazy, Answer)
    assert lazy.plan.chosen == ("rod", "rug")
    assert lazy.rounds.inspections > 0
    assert lazy.proven


@pytest.mark.parametrize("number", range(500, 506))
def test_stopped_at_once_there_is_a_plan(number: int) -> None:
    """A hundredth of a second: a plan that keeps every promise, and floors that no better plan gets below."""
    world = random_world(number, options=7, long=True)
    problem = replace(world.problem, must=(), must_all=False, hazards_first=True)
    answer = solve(problem, seconds=0.01, clock=ticking(1.0))
    best = solve(problem, clock=still)
    assert isinstance(answer, Answer)
    assert isinstance(best, Answer)
    assert broken(Facts.of(problem), answer.plan.chosen, answer.plan.placed) == ()
    assert answer.least_hazards <= best.plan.hazards
    assert answer.least_points <= best.plan.points or best.plan.hazards > answer.least_hazards
    assert (answer.plan.hazards, answer.plan.points) >= (best.plan.hazards, best.plan.points)


def test_nothing_to_do_is_a_plan() -> None:
    """Without options the plan is to do nothing, proven."""
    answer = solve(Problem(()), clock=still)
    assert isinstance(answer, Answer)
    assert answer.plan.chosen == ()
    assert answer.proven
    assert answer.rounds == Rounds(0, 0)


def test_no_list_of_hours_places_without_sessions() -> None:
    """Hours null: every step is told who does it, in no session."""
    problem = points_problem((Option("rod", steps=(Step(600), Step(10, wait_sessions=1))),), {"rod": 5})
    answer = solve(problem, clock=still)
    assert isinstance(answer, Answer)
    assert [one.session for one in answer.plan.placed] == [None, None]
    assert answer.plan.person_minutes == 610


def test_an_empty_list_of_hours_leaves_what_takes_no_time() -> None:
    """Hours []: only what takes no minute, placed nowhere."""
    options = (Option("hang", steps=(Step(0),)), Option("rod", steps=(Step(1),)), Option("rug"))
    answer = solve(points_problem(options, {"hang": 1, "rod": 1, "rug": 1}, sessions=()), clock=still)
    assert isinstance(answer, Answer)
    assert answer.plan.chosen == ("hang", "rug")
    assert answer.plan.placed == ()


def test_ties_go_to_the_smallest_id() -> None:
    """Two sets alike in everything: the one with the smallest id on which they differ, ids as plain text."""
    options = tuple(Option(id, steps=(Step(60),)) for id in ("m10", "m2", "m9"))
    answer = solve(points_problem(options, {"m10": 5, "m2": 5, "m9": 5}, sessions=evening(120)), clock=still)
    assert isinstance(answer, Answer)
    assert answer.plan.chosen == ("m10", "m2")


def test_worth_comes_early() -> None:
    """What is worth most is done first, whatever its id."""
    options = (Option("a", steps=(Step(60),)), Option("b", steps=(Step(60),)), Option("c", steps=(Step(60),)))
    answer = solve(points_problem(options, {"a": 1, "b": 9, "c": 5}, sessions=evening(60, 60, 60)), clock=still)
    assert isinstance(answer, Answer)
    assert [(one.option, one.session) for one in answer.plan.placed] == [("a", 2), ("b", 0), ("c", 1)]


def test_what_is_asked_for_is_kept() -> None:
    """Forced, refused, a ceiling on money: each holds, and spend comes first where that is asked."""
    options = (Option("a", cost_minor=500), Option("b", cost_minor=300), Option("c"))
    problem = points_problem(options, {"a": 9, "b": 5, "c": 1})
    forced = solve(problem, clock=still, extra=Extra(chosen=("b",), refused=("a",)))
    cheap = solve(problem, clock=still, extra=Extra(spend_at_most=0))
    enough = solve(problem, clock=still, extra=Extra(points_at_most=5, spend_first=True))
    assert isinstance(forced, Answer)
    assert isinstance(cheap, Answer)
    assert isinstance(enough, Answer)
    assert (forced.plan.chosen, cheap.plan.chosen) == (("b", "c"), ("c",))
    assert (enough.plan.chosen, enough.plan.spent_minor) == (("a", "c"), 500)
    assert solve(problem, clock=still, extra=Extra(chosen=("gone",))) == NoPlan()


def test_no_plan_names_what_to_relax() -> None:
    """Budget and holes each stand in the way of a must: the clash with one is named, and only the must helps alone."""
    option = Option("rod", cost_minor=500, spends=(("holes", 4),))
    both = points_problem((option,), {"rod": 5}, budget_minor=100, limits=(Limit("holes", 2),), must=(("rod",),))
    why = (("rod", "over-budget"),)
    assert solve(both, clock=still) == NoPlan(("must:rod",), ("must:rod", "budget"), None, why)
    alone = NoPlan(("must:rod", "budget"), ("must:rod", "budget"), 500, why)
    assert solve(replace(both, limits=()), clock=still) == alone


def test_no_plan_in_time_names_the_hours() -> None:
    """A must that needs a second evening: the last session, or the hours, or the must may go."""
    option = Option("paint", steps=(Step(60), Step(60, wait_sessions=1)))
    problem = points_problem((option,), {"paint": 5}, sessions=evening(90, 90), last_session=0, must=(("paint",),))
    names = ("must:paint", "sessions", "last_session")
    assert solve(problem, clock=still) == NoPlan(names, names, None, (("paint", "too-late"),))


def test_rounds_are_reported() -> None:
    """Each round tells what is in hand and what is proven; the floor is never above the best."""
    heard: list[Round] = []
    options = tuple(Option(f"m{one}", steps=(Step(50),)) for one in range(5))
    gains = {f"m{one}": one + 1 for one in range(5)}
    solve(points_problem(options, gains, sessions=evening(90, 90)), clock=still, report=heard.append)
    assert {"points", "order"} <= {one.phase for one in heard}
    assert all(one.best >= one.floor for one in heard if one.best is not None and one.floor is not None)
