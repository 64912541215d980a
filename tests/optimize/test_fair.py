"""The fair choice between two people, and what either would lose by another: against every subset in every placing."""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

import pytest

from budgetfix.optimize.answering import solve
from budgetfix.optimize.cannot import impossible
from budgetfix.optimize.fair import Fair, Pair, fairest, fairness, share
from budgetfix.optimize.growth import Growth, remaining
from budgetfix.optimize.losses import losses
from budgetfix.optimize.problem import Answer, Asked, Extra, NoPlan, Option, Plan, Problem, Step, Tree
from tests.optimize import brute
from tests.optimize.worlds import TableTree, World, against, random_world, still, ticking

Eyes = Mapping[frozenset[str], Pair]
"""Points left in the eyes of each of two people, by chosen set."""


@dataclass(frozen=True)
class Voiced:
    """A table tree that also tells what two people see."""

    plain: TableTree
    eyes: Eyes

    def ask(self, chosen: frozenset[str], refused: frozenset[str]) -> Asked:
        """As the plain tree."""
        asked = self.plain.ask(chosen, refused)
        seen = self.eyes.get(chosen & frozenset(self.plain.ids), (0, 0))
        return asked if asked.branch else replace(asked, voices=seen)

    def bound(self, chosen: frozenset[str], refused: frozenset[str]) -> tuple[int, ...]:
        """The least of each over all completions."""
        mine = chosen & frozenset(self.plain.ids)
        fitting = [seen for ids, seen in self.eyes.items() if mine <= ids and ids.isdisjoint(refused)]
        floors = (min((one[voice] for one in fitting), default=0) for voice in (0, 1))
        return *self.plain.bound(chosen, refused), *floors


@dataclass(frozen=True)
class Couple:
    """A random job in the eyes of two people."""

    world: World
    problem: Problem
    eyes: tuple[tuple[tuple[str, ...], Eyes], ...]

    def seen(self, chosen: frozenset[str]) -> Pair:
        """Points left in the eyes of each."""
        rows = [eyes.get(chosen & frozenset(ids), (0, 0)) for ids, eyes in self.eyes]
        return sum(row[0] for row in rows), sum(row[1] for row in rows)

    def every(self) -> list[tuple[int, Pair, frozenset[str]]]:
        """(hazards, gains of each, set) of every set that some placing and the money allow."""
        found, there = [], self.seen(frozenset())
        for chosen in brute.subsets(self.problem):
            left = self.world.left(chosen)
            if left is not None and self._affordable(chosen):
                seen = self.seen(chosen)
                found.append((left[0], (there[0] - seen[0], there[1] - seen[1]), chosen))
        return found

    def _affordable(self, chosen: frozenset[str]) -> bool:
        budget = self.problem.budget_minor
        for where in brute.placings(self.problem, chosen):
            money = brute.spent(self.problem, chosen, where)
            if money is not None and (budget is None or money <= budget):
                return True
        return False


def couple(number: int) -> Couple:
    """A random world whose two people weigh each table in their own way."""
    dice = random.Random(f"couple {number}")
    world = random_world(number, people=1 + number % 2, options=5)
    problem = replace(world.problem, must_all=False)
    eyes = tuple(
        (ids, {some: (points * dice.randint(0, 3), points * dice.randint(0, 3)) for some, (_, points) in table.items()})
        for ids, table in world.tables
    )
    foes = against(problem.options)
    made = [
        Voiced(TableTree(ids, table, foes), seen) for (ids, table), (_, seen) in zip(world.tables, eyes, strict=True)
    ]
    trees = tuple(Tree(f"t{place}", one.ask, one.bound) for place, one in enumerate(made))
    problem = replace(problem, trees=trees)
    return Couple(replace(world, problem=problem), problem, eyes)


def best_of(every: list[tuple[int, Pair, frozenset[str]]], hazards_first: bool) -> tuple[Pair, Pair]:
    """(ideals, gains of the fairest), found by looking at everything."""
    safest = min(hazards for hazards, _, _ in every)
    fine = [gains for hazards, gains, _ in every if hazards == safest or not hazards_first]
    ideals = (max(one[0] for one in fine), max(one[1] for one in fine))
    return ideals, max(fine, key=lambda gains: fairness(gains, ideals))


@pytest.mark.parametrize("number", range(700, 790))
def test_the_fair_plan_is_the_one_that_trying_everything_finds(number: int) -> None:
    """The same ideals, the same shares, the same sum of gains."""
    two = couple(number)
    every = two.every()
    found = fairest(two.problem, seconds=60, clock=still)
    if not every:
        assert isinstance(found, NoPlan)
        return
    assert isinstance(found, Fair)
    assert found.proven
    ideals, gains = best_of(every, two.problem.hazards_first)
    assert found.ideals == ideals
    assert fairness(found.gains, ideals) == fairness(gains, ideals)


