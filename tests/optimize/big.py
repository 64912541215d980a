"""The one big program: every step in every session in one model, wish after wish. Slow, and obviously right."""

from __future__ import annotations

from budgetfix.optimize.cannot import impossible
from budgetfix.optimize.choice_rows import minutes_terms
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.model import add_timetable, add_worth, choosing
from budgetfix.optimize.money_rows import spend_terms
from budgetfix.optimize.problem import Extra, Problem
from budgetfix.optimize.solver import Row, run
from budgetfix.optimize.worth_rows import families, hazard_terms, point_terms

WISHES = 4
"""Hazard points, points, spend, person-minutes."""


def big(problem: Problem) -> tuple[int, int, int, int] | None:
    """(hazard points, points, spend, person-minutes) of the best plan, each frozen before the next; None: no plan."""
    reached = stages(problem)
    if len(reached) < WISHES:
        return None
    return reached[0], reached[1], reached[2], reached[3]


def stages(problem: Problem, wishes: int = WISHES, seconds: float = 60.0) -> tuple[int, ...]:
    """The first so many wishes of the best plan, as far as each is proven in `seconds`; () where there is no plan."""
    facts = Facts.of(problem, without=impossible(problem))
    growth = Growth(problem, asks=10**6, asks_a_tree=10**6)
    growth.grow_up_front(frozenset(facts.by_id))
    found = families(facts, growth)
    program = choosing(facts, Extra(), problem.budget_minor)
    add_timetable(facts, program, (), grouped=False)
    add_worth(program, found)
    reached: list[int] = []
    asked = (hazard_terms(found), point_terms(found), spend_terms(facts), minutes_terms(facts))[:wishes]
    for terms in asked:
        if not terms and any(asked):
            reached.append(0)
            continue
        solved = run(program, terms, seconds)
        if solved.status != "optimal":
            break
        reached.append(round(solved.objective))
        program.add([Row(f"kept_{len(reached)}", terms, "<=", reached[-1] + 0.5)])
    return tuple(reached)
