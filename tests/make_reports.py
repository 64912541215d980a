"""Writes the renter's workbooks anew, then `reports/renter/`: what the tool says and hands over. Run by `make reports`.

The rule book, `reports/rules.md`, the plans beside a practitioner's choice, `reports/practitioner.md`, the quote that
the stager's client gets, and the README's pictures too.

The gate compares what stands there with a fresh run.
"""

from __future__ import annotations

import contextlib
import shutil
import tempfile
import time
from pathlib import Path
from unittest.mock import patch

from typer.testing import CliRunner

from budgetfix.cli.app import app
from budgetfix.exports.page.quote import quote_page
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.manual import rule_book
from budgetfix.pipeline.planning import Wish, planned
from tests.scenarios import job

REPO = Path(__file__).resolve().parent.parent
REPORTS = REPO / "reports" / "renter"
RULE_BOOK = REPO / "reports" / "rules.md"
MADE = (
    "plan.xlsx", "plan.html", "plan.ics", "buy.csv", "do.csv", "plan-me.ics", "plan-friend.ics", "landlord.txt",
)  # fmt: skip
QUOTE = REPO / "reports" / "stager" / "quote.html"


def said(words: list[str]) -> str:
    """What a command prints, in an 80-column terminal. Errors: AssertionError when it does not end well."""
    found = CliRunner(env={"COLUMNS": "80"}).invoke(app, words)
    assert found.exit_code == 0, found.output
    return found.stdout


def make(target: Path) -> None:
    """Copy the renter's job, inspect and plan it, and keep what comes out."""
    target.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as desk, contextlib.chdir(desk):
        desk_job = Path("renter")
        shutil.copytree(REPO / "catalog_demo" / "renter", desk_job)
        (target / "inspect.txt").write_text(said(["inspect", "renter"]), encoding="utf-8")
        (target / "plan.txt").write_text(said(["plan", "renter", "--seconds", "600"]), encoding="utf-8")
        for name in MADE:
            shutil.copyfile(desk_job / name, target / name)


def quote() -> bytes:
    """The page that the stager's client gets. Nothing beside the plan is worked out for it but its options."""
    beside = "budgetfix.pipeline.around."
    with patch(f"{beside}BESIDE", 0.0), patch(f"{beside}GOODS", 0.0), patch(f"{beside}SIZES", 0.0):
        book = planned(job("stager"), Wish(600.0, time.monotonic))
    assert isinstance(book, PlanBook)
    assert book.quote is not None
    return quote_page(book.quote)


if __name__ == "__main__":
    from tests import make_pictures
    from tests.pipeline.test_demo_books import RENTER, books
    from tests.practitioner_page import PAGE, page

    for book, data in books().items():
        (RENTER / book).write_bytes(data)
    make(REPORTS)
    RULE_BOOK.write_text(rule_book(), encoding="utf-8")
    PAGE.write_text(page(), encoding="utf-8")
    QUOTE.parent.mkdir(exist_ok=True)
    QUOTE.write_bytes(quote())
    lacking = make_pictures.missing()
    if lacking:
        print(f"reports/pictures was left as it is: no {', '.join(lacking)} here")
    else:
        make_pictures.make()
    made = ", ".join(sorted(path.name for path in REPORTS.iterdir()))
    print(f"Wrote rules.md, practitioner.md and stager/quote.html to reports, and {made} to reports/renter")
