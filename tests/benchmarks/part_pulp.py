"""Part 1: building, solving and reading through PuLP, against HiGHS alone on the very same model."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from budgetfix.optimize.problem import Problem
from budgetfix.optimize.solver import run
from tests.benchmarks.bare import handed_by
from tests.benchmarks.families import FAMILIES, made
from tests.benchmarks.figures import Line, Part, geometric, repeats_for, spread, steady
from tests.benchmarks.house_jobs import first_program, house_job, names, short

MOST = 1.3
LARGE = 0.2
"""Seconds of bare HiGHS from which on a model is no toy."""
FAULTS = 15
"""Of the families, the small ones."""


@dataclass(frozen=True)
class Pair:
    """One program: seconds through PuLP, and of bare HiGHS; its rows and columns."""

    name: str
    through: float
    bare: float
    rows: int
    columns: int

    @property
    def ratio(self) -> float:
        return self.through / self.bare


def lines() -> Iterator[Line]:
    """The first program of each house, and of one problem of each family."""
    pairs = []
    for name in names(1, 4, 8):
        pairs.append(_pair(short(name), house_job(name).problem))
        yield _line(pairs[-1])
    for shape in FAMILIES:
        if shape.faults <= FAULTS:
            pairs.append(_pair(shape.name, made(shape, 0)))
            yield _line(pairs[-1])
    for least in (0.0, LARGE):
        ratios = [pair.ratio for pair in pairs if pair.bare >= least]
        what = f"those that keep HiGHS busy for {least} s and more" if least else "all of these"
        yield Line(what, f"geometric mean ≤ {MOST}", spread(ratios), geometric(ratios) <= MOST)


def _pair(name: str, problem: Problem) -> Pair:
    program, objective = first_program(problem)
    handed = handed_by(program, objective)
    through, _ = steady(lambda: run(program, objective, 60.0))
    bare = min(handed.solved() for _ in range(1 + repeats_for(through)))
    return Pair(name, through, bare, *handed.size)


def _line(pair: Pair) -> Line:
    return Line(
        f"{pair.name} ({pair.rows:,} rows, {pair.columns:,} columns)",
        f"≤ {MOST}",
        f"{pair.ratio:.2f}; {pair.through:.3f} s against {pair.bare:.3f} s",
        pair.ratio <= MOST,
    )


PART = Part(
    "Through PuLP ÷ bare HiGHS",
    "Building, solving and reading the first program of a job through PuLP, over the time of HiGHS alone on the very "
    "same model (the one that PuLP handed over, with the same options), from being handed it to its end.",
    lines,
)
