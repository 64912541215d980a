"""How much the tool takes on: large sums are exact, and what is past a limit is refused."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from functools import partial
from itertools import chain
from multiprocessing import get_context
from pathlib import Path

from tests.trials.limits_exact import WHAT, Tried, tried
from tests.trials.trial import Asked, Result, Row, Trial

PROMISES = {
    "money": "Sums of up to 10^12 minor units: the plan is the best of all, to the minor unit",
    "points": "Faults of up to 10^9 points: the plan is the best of all, to the point",
    "both": "Both at once: the plan is the best of all",
}
SMALL, LONG = 30, 600


def run(asked: Asked) -> Result:
    """Random jobs with large figures against trying everything; then what is refused, and how long large jobs take."""
    rows, broken = _exact(asked)
    return Result(tuple(rows), tuple(broken))


def _exact(asked: Asked) -> tuple[list[Row], list[str]]:
    found = list(_all(asked))
    tries = Counter(one.what for one in found)
    bad = Counter(one.what for one in found if one.words)
    edge = Counter(one.what for one in found if one.edge)
    lines = [f"large job {asked.seed}/{one.number}: {one.words}" for one in found if one.words]
    return [Row(PROMISES[what], tries[what], bad[what], _seen(edge[what])) for what in WHAT], lines


def _seen(edge: int) -> str:
    return f"{edge} with a budget met or missed by one" if edge else ""


def _all(asked: Asked) -> Iterator[Tried]:
    one = partial(_one, asked.folder, asked.seed)
    if asked.lanes < 2:
        yield from map(one, range(asked.tries))
        return
    with ProcessPoolExecutor(asked.lanes, mp_context=get_context("spawn")) as lanes:
        yield from chain(lanes.map(one, range(asked.tries), chunksize=8))


def _one(folder: Path, seed: int, number: int) -> Tried:
    return tried(folder / f"exact-{number}", seed, number)


TRIAL = Trial("limits", "How much it takes on", SMALL, LONG, run)
