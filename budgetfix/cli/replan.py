"""`replan`: read the workbook back, plan the rest, say what changed."""

from __future__ import annotations

import time
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from budgetfix.base.problems import FilesRefused
from budgetfix.cli import say
from budgetfix.cli.at_work import at_work, writing
from budgetfix.cli.commands import PlanWords, job_of, refuse
from budgetfix.cli.no_plan import no_plan
from budgetfix.cli.progress import progress_shown
from budgetfix.cli.room_after import refuse_room, refuse_roomless, room_written

if TYPE_CHECKING:
    from budgetfix.intake.job import Job
    from budgetfix.outcome.so_far import SoFar
    from budgetfix.pipeline.replanning import Replanned

AS_OF = "Planned as of {}: by today, {}, every session of the brief is over. --day names another day."
NO_DAY = "{} is no day. Write it as 2026-06-07."
NO_BOOK = "{} holds no plan.xlsx: plan it first. `budgetfix plan {}`"
MEANWHILE = "{} was changed while the rest was planned: nothing was written. Save it, and replan once more."
ONE_JOB = "replan takes one job at a time, and {} holds {}.\nName one of them, such as {}."


def run_replan(folder: Path, words: PlanWords, day: str | None) -> None:
    """`replan`."""
    typed = _day(day)
    with at_work(folder):
        _one_job(folder)
        _replan_one(folder, words, typed)


def _replan_one(folder: Path, words: PlanWords, typed: date | None) -> None:
    from budgetfix.exports.lines import wrapped
    from budgetfix.exports.plan_json import plan_object
    from budgetfix.exports.plan_screen import plan_text
    from budgetfix.exports.replan_words import replan_lines
    from budgetfix.pipeline.rest_day import standing_day
    from budgetfix.pipeline.writing import write_replanned

    refuse_room(words.room_after, folder)
    today = datetime.now().astimezone().date()
    job = job_of(folder, words)
    refuse_roomless(words.room_after, folder, job)
    read = _book(folder)
    so_far = _so_far(read, job)
    on = standing_day(job.brief, so_far, today) if typed is None else typed
    found = _replanned(job, so_far, on, words)
    with writing(folder, MEANWHILE):
        files = write_replanned(folder, found.book, read)
    files += room_written(words.room_after, found.left.job, found.book)
    if words.json:
        say.obj(plan_object(found.book, files))
    elif not words.quiet:
        text = plan_text(found.book, files, unicode=say.can_unicode())
        said = replan_lines(found.since, found.book, unicode=say.can_unicode())
        as_of = wrapped(AS_OF.format(on, today)) if typed is None and on != today else []
        say.out("\n".join([*as_of, *said, "", text]))
    if not found.book.proven:
        raise SystemExit(say.STOPPED)


def _book(folder: Path) -> bytes:
    """The workbook as it is, or the end of the run where it is open in another program, or gone."""
    from budgetfix.intake.kept import as_it_is
    from budgetfix.pipeline.writing import PLAN, refuse_open

    with writing(folder):
        refuse_open(folder / PLAN)
        read = as_it_is(folder / PLAN)
    if read is None:
        say.stop(say.MISUSE, [NO_BOOK.format(folder, folder)])
    return read


def _day(day: str | None) -> date | None:
    """The day as typed; None for none."""
    if day is None:
        return None
    try:
        return date.fromisoformat(day)
    except ValueError:
        say.stop(say.MISUSE, [NO_DAY.format(f"'{day}'")])


def _one_job(folder: Path) -> None:
    """The end of the run for what is no job, several jobs, or a job that has no plan yet."""
    from budgetfix.intake.houses import houses
    from budgetfix.pipeline.writing import PLAN

    found = houses(folder) if folder.is_dir() else None
    if found is not None:
        say.stop(say.MISUSE, [ONE_JOB.format(folder, len(found.jobs), folder / found.jobs[0])])
    if folder.is_dir() and not (folder / PLAN).is_file():
        say.stop(say.MISUSE, [NO_BOOK.format(folder, folder)])


def _so_far(book: bytes, job: Job) -> SoFar:
    """What the workbook says; the end of the run where it cannot be believed."""
    from budgetfix.intake.plan_back import back_from
    from budgetfix.pipeline.writing import PLAN

    found, problems = back_from(book, PLAN, job.brief.currency)
    if found is None:
        refuse(problems, ())
    return found


def _replanned(job: Job, so_far: SoFar, day: date, words: PlanWords) -> Replanned:
    """The plan of the rest, or the end of the run where none keeps every wish."""
    from budgetfix.pipeline.planning import Wish
    from budgetfix.pipeline.replanning import NoRest, replanned

    try:
        with progress_shown(words.quiet or words.json) as line:
            found = replanned(job, so_far, day, Wish(words.seconds, time.monotonic, line))
    except FilesRefused as refused:
        refuse(refused.problems, refused.marked)
    if isinstance(found, NoRest):
        say.stop(say.NO_PLAN, ["Of what is left:", *no_plan(found.why, found.left.job), "Nothing was written."])
    return found
