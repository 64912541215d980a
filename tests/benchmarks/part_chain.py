"""Part 2: the whole chain of wishes, down to the one set that is the answer, against its first solve."""

from __future__ import annotations

import time
from collections.abc import Iterator

from budgetfix.optimize import solve
from budgetfix.optimize.problem import Answer, Depth, Problem
from budgetfix.optimize.solver import run
from tests.benchmarks.bare import catching
from tests.benchmarks.families import FAMILIES, made
from tests.benchmarks.figures import Line, Part, steady, timed
from tests.benchmarks.house_jobs import first_program, house_job, names, short

MOST = 8.0


def lines() -> Iterator[Line]:
    """Houses and families one by one; and what the order of the steps takes on top."""
    for name in names(1, 4, 8):
        yield _line(short(name), house_job(name).problem)
    for shape in FAMILIES:
        yield _line(shape.name, made(shape, 0))


def _line(name: str, problem: Problem) -> Line:
    program, objective = first_program(problem)
    first, _ = steady(lambda: run(program, objective, 60.0))
    with catching(models=False) as caught:
        whole, answer = timed(lambda: _solved(problem, "set"))
    ordered, _ = timed(lambda: _solved(problem, "all"))
    measured = (
        f"{whole / first:.1f}: {whole:.2f} s and {len(caught.seconds)} runs of HiGHS against {first:.2f} s; "
        f"{ordered / first:.1f} ({ordered:.2f} s) with the steps in their one order"
    )
    if answer.rounds.placings > 1:
        measured += f"; the first set could not be placed, {answer.rounds.placings} were tried"
    return Line(name, f"≤ {MOST:g}", measured, whole / first <= MOST)


def _solved(problem: Problem, depth: Depth) -> Answer:
    answer = solve(problem, seconds=60.0, clock=time.perf_counter, depth=depth)
    assert isinstance(answer, Answer)
    assert answer.proven
    return answer


PART = Part(
    "The whole chain ÷ its first solve",
    "Points, spend, person-minutes, last session and ids, so that one set alone is the answer, over the first solve "
    "for points. Where the first set cannot be placed, that first solve is only the first of several.",
    lines,
)
