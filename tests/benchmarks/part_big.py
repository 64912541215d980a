"""Part 3: choose and place, against the one big program that holds every step in every session."""

from __future__ import annotations

import time
from collections.abc import Iterator
from dataclasses import dataclass

from budgetfix.optimize import solve
from budgetfix.optimize.problem import Answer, Problem
from tests.benchmarks.families import FAMILIES, made, seeds
from tests.benchmarks.figures import Line, Part, geometric, spread, timed
from tests.benchmarks.house_jobs import house_job, names
from tests.optimize.big import stages

MEAN, WORST, SLACK_SECONDS = 0.3, 3.0, 0.5
BIG_SECONDS = 40.0
"""Given to the one big program for each wish; what it does not finish counts as this long."""


MANY = 4
"""Rooms of a house beyond which one house is enough: the big program is long about it."""


class Disagree(Exception):
    """Two exact methods give different values: one of them is wrong."""


@dataclass(frozen=True)
class Pair:
    """One problem by both methods, in seconds. `finished`: by the one big program."""

    ours: float
    big: float
    finished: bool

    @property
    def ratio(self) -> float:
        return self.ours / self.big

    @property
    def slow(self) -> bool:
        """Slower than three times the other, or than half a second more, whichever is larger."""
        return self.ours > max(WORST * self.big, self.big + SLACK_SECONDS)


def lines() -> Iterator[Line]:
    """Family by family, then all together."""
    everything: list[Pair] = []
    for shape in FAMILIES:
        pairs = [_pair(made(shape, number)) for number in seeds(shape)]
        everything += pairs
        yield _line(shape.name, pairs)
    for rooms in (1, 4, 8):
        pairs = [_pair(house_job(name).problem) for name in names(rooms)[: 1 if rooms > MANY else None]]
        everything += pairs
        yield _line(f"houses of {rooms} room{'s' * (rooms > 1)}, {len(pairs)} of them", pairs)
    mean = geometric(pair.ratio for pair in everything)
    yield Line(
        f"all {len(everything)} of these, values equal in each", f"geometric mean ≤ {MEAN}", f"{mean:.2f}",
        mean <= MEAN,
    )  # fmt: skip


def _pair(problem: Problem) -> Pair:
    """Hazards, points and spend by both. Errors: Disagree."""
    ours, answer = timed(lambda: solve(problem, seconds=60.0, clock=time.perf_counter, depth="figures"))
    assert isinstance(answer, Answer)
    assert answer.proven
    big, reached = timed(lambda: stages(problem, 3, BIG_SECONDS))
    plan = answer.plan
    mine = (plan.hazards, plan.points, plan.spent_minor)
    if reached != mine[: len(reached)]:
        raise Disagree(f"{mine} by choose and place, {reached} by the one big program")
    return Pair(ours, big, len(reached) == len(mine))


def _line(name: str, pairs: list[Pair]) -> Line:
    unfinished = sum(not pair.finished for pair in pairs)
    slow = [pair for pair in pairs if pair.slow]
    longest = max(pairs, key=lambda pair: pair.ours - pair.big)
    measured = f"{spread([pair.ratio for pair in pairs])}; at worst {longest.ours:.2f} s against {longest.big:.2f} s"
    if unfinished:
        measured += f"; the big program did not finish {unfinished}"
    return Line(name, f"≤ {WORST:g}, or {SLACK_SECONDS} s more", measured, not slow)


PART = Part(
    "Choose and place ÷ the one big program",
    "Hazards, points and spend proven, over the time of one program that holds every step in every session "
    f"(at most {BIG_SECONDS:g} s for each wish). Whenever both finish, all three figures are the same.",
    lines,
)
