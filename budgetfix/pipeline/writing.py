"""What a plan writes into its job folder: all of it, or nothing."""

from __future__ import annotations

from pathlib import Path

from budgetfix.exports.calendar import plan_ics
from budgetfix.exports.drawings.draw import pictures
from budgetfix.exports.files import write_whole
from budgetfix.exports.page.page import plan_page
from budgetfix.exports.page.quote import quote_page
from budgetfix.exports.plan_book import plan_book
from budgetfix.exports.plan_csv import buy_csv, do_csv
from budgetfix.intake.plan_ticks import touched
from budgetfix.outcome.book import PlanBook

PLAN = "plan.xlsx"


class Touched(Exception):
    """The earlier plan holds ticks or figures of the user's, and is not written over."""


def write_plan(folder: Path, book: PlanBook) -> tuple[str, ...]:
    """Write the lists; returns the paths as JOB joined with the names. Errors: Touched."""
    refuse_touched(folder)
    drawn = pictures(book)
    made = {
        PLAN: plan_book(book, drawn),
        "plan.html": plan_page(book, drawn),
        "plan.ics": plan_ics(book),
        "buy.csv": buy_csv(book),
        "do.csv": do_csv(book),
    }
    if book.quote is not None:
        made["quote.html"] = quote_page(book.quote)
    write_whole(folder, made)
    return tuple(str(folder / name) for name in made)


def refuse_touched(folder: Path) -> None:
    """Errors: Touched, before any work is done."""
    if (folder / PLAN).exists() and touched(folder / PLAN):
        raise Touched(str(folder / PLAN))
