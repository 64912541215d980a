"""Which single wish, dropped, would let a plan exist."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from budgetfix.optimize.cannot import impossible
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.problem import Extra, NoPlan, Problem
from budgetfix.optimize.search import Search
from budgetfix.optimize.solver import Engine

SECONDS = 5.0
"""For each wish, at most."""


def relaxed(problem: Problem, seconds: float, clock: Callable[[], float], engine: Engine) -> NoPlan:
    """Drop each wish alone and see whether any plan keeps the others."""
    found = []
    for name, other in _without_one(problem):
        if _exists(other, min(seconds, SECONDS), clock, engine):
            found.append(name)
    return NoPlan(tuple(found))


def _without_one(problem: Problem) -> Iterator[tuple[str, Problem]]:
    for index, must in enumerate(problem.must):
        yield "must:" + ",".join(must), replace(problem, must=problem.must[:index] + problem.must[index + 1 :])
    if problem.budget_minor is not None:
        yield "budget", replace(problem, budget_minor=None)
    for index, limit in enumerate(problem.limits):
        yield f"limit:{limit.id}", replace(problem, limits=problem.limits[:index] + problem.limits[index + 1 :])
    if problem.sessions is not None:
        yield "sessions", replace(problem, sessions=None, last_session=None)
    if problem.last_session is not None:
        yield "last_session", replace(problem, last_session=None)


def _exists(problem: Problem, seconds: float, clock: Callable[[], float], engine: Engine) -> bool:
    facts = Facts.of(problem, without=impossible(problem))
    search = Search(facts, Growth(problem, asks=0, asks_a_tree=0), Extra(), clock, None, clock() + seconds, engine)
    search.reach("minutes", lambda _: ())
    return search.best is not None
