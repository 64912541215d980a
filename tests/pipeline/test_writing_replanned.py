"""A plan of the rest goes over a ticked workbook: that one is kept, and all is written or nothing."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from budgetfix.exports.plan_book import plan_book
from budgetfix.pipeline.writing import PLAN, ChangedMeanwhile, write_plan, write_replanned
from tests.exports.remembered_book import KEPT, rest_of
from tests.exports.test_files import contents
from tests.intake.ticked import Desk

pytestmark = pytest.mark.filterwarnings("ignore:Unknown extension", "ignore:Conditional Formatting extension")


def ticked() -> Desk:
    """The sample's workbook with one line bought."""
    desk = Desk()
    desk.type("Buy", "product:rod@harrow", "Bought", "✓")
    return desk


def test_the_ticked_book_is_kept_and_the_new_one_carries_its_ticks(tmp_path: Path) -> None:
    """Beside the new lists stands the old workbook, byte for byte; once more with the same bytes keeps no other."""
    write_plan(tmp_path, KEPT)
    old, desk = ticked().saved(), ticked()
    (tmp_path / PLAN).write_bytes(old)
    rest = rest_of(desk.back())
    files = write_replanned(tmp_path, rest, old)
    assert files[-1] == str(tmp_path / "plan-kept-1.xlsx")
    assert {str(tmp_path / name) for name in contents(tmp_path)} == set(files)
    assert contents(tmp_path)["plan-kept-1.xlsx"] == old
    assert contents(tmp_path)[PLAN] == plan_book(rest)
    before = contents(tmp_path)
    assert write_replanned(tmp_path, rest) == files[:-1]
    assert contents(tmp_path) == before


def test_lists_of_a_person_who_has_nothing_left_to_do_are_taken_away_and_a_quote_stays(tmp_path: Path) -> None:
    """Files of the earlier plan that speak of another one go; what a client was sent is not ours to take back."""
    write_plan(tmp_path, KEPT)
    assert (tmp_path / "plan-ben.ics").exists()
    (tmp_path / "quote.html").write_bytes(b"<!DOCTYPE html> sent last week")
    desk = ticked()
    for step in ("lower-tv#1", "anchor#1", "rod#2"):
        desk.type("Do", step, "Done", "✓")
    write_replanned(tmp_path, rest_of(desk.back()))
    assert not (tmp_path / "plan-ben.ics").exists()
    assert (tmp_path / "quote.html").read_bytes() == b"<!DOCTYPE html> sent last week"


@pytest.mark.parametrize("at", ["plan-kept-1.xlsx", PLAN, "buy.csv", "plan.html"])
def test_a_disk_that_fails_changes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, at: str) -> None:
    """Whichever file cannot be moved into its place: the ticked workbook is where it was, and there is no copy."""
    write_plan(tmp_path, KEPT)
    (tmp_path / PLAN).write_bytes(ticked().saved())
    before, real = contents(tmp_path), os.replace

    def failing(source: Path, target: Path) -> None:
        if Path(target).name == at and Path(source).name.startswith("new-"):
            raise OSError("the disk is full")
        real(source, target)

    monkeypatch.setattr(os, "replace", failing)
    with pytest.raises(OSError, match="full"):
        write_replanned(tmp_path, rest_of(ticked().back()))
    assert contents(tmp_path) == before


def test_a_book_saved_meanwhile_is_not_written_over(tmp_path: Path) -> None:
    """While the rest was planned somebody ticked one thing more: that tick was not read, and is not lost."""
    (tmp_path / PLAN).write_bytes(b"with one tick more")
    with pytest.raises(ChangedMeanwhile, match=PLAN):
        write_replanned(tmp_path, rest_of(ticked().back()), ticked().saved())
    assert contents(tmp_path) == {PLAN: b"with one tick more"}
