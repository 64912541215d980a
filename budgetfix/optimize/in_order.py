"""A plan's steps put into their one order: most worth early, then each step as early as can be."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from budgetfix.optimize import order
from budgetfix.optimize.buying import billed
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.placing import Placing
from budgetfix.optimize.problem import Plan, Problem
from budgetfix.optimize.recount import SolverDisagrees
from budgetfix.optimize.solver import Engine
from budgetfix.optimize.wishes import held


def in_order(
    problem: Problem,
    plan: Plan,
    *,
    seconds: float,
    clock: Callable[[], float],
    growth: Growth | None = None,
    engine: Engine = "highs",
) -> Plan:
    """The same set for the same money within the same sessions; as far as the clock allows.

    The budget of the problem is no matter: a plan for another sum of money may be handed in.
    """
    until = clock() + seconds
    facts = Facts.of(replace(problem, budget_minor=None))
    chosen = frozenset(plan.chosen)
    cost = billed(facts, chosen, plan.placed, engine)
    if cost is None:
        raise SolverDisagrees(f"{sorted(chosen)} cannot be bought in time")
    placing = Placing(plan.placed, cost)
    mine = held(facts, chosen, placing, (plan.hazards, plan.points, *plan.voices))
    placed, _ = order.ordered(facts, growth or Growth(problem), mine, lambda: until - clock(), engine)
    return replace(mine, placing=placed).plan()
