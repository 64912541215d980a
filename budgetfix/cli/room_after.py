"""`--room-after FILE` of `plan` and `replan`: the survey of the rooms as they will stand."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from budgetfix.cli import say

if TYPE_CHECKING:
    from budgetfix.intake.job import Job
    from budgetfix.outcome.book import PlanBook

THERE = "{} is there already, and is not written over. Name a file that is not there yet."
ENDING = "{} is no name for a survey as text. Name one that ends in .yaml, such as {}."
OF_THE_JOB = "{} is a name that budgetfix reads in {} as something else. Name another one, such as {}."
READ_HERE = ("survey.yaml", "brief.yaml", "catalog.yaml")
NO_SURVEY = "{} has no survey: there is no room to write. Leave out --room-after."
ONE_JOB = "--room-after takes one job at a time, and {} holds {} jobs.\nName one of them, such as {}."
NOT_THERE = "The lists are written, but {} could not be: {}."


def refuse_room(file: Path | None, folder: Path) -> None:
    """The end of the run, before any work, where the file must not be written."""
    if file is None:
        return
    other = file.with_name("survey-after.yaml")
    if file.exists():
        say.stop(say.MISUSE, [THERE.format(file)])
    if file.suffix.lower() != ".yaml":
        say.stop(say.MISUSE, [ENDING.format(file, other)])
    if file.name.lower() in READ_HERE and file.parent.resolve() == folder.resolve():
        say.stop(say.MISUSE, [OF_THE_JOB.format(file, folder, other)])


def refuse_roomless(file: Path | None, folder: Path, job: Job) -> None:
    """The end of the run, before any work, for a job that has listed faults only."""
    if file is not None and job.survey is None:
        say.stop(say.MISUSE, [NO_SURVEY.format(folder)])


def room_written(file: Path | None, job: Job, book: PlanBook) -> tuple[str, ...]:
    """Write it, after the lists; its path as typed, or nothing where it is not asked for."""
    from budgetfix.exports.files import HalfMoved
    from budgetfix.exports.lock import Busy
    from budgetfix.pipeline.writing import ChangedMeanwhile, write_room

    if file is None:
        return ()
    try:
        write_room(file, job, book)
    except OSError as error:
        say.stop(say.MISUSE, [NOT_THERE.format(file, error.strerror or error)])
    except Busy as busy:
        say.stop(say.MISUSE, [NOT_THERE.format(file, f"another run is at work in {busy}")])
    except (ChangedMeanwhile, HalfMoved):
        say.stop(say.MISUSE, [NOT_THERE.format(file, "somebody else was writing there")])
    return (str(file),)
