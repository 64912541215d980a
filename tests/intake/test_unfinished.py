"""What an earlier run left in a folder, as it is found."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from budgetfix.base.limits import RECORD_BYTES
from budgetfix.base.moves import AHEAD, ASIDE, BACK, Move, Stamp, moves_text
from budgetfix.intake.unfinished import Unfinished, unfinished

MOVES = (Move("plan.xlsx", None, Stamp(1, 2)),)


def aside(folder: Path) -> Path:
    """The hidden folder, with one new file."""
    made = folder / ASIDE
    made.mkdir()
    (made / "new-0").write_bytes(b"n")
    return made


def test_nothing_was_begun(tmp_path: Path) -> None:
    """No hidden folder, or one without a record: no file was moved."""
    assert unfinished(tmp_path) is None
    aside(tmp_path)
    assert unfinished(tmp_path) is None


def test_what_was_begun(tmp_path: Path) -> None:
    """The record says what; its name says which way."""
    made = aside(tmp_path)
    (made / AHEAD).write_bytes(moves_text(MOVES))
    assert unfinished(tmp_path) == Unfinished(MOVES, False)
    (made / AHEAD).rename(made / BACK)
    assert unfinished(tmp_path) == Unfinished(MOVES, True)


def test_what_is_none_of_ours(tmp_path: Path) -> None:
    """A link, a file, a record that is a link, no record at all, or too long to be one."""
    (tmp_path / ASIDE).symlink_to(tmp_path)
    assert unfinished(tmp_path) == Unfinished(None, False)
    (tmp_path / ASIDE).unlink()
    (tmp_path / ASIDE).write_bytes(b"")
    assert unfinished(tmp_path) == Unfinished(None, False)
    (tmp_path / ASIDE).unlink()
    made = aside(tmp_path)
    (tmp_path / "real").write_bytes(moves_text(MOVES))
    (made / AHEAD).symlink_to(tmp_path / "real")
    assert unfinished(tmp_path) == Unfinished(None, False)
    (made / AHEAD).unlink()
    (made / AHEAD).write_bytes(moves_text(MOVES) + b" " * RECORD_BYTES)
    assert unfinished(tmp_path) == Unfinished(None, False)


def test_a_strangers_record_is_not_followed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """In a shared folder somebody else could lay moves for us to make."""
    made = aside(tmp_path)
    (made / AHEAD).write_bytes(moves_text(MOVES))
    monkeypatch.setattr(os, "geteuid", lambda: made.stat().st_uid + 1)
    assert unfinished(tmp_path) == Unfinished(None, False)
