"""One run at a time in a folder; a lock ends with its process."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from budgetfix.exports.files import write_whole
from budgetfix.exports.lock import Busy, held

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="the other process is forked here")


def in_another_process(folder: Path) -> bool:
    """Whether another process could hold the folder now. It is told by the way that process ends."""
    child = os.fork()
    if not child:
        code = 1
        try:
            from budgetfix.exports import lock

            lock._OURS.clear()
            with held([folder]):
                code = 0
        except Busy:
            code = 2
        finally:
            os._exit(code)
    return {0: True, 2: False}[os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])]


def test_what_is_held_is_held_by_one(tmp_path: Path) -> None:
    """Others cannot have it meanwhile; the process itself may ask again, and holds on until the first asking ends."""
    assert in_another_process(tmp_path)
    with held([tmp_path]):
        assert not in_another_process(tmp_path)
        with held([tmp_path, tmp_path / "."]):
            write_whole(tmp_path, {"plan.csv": b"1"})
        assert not in_another_process(tmp_path)
    assert in_another_process(tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == ["plan.csv"]


def test_all_or_none_are_held(tmp_path: Path) -> None:
    """Where one of several is missing, the others are free again."""
    with pytest.raises(FileNotFoundError), held([tmp_path, tmp_path / "none"]):
        raise AssertionError("held what is not there")
    assert in_another_process(tmp_path)
