"""All wishes against every subset in every placing."""

from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.optimize import solve
from budgetfix.optimize.problem import Answer, NoPlan
from tests.optimize import brute
from tests.optimize.worlds import World, helped, marked, random_world, still, whole_days


def told(answer: Answer) -> brute.Best:
    """An answer in the words of the slow way."""
    plan = answer.plan
    return brute.Best(
        plan.chosen,
        plan.hazards,
        plan.points,
        plan.spent_minor,
        plan.person_minutes,
        max((one.session for one in plan.placed if one.session is not None), default=-1),
        tuple((one.option, one.step, one.session or 0, one.people) for one in plan.placed),
    )


def check(world: World) -> None:
    """The optimiser and the slow way agree in every wish."""
    slow = brute.best(world)
    answer = solve(world.problem, clock=still)
    if slow is None:
        assert isinstance(answer, NoPlan)
    else:
        assert isinstance(answer, Answer)
        assert answer.proven
        assert told(answer) == slow


@pytest.mark.parametrize("number", range(40))
def test_one_person(number: int) -> None:
    """One person, everything in it: the same set, money, minutes, sessions as the slow way."""
    check(random_world(number))


@pytest.mark.parametrize("number", range(30))
def test_hire_that_is_paid_for(number: int) -> None:
    """One or two sessions of each tool are paid for already: they are used up before anything more is paid."""
    world = random_world(number)
    tools = tuple(replace(one, prepaid=1 + (number + at) % 2) for at, one in enumerate(world.problem.tools))
    check(replace(world, problem=replace(world.problem, tools=tools)))


@pytest.mark.parametrize("number", range(30))
def test_hire_for_a_session_of_its_own(number: int) -> None:
    """Each tool is hired for one session whatever is done in it: only that session is free, of all further ones."""
    world = random_world(number)
    starts = [at for at, one in enumerate(world.problem.sessions or ()) if not one.continues]
    if len(starts) != len(world.problem.sessions or (1,)):
        starts = starts[:1]
    tools = tuple(
        replace(
            one,
            prepaid=1 + (number + at) % 2,
            held=(starts[(number + at) % len(starts)],) if starts else (),
            hire_minor=None if number % 5 == 4 else one.hire_minor,
        )
        for at, one in enumerate(world.problem.tools)
    )
    check(replace(world, problem=replace(world.problem, tools=tools)))


@pytest.mark.parametrize("number", range(30))
def test_two_people(number: int) -> None:
    """Two people with their own hours, joint steps and things one does not do."""
    check(random_world(number, people=2, options=4))


@pytest.mark.parametrize("number", range(25))
def test_long_steps(number: int) -> None:
    """Steps of about half a session, where totals promise what no timetable keeps."""
    check(random_world(number, options=6, long=True))


@pytest.mark.parametrize("number", range(30))
def test_one_does_it_and_another_helps(number: int) -> None:
    """Steps with a second pair of hands at their start: both people's minutes, and who may go on afterwards."""
    check(helped(random_world(number, people=2, options=4), number))


@pytest.mark.parametrize("number", range(6))
def test_three_people_and_help(number: int) -> None:
    """Three people: any two of them may be a pair of one who does it and one who helps."""
    check(helped(random_world(number, people=3, options=3, sessions=2), number))


@pytest.mark.parametrize("number", range(200, 240))
def test_least_left_behind_before_spend(number: int) -> None:
    """Of plans that take away as much, the one that leaves least behind, before money decides; one and two people."""
    check(marked(random_world(number, people=1 + number % 2, options=5 - number % 2), number))


def test_marks_decide_where_points_do_not() -> None:
    """Among those worlds there are some in which the plan is another one, dearer, than without the marks."""
    dearer = 0
    for number in range(200, 240):
        world = marked(random_world(number, people=1 + number % 2, options=5 - number % 2), number)
        plain = replace(world.problem, options=tuple(replace(one, marks=0) for one in world.problem.options))
        with_marks, without = solve(world.problem, clock=still), solve(plain, clock=still)
        if isinstance(with_marks, Answer) and isinstance(without, Answer) and not world.problem.must_all:
            one, other = with_marks.plan, without.plan
            assert (one.hazards + one.points) == (other.hazards + other.points)
            dearer += one.spent_minor > other.spent_minor
    assert dearer >= 2


@pytest.mark.parametrize("number", range(40))
def test_nothing_is_left_half_done(number: int) -> None:
    """Two sessions a day; what is begun on a day is finished on it, where the option asks for that."""
    check(whole_days(random_world(number, people=1 + number % 2, options=4, sessions=4), number))


def test_whole_days_decide() -> None:
    """Among those worlds there are some whose plan would be another one, were everything allowed to wait overnight."""
    other = 0
    for number in range(40):
        world = whole_days(random_world(number, people=1 + number % 2, options=4, sessions=4), number)
        loose = replace(world.problem, options=tuple(replace(one, one_day=False) for one in world.problem.options))
        bound, free = solve(world.problem, clock=still), solve(loose, clock=still)
        other += isinstance(bound, Answer) and isinstance(free, Answer) and bound.plan.placed != free.plan.placed
    assert other >= 3
