"""`compare`: two jobs, or one job under two briefs or catalogues, side by side."""

from __future__ import annotations

import time
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from budgetfix.base.problems import FileProblem, FilesRefused
from budgetfix.cli import say
from budgetfix.cli.at_work import settle
from budgetfix.cli.commands import refuse
from budgetfix.cli.no_plan import no_plan
from budgetfix.cli.progress import progress_shown

if TYPE_CHECKING:
    from budgetfix.outcome.beside import Beside
    from budgetfix.pipeline.comparing import Named

NOTHING_ELSE = "Name a second job, or what is to be otherwise: --budget, --hours, --session, --catalog or --brief."


@dataclass(frozen=True)
class CompareWords:
    """The options of `compare`, as typed; they belong to the second plan."""

    budget: str | None = None
    hours: str | None = None
    session: str | None = None
    catalog: str | None = None
    brief: Path | None = None
    seconds: float = 60.0
    json: bool = False
    quiet: bool = False

    @property
    def typed(self) -> tuple[tuple[str, object], ...]:
        """The options that say what is otherwise, with their names."""
        named = (
            ("--budget", self.budget),
            ("--hours", self.hours),
            ("--session", self.session),
            ("--catalog", self.catalog),
            ("--brief", self.brief),
        )
        return tuple((name, value) for name, value in named if value is not None)


def run_compare(folder: Path, other: Path | None, words: CompareWords) -> None:
    """`compare`. Writes nothing but marked copies of refused workbooks."""
    if other is None and not words.typed:
        say.stop(say.MISUSE, [NOTHING_ELSE])
    for place in (folder, *([other] if other is not None else [])):
        settle(place)
        _one_job(place)
    if words.brief is not None and not words.brief.is_file():
        say.stop(say.MISUSE, [f"There is no file {words.brief}."])
    jobs = _jobs(folder, other or folder, words)
    found = _compared(jobs, words)
    if words.json:
        from budgetfix.exports.beside_json import beside_object

        say.obj(beside_object(found))
    elif not words.quiet:
        from budgetfix.exports.beside_screen import beside_text

        say.out(beside_text(found, unicode=say.can_unicode()))
    if not (found.first.book.proven and found.second.book.proven):
        raise SystemExit(say.STOPPED)


def _one_job(folder: Path) -> None:
    from budgetfix.intake.houses import houses

    if not folder.is_dir():
        say.stop(say.MISUSE, [f"{folder} is no folder."])
    found = houses(folder)
    if found is not None:
        say.stop(say.MISUSE, [f"{folder} holds {len(found.jobs)} jobs. Compare one of them, such as {found.jobs[0]}."])


def _jobs(folder: Path, other: Path, words: CompareWords) -> tuple[Named, Named]:
    """Both jobs, or the end of the run with the problems of both."""
    from budgetfix.pipeline.comparing import Named
    from budgetfix.pipeline.reading import JobOptions, read

    today = datetime.now().astimezone().date()
    changed = JobOptions(words.budget, words.hours, words.catalog, words.brief, words.session)
    problems: dict[FileProblem, None] = {}
    marked: dict[str, None] = {}
    jobs = []
    for name, place, options in (
        (str(folder), folder, JobOptions()),
        (_name(other, words), other, changed),
    ):
        try:
            jobs.append(Named(name, read(place, options, today)))
        except FilesRefused as refused:
            problems |= dict.fromkeys(refused.problems)
            marked |= dict.fromkeys(refused.marked)
    if problems:
        refuse(tuple(sorted(problems)), tuple(marked))
    if len({one.job.brief.currency for one in jobs}) > 1:
        spoken = " and ".join(one.job.brief.currency for one in jobs)
        say.stop(say.MISUSE, [f"The two jobs are in {spoken}: money can only be compared in one currency."])
    return jobs[0], jobs[1]


def _name(folder: Path, words: CompareWords) -> str:
    said = ", ".join(f"{name} {value}" for name, value in words.typed)
    return f"{folder} with {said}" if said else str(folder)


def _compared(jobs: tuple[Named, Named], words: CompareWords) -> Beside:
    from budgetfix.pipeline.comparing import Without, compared
    from budgetfix.pipeline.lanes import LaneEnded
    from budgetfix.pipeline.planning import Wish

    try:
        with progress_shown(words.quiet or words.json) as line:
            found = compared(jobs, Wish(words.seconds, time.monotonic, line))
    except FilesRefused as refused:
        refuse(refused.problems, refused.marked)
    except LaneEnded as ended:
        say.stop(say.NO_PLAN, [f"The process that planned {ended} was ended from outside."])
    if isinstance(found, Without):
        lines = no_plan(found.why, jobs[found.at].job)
        say.stop(say.NO_PLAN, [f"{jobs[found.at].name}: no plan.", *(f"  {line}" for line in lines)])
    return found
