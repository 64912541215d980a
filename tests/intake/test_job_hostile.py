"""A job folder whose files are no files, and catalogues named where none can be: refused in words, none waited for."""

from __future__ import annotations

import os
from datetime import date
from pathlib import Path

import pytest

from budgetfix.base.problems import FileProblem, FilesRefused, Place
from budgetfix.pipeline.reading import JobOptions, read
from tests.trials.hostile_texts import PLAIN, files

WANTED = "a catalogue that is there (.xlsx, .yaml or .csv)"


def laid_out(folder: Path) -> Path:
    """A small job with nothing wrong."""
    folder.mkdir()
    for name, data in files(PLAIN).items():
        (folder / name).write_bytes(data)
    return folder


def said(folder: Path) -> list[str]:
    """Problems of a job; none where it is read."""
    try:
        read(folder, JobOptions(), date(2026, 5, 20))
    except FilesRefused as refused:
        return [str(problem) for problem in refused.problems]
    return []


@pytest.mark.parametrize("name", ["brief.yaml", "catalog.yaml", "faults.csv"])
def test_what_is_no_file_is_not_passed_over(name: str, tmp_path: Path) -> None:
    """A brief that is a pipe or a folder would be missed without a word: no budget, no musts."""
    for kind in ("pipe", "folder", "gone"):
        folder = laid_out(tmp_path / kind)
        (folder / name).unlink()
        if kind == "pipe":
            os.mkfifo(folder / name)
        elif kind == "folder":
            (folder / name).mkdir()
        else:
            (folder / name).symlink_to("nowhere")
        assert any(name in line for line in said(folder)), (kind, name)


@pytest.mark.parametrize(
    "typed",
    ["http://a.invalid/c.yaml", "file:///etc/passwd", "//a.invalid/c.yaml", "\\\\a.invalid\\c.yaml", "~/c.yaml",
     "/etc/passwd", "/dev/zero", "..", "x" * 290 + ".yaml"],
)  # fmt: skip
def test_a_catalogue_that_is_no_file_of_ours(typed: str, tmp_path: Path) -> None:
    """Addresses, other computers, homes, devices, folders, files of other sorts: one line, at the brief's own line."""
    folder = laid_out(tmp_path / "job")
    (folder / "brief.yaml").write_text(f"ordered: 2026-06-01\ncatalog: '{typed}'\n")
    lines = said(folder)
    assert len(lines) == 1
    assert lines[0].startswith("brief.yaml [line 2] found '")
    assert lines[0].endswith(f"', wanted {WANTED}")


def test_a_catalogue_outside_of_the_folder_is_read(tmp_path: Path) -> None:
    """By a relative path, by an absolute one, and through a link."""
    folder = laid_out(tmp_path / "job")
    (folder / "catalog.yaml").rename(tmp_path / "shared.yaml")
    (folder / "linked.yaml").symlink_to("../shared.yaml")
    for typed in ("../shared.yaml", str(tmp_path / "shared.yaml"), "linked.yaml"):
        (folder / "brief.yaml").write_text(f"ordered: 2026-06-01\ncatalog: '{typed}'\n")
        assert said(folder) == []


def test_a_job_on_another_computer_has_its_own_catalogue(tmp_path: Path) -> None:
    """Who names a folder there wants it read, and the catalogue in it; two slashes are one on this system."""
    folder = laid_out(tmp_path / "job")
    assert said(Path(f"/{folder}")) == []


def test_a_message_does_nothing_on_a_screen() -> None:
    """Whatever was found, and wherever: signs that a terminal obeys are written out."""
    problem = FileProblem(Place("a\x1b[2J.yaml", 0, 1, 1, "line 1"), "'\x1b]0;x\x07'", "words", "\u202eno")
    assert str(problem) == "a\\x1b[2J.yaml [line 1] found '\\x1b]0;x\\x07', wanted words; \\u202eno"


@pytest.mark.parametrize(
    "typed",
    [
        "http://a.invalid/c.yaml",
        "file:///etc/passwd",
        "//a.invalid/c.yaml",
        "\\\\a.invalid\\c.yaml",
        "/\\a.invalid/c.yaml",
    ],
)
def test_a_catalogue_on_another_computer_on_the_command_line(
    typed: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """No such name is even looked for: on some systems looking is reaching out, with one's name and password."""
    asked: list[str] = []
    looked = os.path.isfile

    def heard(path: str) -> bool:
        asked.append(str(path))
        return looked(path)

    monkeypatch.setattr(os.path, "isfile", heard)
    with pytest.raises(FilesRefused) as refused:
        read(laid_out(tmp_path / "job"), JobOptions(catalog=typed), date(2026, 5, 20))
    assert [(one.place, one.wanted) for one in refused.value.problems] == [(Place("--catalog"), WANTED)]
    assert not any(path.replace("\\", "/").startswith("//") for path in asked)
