"""What a plan writes into its job folder: all of it, or nothing."""

from __future__ import annotations

import errno
import os
from pathlib import Path

from budgetfix.exports.by_person import file_names, workers_of
from budgetfix.exports.calendar import person_ics, plan_ics
from budgetfix.exports.drawings.draw import pictures
from budgetfix.exports.files import write_whole
from budgetfix.exports.landlord_text import landlord_text
from budgetfix.exports.moves import ChangedMeanwhile as ChangedMeanwhile
from budgetfix.exports.page.page import plan_page
from budgetfix.exports.page.quote import quote_page
from budgetfix.exports.plan_book import plan_book
from budgetfix.exports.plan_csv import buy_csv, do_csv
from budgetfix.exports.survey_yaml import survey_yaml
from budgetfix.intake.earlier import outdated
from budgetfix.intake.job import Job
from budgetfix.intake.kept import as_it_is, changed, to_keep
from budgetfix.intake.open_elsewhere import open_lock
from budgetfix.intake.plan_ticks import touched
from budgetfix.outcome.afterwards import as_surveyed, still_listed
from budgetfix.outcome.book import PlanBook

PLAN = "plan.xlsx"
QUOTE = "quote.html"
ROOM_TOLD = (
    "The rooms as they will stand after the plan. As survey.yaml in a new folder, with copies of the brief and the",
    "catalogue, they can be inspected and planned anew. Take your own remedies that are done, or that speak of things",
    "that are gone, out of that catalogue, and leave faults.csv behind: listed faults stand here, with what is left.",
)


class Touched(Exception):
    """The earlier plan holds ticks or figures of the user's, and is not written over."""


class OpenElsewhere(Exception):
    """A workbook is open in another program. Holds its path, and that of the file that says so."""


def write_plan(folder: Path, book: PlanBook) -> tuple[str, ...]:
    """Write the lists; returns the paths as JOB joined with the names.

    Errors: Touched, OpenElsewhere, also where that came about just now; Busy, ChangedMeanwhile, OSError, HalfMoved.
    """
    seen = as_it_is(folder / PLAN)
    refuse_touched(folder)
    made = plan_files(book)

    def check() -> None:
        refuse_open(folder / PLAN)
        if as_it_is(folder / PLAN) != seen:
            refuse_touched(folder)

    refuse_gone(folder)
    write_whole(folder, made, outdated(folder, made), check)
    return tuple(str(folder / name) for name in made)


def refuse_gone(folder: Path) -> None:
    """A job's folder that went while its plan was made is not made again. Errors: FileNotFoundError."""
    if not folder.is_dir():
        raise FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT), str(folder))


def refuse_open(book: Path) -> None:
    """Errors: OpenElsewhere. What is typed there and not yet saved would go, or go over the new plan."""
    lock = open_lock(book)
    if lock is not None:
        raise OpenElsewhere(str(book), str(lock))


def plan_files(book: PlanBook) -> dict[str, bytes]:
    """The files of a plan, by name, in the order in which they are told."""
    drawn, people = pictures(book), workers_of(book)
    return {
        PLAN: plan_book(book, drawn),
        "plan.html": plan_page(book, drawn),
        "plan.ics": plan_ics(book),
        "buy.csv": buy_csv(book),
        "do.csv": do_csv(book),
        **{name: person_ics(book, one) for name, one in zip(file_names(people), people, strict=True)},
        **({"landlord.txt": landlord_text(book.landlord)} if book.landlord is not None else {}),
        **({"quote.html": quote_page(book.quote)} if book.quote is not None else {}),
    }


def write_room(file: Path, job: Job, book: PlanBook) -> None:
    """Write the rooms as the plan leaves them, as a survey: whole, or not at all, and over no other file.

    Errors: OSError; Busy, ChangedMeanwhile, HalfMoved.
    """
    if book.drawn is None:
        return
    room = as_surveyed(book.drawn.before, book.drawn.after)
    text = survey_yaml(room, still_listed(job.faults, book.faults, job.brief), ROOM_TOLD)

    def check() -> None:
        if file.exists():
            raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(file))

    write_whole(file.parent, {file.name: text}, check=check)


def refuse_touched(folder: Path) -> None:
    """Errors: Touched, before any work is done."""
    if (folder / PLAN).exists() and touched(folder / PLAN):
        raise Touched(str(folder / PLAN))


def write_replanned(folder: Path, book: PlanBook, read: bytes | None = None) -> tuple[str, ...]:
    """Write the lists of the rest over a ticked workbook, which is kept beside them; a client's quote stays as it is.

    All of it, or nothing. `read`: the workbook as it was read back, where that should be what it still is. Returns the
    paths as JOB joined with the names, the kept one last. Errors: ChangedMeanwhile, OpenElsewhere, Busy, OSError,
    HalfMoved.
    """
    made = {name: data for name, data in plan_files(book).items() if name != QUOTE}
    kept = to_keep(folder / PLAN, made[PLAN])
    before = as_it_is(folder / PLAN) if read is None else read

    def check() -> None:
        refuse_open(folder / PLAN)
        if before is not None and changed(folder / PLAN, before):
            raise ChangedMeanwhile(str(folder / PLAN))

    refuse_gone(folder)
    check()
    write_whole(folder, made | kept, (name for name in outdated(folder, made) if name != QUOTE), check)
    return tuple(str(folder / name) for name in (*made, *kept))
