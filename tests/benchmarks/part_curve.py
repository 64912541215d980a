"""Part 7: the exact curve of money against points, in solves for each efficient point."""

from __future__ import annotations

import time
from collections.abc import Iterator

from budgetfix.optimize import Growth, solve
from budgetfix.optimize.curve import Curve, curve
from budgetfix.optimize.problem import Answer
from tests.benchmarks.bare import catching
from tests.benchmarks.figures import Line, Part, timed
from tests.benchmarks.house_jobs import house_job, names, short

MOST = 2.0
SECONDS = 60.0


def lines() -> Iterator[Line]:
    """A house of one room; others take up to a minute each."""
    yield _line(names(1)[1])


def _line(name: str) -> Line:
    problem = house_job(name).problem
    growth = Growth(problem)
    answer = solve(problem, seconds=60.0, clock=time.perf_counter, growth=growth, depth="figures")
    assert isinstance(answer, Answer)

    def whole() -> Curve:
        return curve(problem, answer.plan, seconds=SECONDS, clock=time.perf_counter, growth=growth)

    with catching(models=False) as caught:
        seconds, found = timed(whole)
    each = len(caught.seconds) / len(found.plans)
    told = "complete" if found.complete else f"**{len(found.gaps)} gaps left**"
    measured = (
        f"{each:.1f}: {len(caught.seconds)} runs of HiGHS in {seconds:.1f} s for {len(found.plans)} efficient points, "
        f"{told}; {sum(caught.seconds) / seconds:.0%} of the time in HiGHS"
    )
    return Line(short(name), f"≤ {MOST:g}", measured, found.complete and each <= MOST)


PART = Part(
    "The exact curve: solves for each efficient point",
    "The best plan for every sum of money: most points for at most so much, then the least spend for those points, "
    "then its unique set (minutes, last session, ids). Solves that place a set count too, linear relaxations do not.",
    lines,
)
