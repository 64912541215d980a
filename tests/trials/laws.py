"""Laws of the whole walk: one thing in a job is made otherwise, and the plan must answer as everybody would expect."""

from __future__ import annotations

import shutil
from collections import Counter
from collections.abc import Iterable
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from random import Random

from budgetfix.outcome.check import ClaimFails
from budgetfix.pipeline.demo_data import SCENARIOS
from tests.trials.laws_again import PROMISE, SLUG, room_again
from tests.trials.laws_listed import LISTED, listed_job
from tests.trials.laws_measured import MEASURED, drawn
from tests.trials.laws_rooms import DEMO, room_job
from tests.trials.laws_walk import BROKEN, HELD, NO_PLAN, NONE, Case, Files, Law, Tried, told, told_of, tried
from tests.trials.trial import Asked, Result, Row, Trial

ROOMS = 4
"""Every fourth job is a measured room."""
WITH_DEMOS = 50
"""From so many jobs on, the three demos come first, whole."""
LAWS_A_ROOM = 4
"""Laws that are tried on one room, besides the fresh inspection; on a job of listed faults all of them are."""

CHECK = "check"
CHECKED = "The plan as it is chosen and the plan as it is checked are one, to the point, the cent and the minute"


@dataclass(frozen=True)
class One:
    """One job's number, and where its files go."""

    seed: int
    number: int
    folder: Path
    demo: str = ""

    @property
    def name(self) -> str:
        """What repeats it."""
        return self.demo or f"{self.seed}/{self.number}"


def run(asked: Asked) -> Result:
    """Every law on `tries` jobs."""
    jobs = [One(asked.seed, number, asked.folder / str(number)) for number in range(asked.tries)]
    if asked.tries >= WITH_DEMOS:
        jobs = [*(One(asked.seed, at, asked.folder / name, name) for at, name in enumerate(SCENARIOS)), *jobs]
    if asked.lanes < 2:
        found = [tried_on(job) for job in jobs]
    else:
        with ProcessPoolExecutor(asked.lanes) as lanes:
            found = list(lanes.map(tried_on, jobs))
    every = [(job, one) for job, several in zip(jobs, found, strict=True) for one in several]
    broken = tuple(f"{one.law} at {job.name}: {one.words}" for job, one in every if one.came == BROKEN)
    return Result(_rows([one for _, one in every]), broken)


def tried_on(job: One) -> tuple[Tried, ...]:
    """The laws on one job, drawn by its seed and number alone."""
    if job.demo:
        shutil.copytree(DEMO / job.demo, job.folder)
        before = told_of(job.folder)
        return (Tried(CHECK, HELD), room_again(before, job.folder))
    dice = Random(job.name)
    if job.number % ROOMS == ROOMS - 1:
        return laws_on(job, room_job(dice), drawn(dice, LAWS_A_ROOM))
    return laws_on(job, listed_job(dice), LISTED)


def laws_on(job: One, files: Files, laws: Iterable[Law]) -> tuple[Tried, ...]:
    """Some laws on one job; where it has rooms, they are inspected afresh after the plan."""
    try:
        before = told(files, job.folder)
    except ClaimFails as fails:
        return (Tried(CHECK, BROKEN, str(fails)),)
    found = [Tried(CHECK, HELD if before is not None else NO_PLAN)]
    if files.survey is not None:
        found.append(room_again(before, job.folder))
    dice = {law.slug: Random(f"{job.name}/{law.slug}") for law in laws}
    return (*found, *(tried(law, Case(files, before, dice[law.slug]), job.folder) for law in laws))


def _rows(found: list[Tried]) -> tuple[Row, ...]:
    promises = {law.slug: law.promise for law in (*MEASURED, *LISTED)} | {SLUG: PROMISE, CHECK: CHECKED}
    order = dict.fromkeys([CHECK, *(law.slug for law in (*LISTED, *MEASURED)), SLUG])
    return tuple(_row(promises[slug], [one for one in found if one.law == slug]) for slug in order)


def _row(promise: str, found: list[Tried]) -> Row:
    came = Counter(one.came for one in found)
    tried_out = sum(count for name, count in came.items() if name not in (NONE, NO_PLAN))
    apart = sorted(name for name in came if name not in (HELD, BROKEN, NONE, NO_PLAN))
    seen = [f"{came[name]:,} {name}" for name in apart]
    return Row(promise, tried_out, came[BROKEN], "; ".join(seen))


TRIAL = Trial("laws", "Laws of the whole walk", 8, 200, run)
