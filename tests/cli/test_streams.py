"""Streams that are shut or full: the files are written all the same, and nothing ends in a traceback."""

from __future__ import annotations

import errno
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from budgetfix.cli.streams import CannotShow, reaching

REPO = Path(__file__).resolve().parents[2]
FULL = Path("/dev/full")
"""Linux's device that is always full."""
WRITTEN = ("buy.csv", "do.csv", "plan.html", "plan.ics", "plan.xlsx")


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """One fault, one remedy."""
    folder = tmp_path / "den"
    folder.mkdir()
    (folder / "faults.csv").write_text("fault,points\nstain,80\n", encoding="utf-8")
    (folder / "catalog.csv").write_text("remedy,answers,cost,hours\nwash,stain:1,2,0.5\n", encoding="utf-8")
    (folder / "brief.yaml").write_text("currency: EUR\nbudget: 5\nhours: [1]\nordered: 2026-06-01\n", encoding="utf-8")
    return folder


def run(line: str, job: Path) -> subprocess.CompletedProcess[str]:
    """A shell line in which `"$@"` is the command."""
    return subprocess.run(
        ["sh", "-c", line, "sh", sys.executable, "-m", "budgetfix"],
        cwd=job.parent,
        env=os.environ | {"PYTHONPATH": str(REPO)},
        capture_output=True,
        text=True,
        timeout=120,
    )


@pytest.mark.parametrize("shut", [">&-", "2>&-", "<&-", ">&- 2>&-", "<&- >&- 2>&-"])
def test_a_plan_is_written_though_streams_are_shut(shut: str, job: Path) -> None:
    """Whichever of the three are shut: no file holds a word that was meant for one of them."""
    shutil.copytree(job, job.parent / "plain" / "den")
    assert run('cd plain && exec "$@" plan den', job).returncode == 0
    done = run(f'exec "$@" plan den {shut}', job)
    assert (done.returncode, done.stderr) == (0, "")
    for name in WRITTEN:
        assert (job / name).read_bytes() == (job.parent / "plain" / "den" / name).read_bytes(), name


@pytest.mark.parametrize("shut", [">&-", "<&- >&-", "<&- >&- 2>&-"])
def test_houses_are_planned_though_streams_are_shut(shut: str, job: Path) -> None:
    """Other processes plan them: theirs are shut no more than those of the first."""
    for name in ("den", "attic"):
        shutil.copytree(job, job.parent / "street" / name)
    done = run(f'exec "$@" plan street {shut}', job)
    assert (done.returncode, done.stderr) == (0, "")
    assert all((job.parent / "street" / house / name).stat().st_size for house in ("den", "attic") for name in WRITTEN)


@pytest.mark.parametrize("shut", ["<&-", "<&- >&-"])
def test_a_shut_stream_is_nothing_to_warn_of(shut: str, job: Path) -> None:
    """Where every warning is an error, and unclosed files are told."""
    done = run(f'exec "$1" -X dev -W error -m budgetfix plan den {shut}', job)
    assert (done.returncode, done.stderr) == (0, "")


@pytest.mark.skipif(not FULL.exists(), reason="NOT RUN: this system has no device that is always full")
@pytest.mark.parametrize("words", ["plan den", "plan den --json", "inspect den", "rules --json"])
def test_a_full_disk_behind_the_screen_is_told(words: str, job: Path) -> None:
    """Exit code 2 and one sentence, with the files of a plan in their places."""
    done = run(f'exec "$@" {words} > {FULL}', job)
    assert done.returncode == 2
    assert done.stderr == (
        "What is to be shown here cannot be written: No space left on device. Files are as they should be.\n"
    )
    assert all((job / name).exists() == words.startswith("plan") for name in WRITTEN)


@pytest.mark.skipif(not FULL.exists(), reason="NOT RUN: this system has no device that is always full")
def test_with_no_stream_left_the_exit_code_tells(job: Path) -> None:
    """Neither a traceback nor another code where not even the sentence can be written."""
    assert run(f'exec "$@" inspect den > {FULL} 2> {FULL}', job).returncode == 2
    assert run(f'exec "$@" inspect nowhere 2> {FULL}', job).returncode == 2


def test_a_reader_that_has_gone_ends_the_command_quietly(job: Path) -> None:
    """`head` closes the pipe: nothing on standard error."""
    done = run('"$@" rules --json | head -n 1', job)
    assert (done.stdout, done.stderr) == ("[\n", "")


def test_what_a_stream_refuses_is_told_in_words(monkeypatch: pytest.MonkeyPatch) -> None:
    """The system's reason in words; a pipe whose reader has gone is left to the command line."""
    turned = list[int]()
    monkeypatch.setattr(os, "dup2", lambda _, number: turned.append(number))
    with pytest.raises(CannotShow, match="No space left on device"), reaching("stderr"):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
    assert turned == [2]
    with pytest.raises(BrokenPipeError), reaching("stdout"):
        raise BrokenPipeError
    assert turned == [2]
