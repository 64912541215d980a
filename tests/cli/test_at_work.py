"""Commands whose folder is in other hands, or was left half written: what they say, word for word."""

from __future__ import annotations

import errno
import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from unittest.mock import Mock, patch

import pytest
import typer

from budgetfix.base.moves import ASIDE, Move
from budgetfix.cli import at_work, say
from budgetfix.cli.room_after import room_written
from budgetfix.exports import files, moves
from budgetfix.exports.lock import Busy
from budgetfix.exports.moves import ChangedMeanwhile
from budgetfix.pipeline import planning, writing
from tests.cli.test_commands import job, typed
from tests.cli.test_replan import planned, tick
from tests.exports.sample_book import BOOK
from tests.exports.test_files import contents
from tests.pipeline.street import write_catalog, write_street


@pytest.fixture(autouse=True)
def _desk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every command is typed in a folder of its own, on a wide terminal; nobody waits long."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "200")
    monkeypatch.setattr(at_work, "WAIT_SECONDS", 0.01)


def refused(*words: str) -> str:
    """What a command says that ends with 2, and prints nothing else; nothing in its folder is changed."""
    before = contents(Path.cwd())
    done = typed(*words)
    assert (done.exit_code, done.stdout) == (2, "")
    assert contents(Path.cwd()) == before
    return done.stderr.strip()


HOLDS = "import sys\nfrom pathlib import Path\nfrom budgetfix.exports.lock import held\n"
HOLDS += "with held([Path(sys.argv[1])]):\n    print('held', flush=True)\n    sys.stdin.read()\n"


@contextmanager
def somebody_at_work(folder: Path) -> Iterator[subprocess.Popen[str]]:
    """Another process holds the folder, as a run does."""
    paths = os.pathsep.join(sys.path)
    words = [sys.executable, "-c", HOLDS, str(folder)]
    with subprocess.Popen(
        words, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, env={**os.environ, "PYTHONPATH": paths}
    ) as other:
        assert other.stdout is not None
        assert other.stdout.readline() == "held\n"
        try:
            yield other
        finally:
            other.kill()


BUSY = "Another run of budgetfix is at work in {}. Wait until it is done, then run this again. Nothing was written."


def test_two_runs_in_one_folder() -> None:
    """The second says so; once the first is killed, nothing of it is in the way."""
    folder = planned()
    with somebody_at_work(folder) as other:
        assert refused("plan", "job") == BUSY.format("job")
        assert refused("replan", "job", "--day", "2026-06-01") == BUSY.format("job")
        other.kill()
        other.wait()
        assert typed("plan", "job", "-q").exit_code == 0


def test_one_house_of_a_street_in_other_hands() -> None:
    """All houses are held while they are planned together, so one that is being planned is told by its name."""
    write_street(Path("street"))
    with somebody_at_work(Path("street/oak-lane")):
        assert refused("plan", "street") == BUSY.format("street/oak-lane")


OPEN = (
    "{0}plan.xlsx is open in another program. Save it and close it there, then run this again.\n"
    "If nobody has it open, delete {0}{1}. Nothing was written."
)


@pytest.mark.parametrize("lock", [".~lock.plan.xlsx#", "~$plan.xlsx"])
def test_a_workbook_open_in_another_program(lock: str) -> None:
    """Before any work is done: which file, what to do, and which file to delete if it is a mistake."""
    folder = planned()
    (folder / lock).write_bytes(b",somebody,desk,;")
    assert refused("plan", "job") == OPEN.format("job/", lock)
    assert refused("replan", "job", "--day", "2026-06-01") == OPEN.format("job/", lock)
    write_street(Path("street"))
    (Path("street/pine") / lock).write_bytes(b"somebody")
    assert refused("plan", "street") == OPEN.format("street/pine/", lock)


def test_a_workbook_saved_while_the_plan_was_made() -> None:
    """What was ticked in the meantime is not written over: `plan` sends to `replan`."""
    folder = planned()
    real = files.write_whole

    def ticked_first(*args: object, **words: object) -> None:
        tick(folder, "Do", "i1#1", "x")
        real(*args, **words)  # type: ignore[arg-type]

    with patch("budgetfix.pipeline.writing.write_whole", ticked_first):
        done = typed("plan", "job")
    assert (done.exit_code, done.stderr.splitlines()[0]) == (
        2,
        "job/plan.xlsx holds ticks or figures of yours, and is not written over.",
    )


