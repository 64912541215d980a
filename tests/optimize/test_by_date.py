"""Money that comes by date: all wishes against every subset in every placing, bought in every phase."""

from __future__ import annotations

from itertools import accumulate

import pytest

from budgetfix.optimize import solve
from budgetfix.optimize.problem import Answer, NoPlan
from tests.optimize import by_date
from tests.optimize.test_brute import told
from tests.optimize.worlds import World, helped, marked, random_world, still


def check(world: World) -> None:
    """The optimiser and the slow way agree in every wish, in what is bought when, and no money is spent too early."""
    slow = by_date.best(world)
    answer = solve(world.problem, clock=still)
    if slow is None:
        assert isinstance(answer, NoPlan)
        return
    assert isinstance(answer, Answer)
    assert answer.proven
    assert told(answer) == slow[0]
    assert answer.plan.buys == slow[1]
    assert frozenset(answer.plan.bought) == slow[2]
    where = {(one.option, one.step): (one.session or 0, one.people) for one in answer.plan.placed}
    way = (dict(answer.plan.buys), frozenset(answer.plan.bought))
    spent = by_date.spends(world.problem, frozenset(answer.plan.chosen), where, way)
    for total, phase in zip(accumulate(spent), world.problem.phases, strict=True):
        assert phase.most_minor is None or total <= phase.most_minor
    assert sum(spent) == answer.plan.spent_minor


@pytest.mark.parametrize("number", range(60))
def test_one_person(number: int) -> None:
    """One person: groups, needs, musts, waits, tools bought or hired, goods that take their days."""
    check(by_date.by_date(random_world(number), number))


@pytest.mark.parametrize("number", range(240, 340))
def test_all_is_worth_its_while(number: int) -> None:
    """What is left of a pack, delivery and tax phase by phase, a drill for several: what is bought first?"""
    check(by_date.by_date(by_date.eager(random_world(number, options=3 if number % 4 == 0 else 4), number), number))


@pytest.mark.parametrize("number", range(120, 180))
def test_two_people(number: int) -> None:
    """Two people with their own hours, joint steps, a second pair of hands."""
    check(by_date.by_date(helped(random_world(number, people=2, options=4), number), number))


@pytest.mark.parametrize("number", range(180, 240))
def test_long_steps_and_marks(number: int) -> None:
    """Steps of half a session; of plans that do as much the one that leaves least behind."""
    check(by_date.by_date(marked(random_world(number, options=4, long=number % 2 == 0), number), number))
