from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.exports.files import write_whole


def contents(folder: Path) -> dict[str, bytes]:
    """Every file below a folder."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_files_are_written_and_the_folder_is_made(tmp_path: Path) -> None:
    """All files are there, whole, and nothing else is left behind."""
    write_whole(tmp_path / "new" / "job", {"b.csv": b"b", "a.xlsx": b"a"})
    assert contents(tmp_path) == {"new/job/a.xlsx": b"a", "new/job/b.csv": b"b"}


def test_earlier_files_are_written_over(tmp_path: Path) -> None:
    """A second plan takes the place of the first, other files stay."""
    (tmp_path / "survey.yaml").write_bytes(b"room")
    write_whole(tmp_path, {"plan.xlsx": b"first"})
    write_whole(tmp_path, {"plan.xlsx": b"second"})
    assert contents(tmp_path) == {"plan.xlsx": b"second", "survey.yaml": b"room"}


@pytest.mark.parametrize("blocked", ["a.csv", "m.csv", "z.csv"])
def test_one_blocked_file_leaves_all_as_they_were(tmp_path: Path, blocked: str) -> None:
    """Where one place is taken by a folder, no other file is changed, whichever comes first."""
    for name in {"a.csv", "m.csv", "z.csv"} - {blocked}:
        (tmp_path / name).write_bytes(b"old")
    (tmp_path / blocked).mkdir()
    before = contents(tmp_path)
    with pytest.raises(OSError, match=blocked):
        write_whole(tmp_path, dict.fromkeys(("a.csv", "m.csv", "z.csv"), b"new"))
    assert contents(tmp_path) == before


def test_a_move_that_fails_puts_the_others_back(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A disk that fails at the second move leaves neither the first new file nor a new name behind."""
    import os

    real = os.replace

    def failing(source: Path, target: Path) -> None:
        if Path(target).name == "b.csv" and b"new" in Path(source).read_bytes():
            raise OSError("the disk is full: b.csv")
        real(source, target)

    (tmp_path / "a.csv").write_bytes(b"old")
    monkeypatch.setattr(os, "replace", failing)
    with pytest.raises(OSError, match="full"):
        write_whole(tmp_path, {"a.csv": b"new a", "b.csv": b"new b"})
    assert contents(tmp_path) == {"a.csv": b"old"}


def test_names_with_folders_are_written(tmp_path: Path) -> None:
    """A file may stand in a folder of its own."""
    write_whole(tmp_path, {"drawings/plan.svg": b"<svg/>"})
    assert contents(tmp_path) == {"drawings/plan.svg": b"<svg/>"}
