"""A job folder read, or every problem of all of its files."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from budgetfix.base.problems import FilesRefused
from budgetfix.brief.lease import NOT_BACK, NOT_BACK_POINTS
from budgetfix.brief.models import ListedFault
from budgetfix.intake.brief_over import Over
from budgetfix.intake.job import Job, read_job
from budgetfix.remedies.registry import KINDS


@dataclass(frozen=True)
class JobOptions:
    """What the command line puts over the brief, as typed."""

    budget: str | None = None
    hours: str | None = None
    catalog: str | None = None
    brief: Path | None = None
    """Another file instead of the job's brief.yaml."""
    session: str | None = None
    """One session more, after those of the brief."""


def read(folder: Path, options: JobOptions, today: date) -> Job:
    """Read everything; refuse with every problem at once, writing only marked copies. Errors: FilesRefused."""
    over = Over(options.budget, options.hours, options.catalog, options.brief, options.session)
    job = read_job(folder, over, today, kind_names())
    if job.problems:
        raise FilesRefused(job.problems, _mark(folder, job))
    return with_kept(job)


def kind_names() -> tuple[str, ...]:
    """Every kind that a remedy may name."""
    return tuple(sorted(kind.kind for kind in KINDS))


def with_kept(job: Job) -> Job:
    """Before handing back, what of the landlord's is kept elsewhere is a listed fault each, and it must be in place.

    A fault that the job lists by that name itself says how it is: with 0 points the thing is back.
    """
    lease = job.brief.lease
    if lease is None or job.survey is None or job.brief.profile != "handing-back":
        return job
    missing = tuple(
        ListedFault(
            fault=NOT_BACK.format(name), points=NOT_BACK_POINTS, what=f"{name} is not in its place", where=where
        )
        for name, where in lease.keep
        if NOT_BACK.format(name) not in {fault.fault for fault in job.faults}
    )
    return replace(job, faults=tuple(sorted((*job.faults, *missing), key=lambda one: one.fault)))


def _mark(folder: Path, job: Job) -> tuple[str, ...]:
    from budgetfix.exports.marked import write_marked

    return tuple(name for name, data in job.marked if write_marked(folder / name, data))
