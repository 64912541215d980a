"""Links planted in a job folder: what is written goes to the folder itself, never to where a link points."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.base.moves import ASIDE
from budgetfix.exports.files import write_whole
from budgetfix.exports.marked import write_marked


def _elsewhere(folder: Path) -> Path:
    """A file beside the job that nobody may touch."""
    (folder / "job").mkdir()
    kept = folder / "kept.txt"
    kept.write_bytes(b"mine")
    return kept


def test_a_link_in_the_place_of_a_list_is_replaced(tmp_path: Path) -> None:
    """The list is a file of its own afterwards; what the link pointed to is as it was."""
    kept = _elsewhere(tmp_path)
    (tmp_path / "job" / "plan.xlsx").symlink_to(kept)
    write_whole(tmp_path / "job", {"plan.xlsx": b"new"})
    assert kept.read_bytes() == b"mine"
    assert (tmp_path / "job" / "plan.xlsx").read_bytes() == b"new"
    assert not (tmp_path / "job" / "plan.xlsx").is_symlink()


def test_links_under_passing_names_are_not_followed(tmp_path: Path) -> None:
    """Names that files have while they are written: whoever knows them cannot have us write elsewhere."""
    kept = _elsewhere(tmp_path)
    for name in (".plan.xlsx.part", ".plan.xlsx.old", ".survey.marked.xlsx.part"):
        (tmp_path / "job" / name).symlink_to(kept)
    write_whole(tmp_path / "job", {"plan.xlsx": b"new"})
    write_marked(tmp_path / "job" / "survey.marked.xlsx", b"marked")
    assert kept.read_bytes() == b"mine"
    assert (tmp_path / "job" / "plan.xlsx").read_bytes() == b"new"
    assert (tmp_path / "job" / "survey.marked.xlsx").read_bytes() == b"marked"


def test_a_link_in_the_place_of_our_hidden_folder_is_refused(tmp_path: Path) -> None:
    """Nothing is written into, or swept out of, the folder that it points to."""
    kept = _elsewhere(tmp_path)
    (tmp_path / "other").mkdir()
    kept.rename(tmp_path / "other" / "kept.txt")
    (tmp_path / "job" / ASIDE).symlink_to(tmp_path / "other")
    with pytest.raises(OSError, match="exists"):
        write_whole(tmp_path / "job", {"plan.xlsx": b"new"})
    assert [path.name for path in (tmp_path / "other").iterdir()] == ["kept.txt"]
    assert not (tmp_path / "job" / "plan.xlsx").exists()
