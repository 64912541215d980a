"""What each command does: read, call the pipeline once, print."""

from __future__ import annotations

import time
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

from budgetfix.base.problems import FileProblem, FilesRefused
from budgetfix.cli import say
from budgetfix.cli.at_work import at_work, settle, writing
from budgetfix.cli.no_plan import no_plan
from budgetfix.cli.progress import progress_shown
from budgetfix.cli.room_after import ONE_JOB, refuse_room, refuse_roomless, room_written

if TYPE_CHECKING:
    from collections.abc import Mapping

    from budgetfix.intake.job import Job


@dataclass(frozen=True)
class PlanWords:
    """The options of `plan`, as typed."""

    budget: str | None = None
    hours: str | None = None
    catalog: str | None = None
    seconds: float = 60.0
    json: bool = False
    quiet: bool = False
    room_after: Path | None = None


def job_of(folder: Path, words: PlanWords) -> Job:
    """The job, or the end of the run: 2 when it is no folder, 3 with every problem of every file."""
    from budgetfix.pipeline.reading import JobOptions, read

    if not folder.is_dir():
        say.stop(say.MISUSE, [f"{folder} is no folder. `budgetfix start {folder}` makes one."])
    try:
        return read(folder, JobOptions(words.budget, words.hours, words.catalog), datetime.now().astimezone().date())
    except FilesRefused as refused:
        refuse(refused.problems, refused.marked)


def refuse(problems: tuple[FileProblem, ...], marked: tuple[str, ...]) -> NoReturn:
    """The end of a run whose files are refused: every problem, and what was written all the same."""
    files = len({problem.place.file for problem in problems})
    count = f"{len(problems)} problem{'s' if len(problems) != 1 else ''}"
    where = f"{files} file{'s' if files != 1 else ''}"
    wrote = f"Nothing was written but {', '.join(marked)}." if marked else "Nothing was written."
    say.stop(say.REFUSED, [*map(str, problems), "", f"{count} in {where}. {wrote}"])


def _refused(refused: FilesRefused) -> NoReturn:
    refuse(refused.problems, refused.marked)


def run_inspect(folder: Path, json: bool, quiet: bool) -> None:
    """`inspect`."""
    from budgetfix.cli.portfolio import inspect_all
    from budgetfix.exports.inspect_screen import Inspection, inspect_text
    from budgetfix.exports.plan_json import inspect_object
    from budgetfix.intake.houses import houses
    from budgetfix.pipeline.inspecting import inspected, room_words, title

    settle(folder)
    found = houses(folder)
    if found is not None:
        inspect_all(folder, found, json, quiet, _refused)
        return
    job = job_of(folder, PlanWords())
    seen = inspected(job)
    unit = job.survey.household.unit if job.survey is not None else "mm"
    if json:
        say.obj(inspect_object(seen.findings, seen.points, seen.hazards, unit != "in"))
    elif not quiet:
        shown = Inspection(
            title(job), room_words(job.survey), seen.findings, job.faults, seen.points, seen.hazards, seen.rules,
            unit, str(folder), job.notes, seen.asked,
        )  # fmt: skip
        say.out(inspect_text(shown, unicode=say.can_unicode(), width=say.columns()))


def run_plan(folder: Path, words: PlanWords) -> None:
    """`plan`."""
    from budgetfix.cli.portfolio import plan_all
    from budgetfix.intake.houses import houses

    found = houses(folder)
    with at_work(folder, found.jobs if found is not None else ()):
        if found is None:
            _plan_one(folder, words)
        elif words.room_after is not None:
            say.stop(say.MISUSE, [ONE_JOB.format(folder, len(found.jobs), folder / found.jobs[0])])
        else:
            plan_all(folder, found, words, _refused)


def _plan_one(folder: Path, words: PlanWords) -> None:
    from budgetfix.exports.plan_json import plan_object
    from budgetfix.exports.plan_screen import plan_text
    from budgetfix.optimize.problem import NoPlan
    from budgetfix.pipeline.planning import Wish, planned
    from budgetfix.pipeline.writing import PLAN, Touched, refuse_open, refuse_touched, write_plan

    refuse_room(words.room_after, folder)
    job = job_of(folder, words)
    refuse_roomless(words.room_after, folder, job)
    try:
        with writing(folder):
            refuse_open(folder / PLAN)
            refuse_touched(folder)
        with progress_shown(words.quiet or words.json) as line:
            book = planned(job, Wish(words.seconds, time.monotonic, line))
        if isinstance(book, NoPlan):
            say.stop(say.NO_PLAN, no_plan(book, job))
        with writing(folder):
            files = write_plan(folder, book)
    except FilesRefused as refused:
        refuse(refused.problems, refused.marked)
    except Touched as touched:
        _stop_touched(folder, touched)
    files += room_written(words.room_after, job, book)
    if words.json:
        say.obj(plan_object(book, files))
    elif not words.quiet:
        say.out(plan_text(book, files, unicode=say.can_unicode()))
    if not book.proven:
        raise SystemExit(say.STOPPED)


