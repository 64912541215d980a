"""Under which name an earlier workbook is kept."""

from __future__ import annotations

import errno
from pathlib import Path
from typing import NoReturn

import pytest

from budgetfix.intake import door
from budgetfix.intake.kept import changed, to_keep


def test_an_earlier_book_gets_the_next_free_name(tmp_path: Path) -> None:
    """The first is 1; where 1 is there, 2; a gap is filled, nothing is written over."""
    plan = tmp_path / "plan.xlsx"
    plan.write_bytes(b"old")
    assert to_keep(plan, b"new") == {"plan-kept-1.xlsx": b"old"}
    (tmp_path / "plan-kept-1.xlsx").write_bytes(b"older")
    (tmp_path / "plan-kept-3.xlsx").mkdir()
    assert to_keep(plan, b"new") == {"plan-kept-2.xlsx": b"old"}
    (tmp_path / "plan-kept-2.xlsx").write_bytes(b"")
    assert to_keep(plan, b"new") == {"plan-kept-4.xlsx": b"old"}


def test_nothing_is_kept_where_nothing_changes(tmp_path: Path) -> None:
    """The same bytes once more are no other book; and where there was none, none is kept."""
    assert to_keep(tmp_path / "plan.xlsx", b"new") == {}
    (tmp_path / "plan.xlsx").write_bytes(b"new")
    assert to_keep(tmp_path / "plan.xlsx", b"new") == {}


def test_a_book_that_was_saved_or_taken_away_is_not_as_it_was(tmp_path: Path) -> None:
    """The same bytes are the same book; others, or none, are not."""
    plan = tmp_path / "plan.xlsx"
    assert changed(plan, b"read")
    plan.write_bytes(b"read")
    assert not changed(plan, b"read")
    plan.write_bytes(b"saved")
    assert changed(plan, b"read")


def test_a_book_that_cannot_be_had_whole_is_not_replaced(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The disk fails while it is read, or it is too large to be read: an empty copy would lose what was typed."""
    plan = tmp_path / "plan.xlsx"
    plan.write_bytes(b"ticked")
    monkeypatch.setattr(door, "BOOK_BYTES", 5)
    with pytest.raises(OSError, match="found 6 bytes, wanted 5 at most") as large:
        to_keep(plan, b"new")
    assert large.value.filename == str(plan)
    monkeypatch.undo()

    def fails(*_: object, **__: object) -> NoReturn:
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(Path, "open", fails)
    with pytest.raises(OSError, match="a file that cannot be opened"):
        to_keep(plan, b"new")
