"""Files of an earlier plan that would speak of another one."""

from __future__ import annotations

import errno
import os
from dataclasses import replace
from pathlib import Path

import pytest

from budgetfix.intake.earlier import outdated
from budgetfix.pipeline.writing import write_plan
from tests.exports.sample_book import BOOK
from tests.exports.sample_quote import QUOTED
from tests.exports.test_landlord import LEASED


def test_what_the_new_plan_does_not_have_goes(tmp_path: Path) -> None:
    """A quote with old prices, a note to the landlord, the calendar of somebody who left: none stays beside a plan."""
    write_plan(tmp_path, replace(BOOK, landlord=LEASED.landlord, quote=QUOTED.quote))
    assert {"quote.html", "landlord.txt", "plan-ben.ics"} <= {path.name for path in tmp_path.iterdir()}
    alone = replace(BOOK, tasks=tuple(replace(task, who=("Ann",), people=1) for task in BOOK.tasks), people=("Ann",))
    write_plan(tmp_path, alone)
    left = sorted(path.name for path in tmp_path.iterdir())
    assert left == ["buy.csv", "do.csv", "plan.html", "plan.ics", "plan.xlsx"]


def test_what_is_not_ours_stays(tmp_path: Path) -> None:
    """A calendar or a letter of the user's own, whatever its name, is nobody's business."""
    (tmp_path / "plan-holiday.ics").write_text("BEGIN:VCALENDAR\nPRODID:-//other//\n", encoding="utf-8")
    (tmp_path / "landlord.txt").write_text("Dear landlord, as promised ...\n", encoding="utf-8")
    assert outdated(tmp_path, ()) == ()


def test_a_folder_that_may_not_be_looked_through_is_no_empty_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The system refuses to list it: the old calendar would stay unnoticed, so nothing is written."""
    (tmp_path / "plan-ben.ics").write_bytes(b"BEGIN:VCALENDAR\nPRODID:-//budgetfix//\n")

    def refused(_: Path) -> list[str]:
        raise PermissionError(errno.EACCES, "Permission denied")

    monkeypatch.setattr(os, "listdir", refused)
    with pytest.raises(PermissionError):
        outdated(tmp_path, ())
    assert outdated(tmp_path / "not there", ()) == ()
