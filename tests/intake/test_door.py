"""The door for files: ordinary ones up to a size, and nothing that could keep us waiting."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from budgetfix.base.problems import FileProblem
from budgetfix.intake.door import book_bytes, bytes_of, there


def taken(path: Path, most: int = 10) -> tuple[bytes | None, list[str]]:
    """What came in, and what was said."""
    problems: list[FileProblem] = []
    return bytes_of(path, most, problems), [str(problem) for problem in problems]


def test_a_file_comes_in_whole(tmp_path: Path) -> None:
    """To the last byte of the limit; a link to a file is that file."""
    (tmp_path / "a.yaml").write_bytes(b"0123456789")
    (tmp_path / "b.yaml").symlink_to("a.yaml")
    assert taken(tmp_path / "a.yaml") == (b"0123456789", [])
    assert taken(tmp_path / "b.yaml") == (b"0123456789", [])


def test_a_file_that_is_too_large(tmp_path: Path) -> None:
    """Both figures are told."""
    (tmp_path / "a.yaml").write_bytes(b"0123456789-")
    assert taken(tmp_path / "a.yaml") == (None, ["a.yaml found 11 bytes, wanted 10 at most"])


@pytest.mark.parametrize("kind", ["a folder", "a pipe", "a device"])
def test_what_is_no_file_is_refused_without_waiting(kind: str, tmp_path: Path) -> None:
    """A folder, a pipe that nobody writes to, a device without end."""
    path = tmp_path / "a.yaml"
    match kind:
        case "a folder":
            path.mkdir()
        case "a pipe":
            os.mkfifo(path)
        case _:
            path.symlink_to("/dev/zero")
    assert taken(path) == (None, [f"a.yaml found {kind}, wanted an ordinary file"])


def test_what_cannot_be_opened(tmp_path: Path) -> None:
    """A link to nothing, a link to itself, and a name that no system takes."""
    (tmp_path / "gone.yaml").symlink_to("nowhere")
    (tmp_path / "loop.yaml").symlink_to("loop.yaml")
    assert there(tmp_path / "gone.yaml")
    assert not there(tmp_path / "nowhere")
    for path in (tmp_path / "gone.yaml", tmp_path / "loop.yaml", tmp_path / ("x" * 300), tmp_path / "a\0"):
        data, said = taken(path)
        assert data is None
        assert "found a file that cannot be opened (" in said[0]


def test_a_workbook_that_is_too_large_is_not_read_and_what_to_do_is_told(tmp_path: Path) -> None:
    """Photographs make workbooks large; 200 million bytes with nothing in them take no room on the disk."""
    with (tmp_path / "survey.xlsx").open("wb") as file:
        file.truncate(200_000_001)
    problems: list[FileProblem] = []
    assert book_bytes(tmp_path / "survey.xlsx", problems) is None
    assert [str(problem) for problem in problems] == [
        "survey.xlsx found 200,000,001 bytes, wanted 200,000,000 at most; "
        "make the pictures in it smaller, or take them out"
    ]
