"""Ctrl-C amid the moves: everything is as it was, or the next run ends what was begun."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping
from pathlib import Path
from unittest.mock import patch

import pytest

from budgetfix.base.moves import AHEAD, ASIDE, BACK, moves_of
from budgetfix.exports.files import write_whole
from budgetfix.exports.moves import carry_on
from tests.exports.test_files import contents
from tests.exports.test_moves import NEW, OLD


def breaking_off(at: Mapping[int, bool]) -> tuple[Callable[[Path, Path], None], list[int]]:
    """A way to move files that is broken off at these of its calls, after the file is moved or before; counts them."""
    real, calls = os.replace, [0]

    def replace(source: Path, target: Path) -> None:
        calls[0] += 1
        if at.get(calls[0], True):
            real(source, target)
        if calls[0] in at:
            raise KeyboardInterrupt

    return replace, calls


def lay(folder: Path) -> None:
    """The earlier files."""
    for name, data in OLD.items():
        (folder / name).write_bytes(data)


def test_how_often_files_are_moved(tmp_path: Path) -> None:
    """The record and three new files: the tests below break off at each of the four."""
    lay(tmp_path)
    replace, calls = breaking_off({})
    with patch.object(os, "replace", replace):
        write_whole(tmp_path, NEW, ["gone.txt"])
    assert (calls, contents(tmp_path)) == ([4], NEW)


@pytest.mark.parametrize("after", [False, True])
@pytest.mark.parametrize("at", range(1, 5))
def test_breaking_off_takes_everything_back(tmp_path: Path, at: int, after: bool) -> None:
    """Just before or just after any of the moves: every earlier file is there, no new one, nothing hidden."""
    lay(tmp_path)
    replace, _ = breaking_off({at: after})
    with patch.object(os, "replace", replace), pytest.raises(KeyboardInterrupt):
        write_whole(tmp_path, NEW, ["gone.txt"])
    assert contents(tmp_path) == OLD
    assert not (tmp_path / ASIDE).exists()


@pytest.mark.parametrize("after", [False, True])
@pytest.mark.parametrize("more", range(1, 4))
def test_breaking_off_twice_leaves_a_record(tmp_path: Path, more: int, after: bool) -> None:
    """Once more while it is taken back: the next run ends it, and all files are of one time."""
    lay(tmp_path)
    replace, _ = breaking_off({4: True, 4 + more: after})
    with patch.object(os, "replace", replace), pytest.raises(KeyboardInterrupt):
        write_whole(tmp_path, NEW, ["gone.txt"])
    back = (tmp_path / ASIDE / BACK).exists()
    left = moves_of((tmp_path / ASIDE / (BACK if back else AHEAD)).read_bytes())
    assert left is not None
    assert carry_on(tmp_path, left, back).theirs == ()
    assert contents(tmp_path) == (OLD if back else NEW)