def test_a_file_saved_at_the_last_moment() -> None:
    """Between the last look and the move somebody saved it: told, and all is as it was."""
    planned()
    with patch.object(files, "move_in", side_effect=ChangedMeanwhile("job/plan.xlsx")):
        assert refused("plan", "job") == (
            "job/plan.xlsx was changed while the plan was made: nothing was written. Save it, and run this again."
        )


@contextmanager
def killed_after(moved: int) -> Iterator[None]:
    """A run that ends in the middle of its moves: what comes after is not done, as if the process were gone."""

    class Killed(BaseException):
        """Stands for the end of the process: nothing of the product's is to run after it."""

    real = moves._ahead
    done = 0

    def ahead(folder: Path, at: int, move: Move) -> None:
        nonlocal done
        if done == moved:
            raise Killed
        done += 1
        real(folder, at, move)

    kill = patch.object(moves, "_ahead", ahead)
    with kill, patch.object(files, "_taken_back", lambda *_: None), pytest.raises(Killed):
        yield


@pytest.mark.parametrize("words", [("inspect",), ("compare", "--budget", "5"), ("plan",)])
def test_the_next_run_ends_what_was_begun(words: tuple[str, ...]) -> None:
    """Reading or writing, it says so in one line on standard error."""
    folder = planned()
    before = contents(folder)
    html, calendar = b"<!DOCTYPE html> new", b"new calendar"
    with killed_after(1):
        files.write_whole(folder, {"plan.html": html, "plan.ics": calendar})
    assert contents(folder)["plan.ics"] == before["plan.ics"]
    done = typed(words[0], "job", *words[1:], "-q")
    assert (done.exit_code, done.stderr.strip()) == (
        0,
        "An earlier run was ended while it wrote into job. What it had begun is now done: all of its lists are there.",
    )
    if words[0] != "plan":
        assert contents(folder) == before | {"plan.html": html, "plan.ics": calendar}


def test_ticks_typed_after_a_kill_take_the_rest_back() -> None:
    """The new workbook was not there yet, and somebody ticked the earlier one: its lists are as they were."""
    folder = planned()
    before = contents(folder)
    with killed_after(1):
        files.write_whole(folder, {"plan.html": b"new", "plan.xlsx": b"new"})
    tick(folder, "Do", "i1#1", "x")
    done = typed("inspect", "job", "-q")
    assert (done.exit_code, done.stderr.strip()) == (
        0,
        "An earlier run was ended while it wrote into job. "
        "plan.xlsx was saved since, so its lists are as they were before it.",
    )
    after = contents(folder)
    assert after.pop("plan.xlsx") != before.pop("plan.xlsx")
    assert after == before


def test_a_house_is_mended_from_the_folder_above() -> None:
    """A portfolio was killed; the next command is about one of its houses."""
    write_street(Path("street"))
    with killed_after(1):
        files.write_whole(Path("street"), {"elm-street/plan.html": b"new", "pine/plan.html": b"new"})
    done = typed("inspect", "street/pine", "-q")
    assert done.stderr.strip() == (
        "An earlier run was ended while it wrote into street. "
        "What it had begun is now done: all of its lists are there."
    )
    assert Path("street/pine/plan.html").read_bytes() == b"new"


@pytest.mark.parametrize("words", [("inspect", "street"), ("inspect", "street/quay"), ("plan", "street/quay")])
def test_a_house_that_is_a_link_is_ended_like_the_others(words: tuple[str, str]) -> None:
    """It leads out of the street, and was a link when the run began: from the street or by itself, it is known."""
    write_street(Path("street"))
    Path("street/pine").rename("quay")
    write_catalog(Path())
    Path("street/quay").symlink_to("../quay")
    with killed_after(1):
        files.write_whole(Path("street"), {"elm-street/plan.html": b"new", "quay/plan.html": b"new"})
    assert not Path("quay/plan.html").exists()
    done = typed(*words, "-q")
    assert (done.exit_code, done.stderr.strip()) == (
        0,
        "An earlier run was ended while it wrote into street. "
        "What it had begun is now done: all of its lists are there.",
    )
    assert Path("street/elm-street/plan.html").read_bytes() == b"new"
    assert Path("quay/plan.html").exists()
    assert Path("street/quay").is_symlink()


def test_a_house_on_another_disk_is_named_as_it_was_typed() -> None:
    """The house, not the hidden file that could not be moved there; the other houses are as they were."""
    write_street(Path("street"))
    real = os.replace

    def other_disk(source: Path, target: Path) -> None:
        if "oak-lane" in Path(target).parts:
            raise OSError(errno.EXDEV, os.strerror(errno.EXDEV), str(source), None, str(target))
        real(source, target)

    with patch.object(os, "replace", other_disk):
        assert refused("plan", "street") == (
            "street/oak-lane cannot be written to: Invalid cross-device link. Nothing was written.\n"
            "It is on another disk than the folder. Plan it by itself, or move it there."
        )


