"""The hidden sheet with the plan's own record."""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

import pytest
from openpyxl import load_workbook

from budgetfix.exports.plan_book import plan_book
from budgetfix.exports.plan_book_record import LETTERS, RECORD
from budgetfix.intake.plan_ticks import touched
from budgetfix.outcome.record_text import VERSION, as_texts
from tests.exports.plan_sheets import opened, sheet
from tests.exports.remembered_book import KEPT
from tests.exports.sample_book import BOOK

pytestmark = pytest.mark.filterwarnings("ignore:Unknown extension", "ignore:Conditional Formatting extension")


def test_a_row_for_everything_behind_a_version() -> None:
    """The sheet is hidden; below its version each line, step and candidate has a row with its text."""
    assert KEPT.remembered is not None
    page = sheet(opened(plan_book(KEPT)), RECORD)
    assert page.sheet_state == "hidden"
    rows = list(page.iter_rows(values_only=True))
    assert rows[0][:2] == ("version", VERSION)
    assert [row[:2] for row in rows[1:]] == [(one.kind, one.text) for one in as_texts(KEPT.remembered)]


def test_a_long_text_takes_several_cells() -> None:
    """A cell holds 32,767 characters: what is longer goes on in the next ones, and nothing is cut."""
    assert KEPT.remembered is not None
    first = KEPT.remembered.candidates[0]
    long = replace(first, candidate=replace(first.candidate, name="ab" * LETTERS))
    whole = replace(KEPT.remembered, candidates=(long,))
    page = sheet(opened(plan_book(replace(KEPT, remembered=whole))), RECORD)
    parts = [cell for cell in list(page.iter_rows(values_only=True))[-1][1:] if cell is not None]
    assert [len(str(part)) for part in parts[:-1]] == [LETTERS] * 2
    assert "".join(map(str, parts)) == as_texts(whole)[-1].text


def test_a_book_without_a_record_has_no_such_sheet() -> None:
    """A plan that is not to be read back is as it always was, sheet by sheet."""
    assert RECORD not in opened(plan_book(BOOK)).sheetnames
    assert opened(plan_book(KEPT)).sheetnames == [*opened(plan_book(BOOK)).sheetnames, RECORD]


def test_the_record_is_ours_and_a_change_to_it_is_seen(tmp_path: Path) -> None:
    """A fresh book with a record is untouched; one letter of the record is somebody's work."""
    path = tmp_path / "plan.xlsx"
    path.write_bytes(plan_book(KEPT))
    assert not touched(path)
    book = load_workbook(io.BytesIO(plan_book(KEPT)))
    book[RECORD]["B3"] = "{}"
    book.save(path)
    assert touched(path)
