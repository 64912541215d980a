"""Two jobs planned at once, each on its own, and set side by side."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from budgetfix.base.problems import FilesRefused
from budgetfix.intake.job import Job
from budgetfix.optimize.problem import NoPlan
from budgetfix.outcome.beside import Beside, OnePlan, beside
from budgetfix.pipeline.alone import Alone
from budgetfix.pipeline.lanes import ByItself, Lanes, cores
from budgetfix.pipeline.planning import Wish


@dataclass(frozen=True)
class Named:
    """A job, and what it is called beside the other one."""

    name: str
    job: Job


@dataclass(frozen=True)
class Without:
    """Which of the two (0, 1) has no plan, and why."""

    at: int
    why: NoPlan


def compared(jobs: Sequence[Named], wish: Wish) -> Beside | Without:
    """The plans of two jobs side by side, or the first that has none.

    Errors: FilesRefused for a must that names nothing there; LaneEnded where a process was ended from outside.
    """
    with Lanes([one.name for one in jobs], min(cores(), len(jobs)), wish.report) as lanes:
        tasks = [(at, ByItself(one.job, Wish(wish.seconds, wish.clock))) for at, one in enumerate(jobs)]
        found = lanes.each(tasks, "Planning both")
    plans = []
    for at, (one, made) in enumerate(zip(jobs, found, strict=True)):
        if isinstance(made, FilesRefused):
            raise made
        if isinstance(made, NoPlan):
            return Without(at, made)
        assert isinstance(made, Alone)
        plans.append(OnePlan(one.name, made.book, made.chosen, Path(one.job.catalog_file).name))
    return beside(plans[0], plans[1])
