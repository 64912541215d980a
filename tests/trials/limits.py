"""How much the tool takes on: large sums are exact, and what is past a limit is refused."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from multiprocessing import get_context
from pathlib import Path

from tests.trials.limits_exact import WHAT, Tried, tried
from tests.trials.limits_jobs import AXES
from tests.trials.limits_measured import HEADS, measured
from tests.trials.limits_refused import LIMITS, at_the_edge
from tests.trials.trial import Asked, Result, Row, Trial

PROMISES = {
    "money": "With sums of up to 10^12 minor units the plan is the best of all, to the minor unit",
    "points": "With faults of up to 10^9 points the plan is the best of all, to the point",
    "both": "With both at once the plan is the best of all",
}
REFUSED = "At a limit a job is read; one past it is refused at once, by file, figure and limit, and nothing is written"
SMALL, LONG = 24, 300
MEASURED_FROM = 100
"""Tries from which on large jobs are planned and timed as well."""


def run(asked: Asked) -> Result:
    """Random jobs with large figures against trying everything; what is refused; how long large jobs take."""
    rows, broken = _exact(asked)
    edges = [at_the_edge(asked.folder / f"edge-{number}", limit) for number, limit in enumerate(LIMITS)]
    bad = [one for one in edges if one.words]
    rows.append(Row(REFUSED, len(edges), len(bad), ", ".join(limit.name for limit in LIMITS)))
    broken += [f"limit of {one.name}: {'; '.join(one.words)}" for one in bad]
    if asked.tries < MEASURED_FROM:
        return Result(tuple(rows), tuple(broken))
    times, unplanned = measured(asked.folder, AXES, asked.lanes)
    return Result(tuple(rows), (*broken, *unplanned), (HEADS, *(one.row for one in times)))


def _exact(asked: Asked) -> tuple[list[Row], list[str]]:
    found = list(_all(asked))
    tries = Counter(one.what for one in found)
    bad = Counter(one.what for one in found if one.words)
    edge = Counter(one.what for one in found if one.edge)
    lines = [f"large job {asked.seed}/{one.number}: {one.words}" for one in found if one.words]
    return [Row(PROMISES[what], tries[what], bad[what], _seen(edge[what])) for what in WHAT], lines


def _seen(edge: int) -> str:
    return f"{edge} with a budget that a set meets or misses by one" if edge else ""


def _all(asked: Asked) -> Iterator[Tried]:
    one = partial(_one, asked.folder, asked.seed)
    if asked.lanes < 2:
        yield from map(one, range(asked.tries))
        return
    with ProcessPoolExecutor(asked.lanes, mp_context=get_context("spawn")) as lanes:
        yield from lanes.map(one, range(asked.tries), chunksize=8)


def _one(folder: Path, seed: int, number: int) -> Tried:
    return tried(folder / f"exact-{number}", seed, number)


TRIAL = Trial("limits", "How much it takes on", SMALL, LONG, run)
