"""Part 6: why each option that was left out is not in the plan, and the screen by linear relaxations before that."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from unittest import mock

from budgetfix.optimize import Growth, solve
from budgetfix.optimize.asking import Asking
from budgetfix.optimize.problem import Answer, Extra, NoPlan, Plan, Problem
from budgetfix.optimize.why_not import WhyNot, why_not
from tests.benchmarks.figures import Line, Part, steady, timed
from tests.benchmarks.house_jobs import house_job, names, short

MOST, SCREEN = 45.0, 1.0
"""Plan solves that all answers for a room may take, and those that the screen of a larger house may take."""
SECONDS = 120.0
Ask = Callable[[Asking, Extra], Plan | NoPlan | None]


def lines() -> Iterator[Line]:
    """Every answer for a house of one room; the screen alone for a house of four."""
    yield _all(names(1)[1])
    yield _screen(names(4)[0])


def _all(name: str) -> Line:
    problem, growth, one, plan = _planned(name)
    asks = 0
    plain: Ask = Asking.ask

    def ask(asking: Asking, extra: Extra) -> Plan | NoPlan | None:
        nonlocal asks
        asks += 1
        return plain(asking, extra)

    with mock.patch.object(Asking, "ask", ask):
        seconds, found = timed(lambda: _answers(problem, growth, plan))
    exact = sum(1 for answer in found.values() if answer.held is not None or answer.nothing)
    answers = f"{exact} of {len(found)} answers by {asks} solves"
    measured = f"{seconds / one:.0f}: {seconds:.2f} s for {answers}, against {one:.2f} s"
    return Line(f"all answers, {short(name)}", f"≤ {MOST:g}", measured, seconds / one <= MOST and exact == len(found))


def _screen(name: str) -> Line:
    problem, growth, one, plan = _planned(name)
    with mock.patch.object(Asking, "ask", return_value=None):
        seconds, found = timed(lambda: _answers(problem, growth, plan))
    silent = sum(1 for answer in found.values() if not answer.worse)
    measured = (
        f"{seconds / one:.2f}: {seconds:.2f} s for {len(found)} options against {one:.2f} s; "
        f"at least one point worse for {len(found) - silent} of them"
    )
    return Line(f"the screen alone, {short(name)}", f"≤ {SCREEN:g}", measured, seconds / one <= SCREEN)


def _planned(name: str) -> tuple[Problem, Growth, float, Plan]:
    """A house, its trees as far as they were grown, seconds of one plan solve (the trees known), and that plan."""
    problem = house_job(name).problem
    growth = Growth(problem)

    def once() -> Answer:
        answer = solve(problem, seconds=60.0, clock=time.perf_counter, growth=growth, depth="figures")
        assert isinstance(answer, Answer)
        return answer

    once()
    seconds, answer = steady(once)
    return problem, growth, seconds, answer.plan


def _answers(problem: Problem, growth: Growth, plan: Plan) -> dict[str, WhyNot]:
    ids = [one.id for one in problem.options if one.id not in plan.chosen]
    return why_not(problem, plan, ids, seconds=SECONDS, clock=time.perf_counter, growth=growth)


PART = Part(
    "Why not the others ÷ one plan solve",
    "The best plan with each left out option forced in, and the money with which holding it costs no points, over one "
    "solve for hazards, points and spend.",
    lines,
)
