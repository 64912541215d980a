"""`plan` and `inspect` on a folder of jobs."""

from __future__ import annotations

import time
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from budgetfix.base.problems import FilesRefused
from budgetfix.cli import say
from budgetfix.cli.at_work import writing
from budgetfix.cli.no_plan import no_plan
from budgetfix.cli.progress import progress_shown

if TYPE_CHECKING:
    from collections.abc import Callable

    from budgetfix.cli.commands import PlanWords
    from budgetfix.intake.houses import Houses
    from budgetfix.intake.job import Job
    from budgetfix.pipeline.portfolio import NoPlans, NotTogether, Together

    Refuse = Callable[[FilesRefused], NoReturn]


def passed_over(folder: Path, found: Houses) -> tuple[str, ...]:
    """One line on the sub-folders that are no jobs."""
    if not found.others:
        return ()
    names = ", ".join(str(folder / name) for name in found.others)
    verb = "is no job and was" if len(found.others) == 1 else "are no jobs and were"
    return (f"{names} {verb} passed over: no survey.xlsx, survey.yaml or faults.csv.",)


def read(folder: Path, found: Houses, refuse: Refuse) -> tuple[Job, ...]:
    """Every job, or the end of the run with every problem of every file."""
    from budgetfix.pipeline.portfolio_reading import read_jobs

    try:
        return read_jobs(folder, found.jobs, datetime.now().astimezone().date())
    except FilesRefused as refused:
        refuse(refused)


def plan_all(folder: Path, found: Houses, words: PlanWords, refuse: Refuse) -> None:
    """`plan` on a folder of jobs."""
    from budgetfix.exports.portfolio_json import portfolio_object
    from budgetfix.exports.portfolio_screen import portfolio_text
    from budgetfix.pipeline.portfolio_writing import (
        put_together,
        refuse_any_open,
        refuse_any_touched,
        write_portfolio,
    )
    from budgetfix.pipeline.writing import Touched

    _no_options(folder, found, words)
    jobs = read(folder, found, refuse)
    try:
        with writing(folder):
            refuse_any_open(folder, found.jobs)
            refuse_any_touched(folder, found.jobs)
        together = _planned(jobs, words, refuse)
        portfolio = put_together(folder, jobs, together, words.seconds)
        with writing(folder):
            write_portfolio(folder, portfolio, together)
    except Touched as touched:
        say.stop(say.MISUSE, [TOUCHED.format(touched, folder / found.jobs[0])])
    if words.json:
        say.obj(portfolio_object(portfolio))
    elif not words.quiet:
        notes = passed_over(folder, found)
        say.out(portfolio_text(portfolio, notes, unicode=say.can_unicode()))
    if not portfolio.proven:
        raise SystemExit(say.STOPPED)


def _planned(jobs: tuple[Job, ...], words: PlanWords, refuse: Refuse) -> Together:
    """All plans, or the end of the run: 1 where a job has none, 3 where a must means nothing."""
    from budgetfix.outcome.portfolio import house_names
    from budgetfix.pipeline.lanes import LaneEnded, cores
    from budgetfix.pipeline.planning import Wish
    from budgetfix.pipeline.portfolio import NoPlans, NotTogether, planned_together

    names = house_names([job.name for job in jobs])
    try:
        with progress_shown(words.quiet or words.json) as line:
            found = planned_together(jobs, names, Wish(words.seconds, time.monotonic, line), cores())
    except FilesRefused as refused:
        refuse(refused)
    except LaneEnded as ended:
        say.stop(say.NO_PLAN, [f"The process that planned {ended} was ended from outside. {NOTHING}"])
    if isinstance(found, NoPlans):
        say.stop(say.NO_PLAN, _alone(found, jobs))
    if isinstance(found, NotTogether):
        say.stop(say.NO_PLAN, _not_together(found, jobs, names))
    return found


def _alone(found: NoPlans, jobs: tuple[Job, ...]) -> list[str]:
    """Why a job has no plan, job by job."""
    lines = []
    for at, none in found.alone:
        lines += [f"{jobs[at].name}: no plan.", *(f"  {line}" for line in no_plan(none, jobs[at]))]
    return [*lines, NOTHING]


def _not_together(found: NotTogether, jobs: tuple[Job, ...], names: list[str]) -> list[str]:
    """Which pieces several jobs cannot do without."""
    from budgetfix.exports.lines import wrapped

    if not found.proven:
        text = "No plan for all jobs together was found in the time, nor that there is none"
        return [*wrapped(f"{text}: give it more with --seconds.", 4), NOTHING]
    lines = ["Each job has a plan of its own, but not all of them together:"]
    for one in found.wanted:
        product = jobs[one.jobs[0]].catalog.product(one.piece)
        houses = " and ".join(names[at] for at in one.jobs)
        lines += wrapped(
            f"  {product.name or one.piece}: {product.stock} there, wanted in {houses} on the same days", 4
        )
    return [*dict.fromkeys(lines), "Change the days of a stay, or give up a must.", NOTHING]


def _no_options(folder: Path, found: Houses, words: PlanWords) -> None:
    """Money, hours and catalog belong to one job."""
    typed = [
        name
        for name, value in (("--budget", words.budget), ("--hours", words.hours), ("--catalog", words.catalog))
        if value is not None
    ]
    if typed:
        verb = "belongs" if len(typed) == 1 else "belong"
        say.stop(
            say.MISUSE,
            [
                f"{' and '.join(typed)} {verb} to one job, and {folder} holds {len(found.jobs)}.",
                f"Name one of them, such as {folder / found.jobs[0]}, or write it into the brief.yaml of each.",
            ],
        )


def inspect_all(folder: Path, found: Houses, json: bool, quiet: bool, refuse: Refuse) -> None:
    """`inspect` on a folder of jobs."""
    from budgetfix.exports.plan_json import inspect_object
    from budgetfix.exports.portfolio_json import inspections_object
    from budgetfix.exports.portfolio_screen import Looked, inspections_text
    from budgetfix.outcome.portfolio import house_names
    from budgetfix.pipeline.inspecting import inspected

    objects, rows = {}, []
    jobs = read(folder, found, refuse)
    for job, name in zip(jobs, house_names([job.name for job in jobs]), strict=True):
        seen = inspected(job)
        metric = job.survey is None or job.survey.household.unit != "in"
        objects[job.name] = inspect_object(seen.findings, seen.points, seen.hazards, metric)
        faults = sum(1 for one in seen.findings if one.fault) + len(job.faults)
        rows.append(Looked(job.name, name, faults, seen.points, seen.hazards))
    if json:
        say.obj(inspections_object(objects))
    elif not quiet:
        notes = passed_over(folder, found)
        say.out(inspections_text(str(folder), rows, notes, unicode=say.can_unicode()))


NOTHING = "Nothing was written."
TOUCHED = (
    "{} holds ticks or figures of yours, and is not written over.\n"
    "`budgetfix replan` reads them back, one job at a time, such as `budgetfix replan {}`;\n"
    "to plan all jobs anew, move the file out of the folder. Nothing was written."
)
