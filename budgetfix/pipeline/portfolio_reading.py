"""All jobs of a folder read, or every problem of every file of all of them."""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path

from budgetfix.base.problems import FileProblem, FilesRefused, Place
from budgetfix.brief.van import Slot
from budgetfix.exports.lettering import clock, long_day
from budgetfix.intake.brief_over import Over
from budgetfix.intake.job import Job, read_job
from budgetfix.pipeline.reading import kind_names, with_kept


def read_jobs(folder: Path, names: Sequence[str], today: date) -> tuple[Job, ...]:
    """Every job, under the name of its folder. Writes only marked copies. Errors: FilesRefused, OSError."""
    jobs = tuple(replace(read_job(folder / name, Over(), today, kind_names()), name=name) for name in names)
    found = {_told(folder, job, problem) for job in jobs for problem in job.problems}
    problems = tuple(sorted(found or {*_currencies(jobs), *_vans(jobs)}))
    if problems:
        raise FilesRefused(problems, _mark(folder, jobs))
    return tuple(map(with_kept, jobs))


def within(name: str, problem: FileProblem) -> FileProblem:
    """A problem of one job, its file told from the folder of all."""
    return replace(problem, place=replace(problem.place, file=f"{name}/{problem.place.file}"))


def _told(folder: Path, job: Job, problem: FileProblem) -> FileProblem:
    """A catalog outside of the job's own folder is told once, by its own path."""
    catalog = Path(job.catalog_file)
    outside = job.catalog_file and catalog.parent != (folder / job.name).resolve()
    if not outside or problem.place.file != catalog.name:
        return within(job.name, problem)
    file = os.path.relpath(catalog, folder.resolve()).replace(os.sep, "/")
    return replace(problem, place=replace(problem.place, file=file))


def _currencies(jobs: Sequence[Job]) -> list[FileProblem]:
    """Money of several currencies has no sum."""
    first = jobs[0]
    return [
        FileProblem(
            Place(f"{job.name}/brief.yaml", label="currency"),
            job.brief.currency,
            f"{first.brief.currency}, as in {first.name}: jobs planned together have one currency",
        )
        for job in jobs
        if job.brief.currency != first.brief.currency
    ]


def _vans(jobs: Sequence[Job]) -> list[FileProblem]:
    """Two slots at one time of one van. Jobs with one catalog have one van where they name none."""
    slots = [(job, way, slot) for job in jobs if job.brief.vans is not None for way, slot in job.brief.vans.slots]
    found = []
    for at, (job, way, slot) in enumerate(slots):
        before = next((one for one in slots[:at] if one[0].name != job.name and _meet(one, (job, way, slot))), None)
        if before is not None:
            other, _, taken = before
            wanted = f"another time, or another `van`: {other.name} has it from {_window(taken)}"
            place = Place(f"{job.name}/brief.yaml", label=f"vans, {way}")
            found.append(FileProblem(place, f"{long_day(slot.on)} from {_window(slot)}", wanted))
    return found


def _meet(one: tuple[Job, str, Slot], other: tuple[Job, str, Slot]) -> bool:
    (here, _, slot), (there, _, taken) = one, other
    same = here.catalog_file == there.catalog_file and slot.van == taken.van and slot.on == taken.on
    return same and slot.start_minute < taken.end_minute and taken.start_minute < slot.end_minute


def _window(slot: Slot) -> str:
    return f"{clock(slot.start_minute)} to {clock(slot.end_minute)}"


def _mark(folder: Path, jobs: Sequence[Job]) -> tuple[str, ...]:
    """Marked copies in the folders of the jobs; of a catalog that several share one, beside the first of them."""
    from budgetfix.exports.marked import write_marked

    written, seen = [], set()
    for job in jobs:
        for name, data in job.marked:
            shared = job.catalog_file if name.startswith(Path(job.catalog_file).stem) else f"{job.name}/{name}"
            if shared not in seen:
                seen.add(shared)
                if write_marked(folder / job.name / name, data):
                    written.append(f"{job.name}/{name}")
    return tuple(written)