def _stop_touched(folder: Path, touched: Exception) -> NoReturn:
    from budgetfix.intake.plan_ticks import foreign
    from budgetfix.pipeline.writing import PLAN

    say.stop(say.MISUSE, [(_FOREIGN if foreign(folder / PLAN) else _TOUCHED).format(touched, folder)])


_TOUCHED = (
    "{} holds ticks or figures of yours, and is not written over.\n"
    "`budgetfix replan {}` reads them back and plans the rest; to plan anew, move the file out of the folder."
)
_FOREIGN = "{} is no workbook, and is not written over: move it out of the folder, then plan again."


def run_demo(folder: Path, scenario: str, quiet: bool) -> None:
    """`demo`."""
    from budgetfix.exports.files import write_whole
    from budgetfix.pipeline.demo_data import SCENARIOS, demo_files

    if scenario not in SCENARIOS:
        say.stop(say.MISUSE, [f"There is no scenario {scenario}. There are: {', '.join(SCENARIOS)}."])
    if folder.exists() and any(folder.iterdir()) and not (folder / "brief.yaml").is_file():
        say.stop(say.MISUSE, [f"{folder} holds other files. Name a new folder."])
    files = demo_files(scenario)
    with at_work(folder), writing(folder):
        _spare_edited(folder, files)
        write_whole(folder, files, check=lambda: _spare_edited(folder, files))
    if not quiet:
        say.out(f"Copied the {scenario}'s job into {folder}.\n\n$ budgetfix inspect {folder}")
    run_inspect(folder, json=False, quiet=quiet)
    if not quiet:
        say.out(f"\n$ budgetfix plan {folder}")
    run_plan(folder, PlanWords(quiet=quiet))
    if not quiet:
        say.out(f"\nOpen {folder / 'plan.html'}")


def _spare_edited(folder: Path, files: Mapping[str, bytes]) -> None:
    """A demo may be copied over itself, but over nothing that somebody changed, and over no other job."""
    from budgetfix.intake.kept import as_it_is

    theirs = [name for name, data in files.items() if as_it_is(folder / name) not in (None, data)]
    if theirs:
        said = f"{folder} already holds another {', '.join(theirs)}, which is not written over. Name a new folder."
        say.stop(say.MISUSE, [said])


def run_start(folder: Path, unit: str, currency: str, quiet: bool) -> None:
    """`start`."""
    from budgetfix.exports.files import write_whole
    from budgetfix.pipeline.starting import STARTERS, starter_files

    if unit not in ("in", "cm", "mm"):
        say.stop(say.MISUSE, [f"{unit} is no unit here. There are: in, cm, mm."])
    _spare(folder, STARTERS)
    try:
        files = starter_files(unit, currency)
    except ValueError as reason:
        say.stop(say.MISUSE, [str(reason)])
    with at_work(folder), writing(folder):
        write_whole(folder, files, check=lambda: _spare(folder, STARTERS))
    if not quiet:
        say.out(
            f"Wrote {folder / 'survey.xlsx'}, catalog.xlsx, brief.yaml.\n\n"
            f"1  Fill in survey.xlsx: half an hour with a tape, sheet by sheet.\n"
            f"2  Put your money and your hours into brief.yaml, your shop's prices into catalog.xlsx\n"
            f"   (every price in it is an example).\n"
            f"3  budgetfix inspect {folder}\n"
            f"4  budgetfix plan {folder}"
        )


def _spare(folder: Path, names: tuple[str, ...]) -> None:
    taken = [name for name in names if (folder / name).exists()]
    if taken:
        say.stop(say.MISUSE, [f"{folder} already holds {', '.join(taken)}. Name a new folder."])


def run_rules(slug: str | None, kinds: bool, json: bool) -> None:
    """`rules`."""
    from budgetfix.pipeline.manual import kinds_text, page_of, rules_objects, rules_text

    if json:
        found = rules_objects(slug)
        if slug is not None and not found:
            say.stop(say.MISUSE, [f"There is no rule {slug}. `budgetfix rules` lists them."])
        say.obj(found)
        return
    if slug is not None:
        page = page_of(slug)
        if page is None:
            say.stop(say.MISUSE, [f"There is no rule and no kind {slug}. `budgetfix rules` lists them."])
        say.out(page)
        return
    say.out(kinds_text() if kinds else rules_text())
