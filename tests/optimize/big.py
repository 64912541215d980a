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


def big(problem: Problem) -> tuple[int, int, int, int] | None:
    """(hazard points, points, spend, person-minutes) of the best plan, each frozen before the next; None: no plan."""
    facts = Facts.of(problem, without=impossible(problem))
    growth = Growth(problem, asks=10**6, asks_a_tree=10**6)
    growth.grow_up_front(frozenset(facts.by_id))
    found = families(facts, growth)
    program = choosing(facts, Extra(), problem.budget_minor)
    add_timetable(facts, program, (), grouped=False)
    add_worth(program, found)
    reached = []
    for terms in (hazard_terms(found), point_terms(found), spend_terms(facts), minutes_terms(facts)):
        solved = run(program, terms, 60.0)
        if solved.status != "optimal":
            return None
        reached.append(round(solved.objective))
        program.add([Row(f"kept_{len(reached)}", terms, "<=", reached[-1] + 0.5)])
    return reached[0], reached[1], reached[2], reached[3]
