"""A job folder read, or every problem of all of its files."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path

from budgetfix.base.problems import FilesRefused
from budgetfix.intake.brief_yaml import Over
from budgetfix.intake.job import Job, read_job
from budgetfix.remedies.registry import KINDS


@dataclass(frozen=True)
class JobOptions:
    """What the command line puts over the brief, as typed."""

    budget: str | None = None
    hours: str | None = None
    catalog: str | None = None


def read(folder: Path, options: JobOptions, today: date) -> Job:
    """Read everything; refuse with every problem at once, writing only marked copies. Errors: FilesRefused."""
    kinds = tuple(sorted(kind.kind for kind in KINDS))
    job = read_job(folder, Over(options.budget, options.hours, options.catalog), today, kinds)
    if job.problems:
        raise FilesRefused(job.problems, _mark(folder, job))
    return job


def _mark(folder: Path, job: Job) -> tuple[str, ...]:
    from budgetfix.exports.marked import write_marked

    for name, data in job.marked:
        write_marked(folder / name, data)
    return tuple(name for name, _ in job.marked)