@pytest.mark.parametrize("number", range(800, 830))
def test_what_either_would_lose_is_what_trying_everything_finds(number: int) -> None:
    """For each option not chosen: the least loss for one while the other keeps all, or that nothing holds it."""
    two = couple(number)
    fair = fairest(two.problem, seconds=60, clock=still)
    if not isinstance(fair, Fair):
        return
    plan, hazards_first = fair.plan, two.problem.hazards_first
    found = losses(two.problem, plan, [one.id for one in two.problem.options], seconds=60, clock=still)
    assert set(found) == {one.id for one in two.problem.options} - set(plan.chosen) - set(impossible(two.problem))
    for id, loss in found.items():
        holding = [(hazards, gains) for hazards, gains, chosen in two.every() if id in chosen]
        assert loss.nothing == (not holding)
        safe = [gains for hazards, gains in holding if hazards <= plan.hazards or not hazards_first]
        for voice, other in ((0, 1), (1, 0)):
            kept = [gains[voice] for gains in safe if gains[other] >= fair.gains[other]]
            assert loss.least[voice] == (fair.gains[voice] - max(kept) if kept else None)


def test_where_the_rules_differ_the_smaller_share_decides() -> None:
    """Of (100, 30), (62, 58), (30, 95) with ideals of 100 the sum takes the first, the fair choice the second."""
    ideals, plans = (100, 100), [(100, 30), (62, 58), (30, 95)]
    assert max(plans, key=sum) == (100, 30)
    assert max(plans, key=lambda gains: fairness(gains, ideals)) == (62, 58)


def test_whoever_can_gain_nothing_keeps_a_full_share_until_something_is_lost() -> None:
    """An ideal of nothing is reached by nothing; every point lost counts against it."""
    assert share(0, 0) == 1
    assert share(-2, 0) == -1
    assert share(-3, -3) == 1


def sharing(count: int, budget: int, second: int) -> Problem:
    """Remedies of 1.00 each: as many that give the first person 1 point as give the second `second` points."""
    options = tuple(Option(f"{who}{number:02}", cost_minor=100) for who in "ab" for number in range(count))
    foes = against(options)
    trees = []
    for one in options:
        pair = (1, 0) if one.id.startswith("a") else (0, second)
        plain = TableTree((one.id,), {frozenset({one.id}): (0, 0), frozenset(): (0, sum(pair))}, foes)
        tree = Voiced(plain, {frozenset({one.id}): (0, 0), frozenset(): pair})
        trees.append(Tree(one.id, tree.ask, tree.bound))
    return Problem(options, tuple(trees), budget_minor=budget)


@pytest.mark.parametrize("second", [1, 2, 7])
def test_each_gets_half_of_the_own_ideal_where_a_pound_helps_one_or_the_other(second: int) -> None:
    """The point of E. Kalai and M. Smorodinsky, Other Solutions to Nash's Bargaining Problem, Econometrica 43, 1975:
    gains in proportion to the ideals (from memory); on a straight frontier, half of each. However the second person
    counts, the answer is the same: shares cannot be gamed by counting everything twice.
    """
    fair = fairest(sharing(12, 1000, second), seconds=60, clock=still)
    assert isinstance(fair, Fair)
    assert fair.ideals == (10, 10 * second)
    assert fair.shares == (Fraction(1, 2), Fraction(1, 2))


def test_a_clock_that_stops_early_leaves_the_better_plan_so_far_unproven() -> None:
    """With both ideals known and no time for more, the fairer of the two is given, and not called proven."""
    problem = sharing(12, 1000, 3)
    stopped = [
        found
        for step in (0.001, 0.003, 0.01, 0.02, 0.05, 0.1, 0.2)
        if isinstance(found := fairest(problem, seconds=10, clock=ticking(step)), Fair)
    ]
    assert any(not found.proven for found in stopped)
    assert all(found.ideals == (10, 30) for found in stopped)


def test_the_final_plan_keeps_what_each_gets_and_wastes_nothing() -> None:
    """Asked for what each gets, the chooser finds a plan that gives exactly that; nothing for nothing is in it."""
    problem = sharing(4, 400, 2)
    problem = replace(problem, options=(*problem.options, Option("idle", steps=(Step(5),))))
    growth = Growth(problem)
    fair = fairest(problem, seconds=60, clock=still, growth=growth)
    assert isinstance(fair, Fair)
    kept = Extra(hazards_at_most=0, voices_at_most=fair.plan.voices)
    whole = solve(problem, seconds=60, clock=still, growth=growth, extra=kept)
    assert isinstance(whole, Answer)
    plan: Plan = whole.plan
    assert plan.voices == fair.plan.voices == remaining(growth, plan.chosen)[2:]
    assert "idle" not in plan.chosen
    assert plan.chosen == ("a00", "a01", "b00", "b01")
