"""A folder in one run's hands, and which folders an earlier run is ended for."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.base.moves import AHEAD, ASIDE, Move, moves_text
from budgetfix.exports.moves import Astray, stamp
from budgetfix.pipeline.holding import Ended, holding, left_over
from tests.pipeline.street import write_street


def left(folder: Path, name: str) -> None:
    """An interrupted run: one new file, not yet in its place."""
    aside = folder / ASIDE
    aside.mkdir()
    (aside / "new-0").write_bytes(b"new")
    (aside / AHEAD).write_bytes(moves_text((Move(name, None, stamp(aside / "new-0")),)))


def test_nothing_left(tmp_path: Path) -> None:
    """Most runs find nothing to end; new files that nobody was to move are swept."""
    (tmp_path / ASIDE).mkdir()
    assert not left_over(tmp_path)
    with holding(tmp_path) as ended:
        assert ended == ()
    assert list(tmp_path.iterdir()) == []


def test_the_folder_above_is_not_looked_through(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It may be large, or nobody's to read; without a record in it there is nothing to look for."""
    (tmp_path / "job").mkdir()
    monkeypatch.setattr(Path, "iterdir", lambda _: pytest.fail("looked through a folder"))
    assert not left_over(tmp_path / "job")


def test_what_was_left_here_and_in_the_folder_above(tmp_path: Path) -> None:
    """A house is mended from its street; another folder's matters are not its own."""
    write_street(tmp_path)
    left(tmp_path, "pine/plan.html")
    assert not left_over(tmp_path / "elm-street")
    assert left_over(tmp_path / "pine")
    with holding(tmp_path / "pine") as ended:
        assert ended == (Ended(str(tmp_path), True, ()),)
    assert (tmp_path / "pine" / "plan.html").read_bytes() == b"new"
    left(tmp_path / "pine", "plan.ics")
    with holding(tmp_path / "pine") as ended:
        assert ended == (Ended(str(tmp_path / "pine"), True, ()),)
    assert not (tmp_path / "pine" / ASIDE).exists()


def test_a_street_is_mended_house_by_house(tmp_path: Path) -> None:
    """Before all houses are written together, what was begun in each of them is ended."""
    write_street(tmp_path)
    left(tmp_path / "pine", "plan.ics")
    (tmp_path / "elm-street" / ASIDE).mkdir()
    with holding(tmp_path, ("elm-street", "oak-lane", "pine")) as ended:
        assert ended == (Ended(str(tmp_path / "pine"), True, ()),)
    assert (tmp_path / "pine" / "plan.ics").read_bytes() == b"new"
    assert list(tmp_path.rglob(ASIDE)) == []


def test_a_record_of_somebody_else(tmp_path: Path) -> None:
    """It is not ended, and nothing is written beside it."""
    (tmp_path / ASIDE).write_bytes(b"mine")
    with pytest.raises(Astray, match=ASIDE), holding(tmp_path):
        raise AssertionError("held all the same")