def test_a_record_that_came_with_the_folder() -> None:
    """Moves out of the folder are nobody's of ours: nothing is moved, and people are told what to do."""
    folder = job()
    aside = folder / ASIDE
    aside.mkdir()
    (aside / "new-0").write_bytes(b"evil")
    (aside / "moves.json").write_text('{"budgetfix moves": [["../out.txt", null, [4, 1]]]}', encoding="utf-8")
    assert refused("plan", "job") == (
        f"job/{ASIDE} is not what budgetfix leaves there, and may have come with the folder. "
        "Move it away, then run this again."
    )
    assert not Path("out.txt").exists()


@pytest.mark.parametrize(
    ("number", "todo"),
    [
        (errno.ENOSPC, "Make room on that disk, then run this again."),
        (errno.EROFS, "Nothing can be written on that disk. Copy the job to another one."),
        (errno.ENAMETOOLONG, "Give the folder, or what the file is named after, a shorter name."),
        (errno.EXDEV, "It is on another disk than the folder. Plan it by itself, or move it there."),
    ],
)
def test_what_cannot_be_written(number: int, todo: str) -> None:
    """Which file, why, that nothing was written, and what to do."""
    planned()
    error = OSError(number, os.strerror(number), "job/buy.csv")
    with patch.object(files, "move_in", side_effect=error):
        assert refused("plan", "job") == (
            f"job/buy.csv cannot be written to: {os.strerror(number)}. Nothing was written.\n{todo}"
        )


def test_what_can_be_moved_neither_on_nor_back() -> None:
    """The one case in which files are changed all the same: they are whole, and the next run ends it."""
    folder = planned()
    error = OSError(errno.EIO, os.strerror(errno.EIO))
    with patch.object(files, "move_in", side_effect=error), patch.object(files, "move_back", side_effect=error):
        done = typed("plan", "job")
    assert (done.exit_code, done.stderr.strip()) == (
        2,
        "job could be written only in part, and what was there not be put back: Input/output error.\n"
        "Each file is whole, the earlier or the new one. Once that is mended, run this again: it ends what was begun.",
    )
    assert typed("inspect", "job", "-q").stderr.strip() == (
        "An earlier run was ended while it put the lists in job back as they were. That is now done."
    )
    assert not (folder / ASIDE).exists()


def test_a_folder_that_went_while_its_plan_was_made() -> None:
    """It is not made again for a plan alone."""
    folder = planned()
    real = planning.planned

    def gone_meanwhile(*args: object) -> object:
        book = real(*args)  # type: ignore[arg-type]
        folder.rename("elsewhere")
        return book

    with patch.object(planning, "planned", gone_meanwhile):
        done = typed("plan", "job")
    assert (done.exit_code, done.stderr.strip()) == (
        2,
        "job cannot be written to: No such file or directory. Nothing was written.\n"
        "It was taken away meanwhile. Put it back, then run this again.",
    )
    assert not folder.exists()


@pytest.mark.parametrize(
    ("error", "why"),
    [
        (Busy("next"), "another run is at work in next"),
        (ChangedMeanwhile("next/room.yaml"), "somebody else was writing there"),
        (OSError(errno.EEXIST, "File exists"), "File exists"),
    ],
)
def test_the_room_after_cannot_be_written(error: Exception, why: str) -> None:
    """The lists are there by then, and that is said."""
    failing = patch("budgetfix.pipeline.writing.write_room", side_effect=error)
    with failing, pytest.raises(typer.Exit), patch.object(say, "err") as said:
        room_written(Path("next/room.yaml"), Mock(), BOOK)
    said.assert_called_once_with(f"The lists are written, but next/room.yaml could not be: {why}.")


def test_the_room_after_is_written_over_no_other_file() -> None:
    """Also where one came there while the plan was made."""
    Path("room.yaml").write_bytes(b"mine")
    parts = patch.multiple(writing, as_surveyed=Mock(), still_listed=Mock(), survey_yaml=lambda *_: b"new")
    with parts, pytest.raises(FileExistsError):
        writing.write_room(Path("room.yaml"), Mock(), Mock())
    assert contents(Path.cwd()) == {"room.yaml": b"mine"}
