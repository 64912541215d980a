"""What an interrupted run began is ended: ahead, or back, or with somebody's own files left alone."""

from __future__ import annotations

import os
import shutil
from dataclasses import replace
from pathlib import Path
from unittest.mock import patch

import pytest

from budgetfix.base.moves import AHEAD, ASIDE, Move, Stamp, links_of, moves_of
from budgetfix.exports import files, moves
from budgetfix.exports.files import HalfMoved, write_whole
from budgetfix.exports.moves import Astray, Carried, ChangedMeanwhile, carry_on, stamp, sweep
from tests.exports.test_files import contents

OLD = {"buy.csv": b"old buy", "plan.xlsx": b"old plan", "gone.txt": b"old gone"}
NEW = {"buy.csv": b"new buy.", "do.csv": b"new do", "plan.xlsx": b"new plan."}


class Killed(BaseException):
    """Stands for the end of the process: nothing of the product's is to run after it."""


def killed(folder: Path, moved: int) -> tuple[Move, ...]:
    """A run over the earlier files that ends after so many moves; gives what its record says."""
    for name, data in OLD.items():
        (folder / name).write_bytes(data)
    real, done = moves._ahead, 0

    def ahead(where: Path, at: int, move: Move) -> None:
        nonlocal done
        if done == moved:
            raise Killed
        done += 1
        real(where, at, move)

    with (
        patch.object(moves, "_ahead", ahead),
        patch.object(files, "_taken_back", lambda *_: None),
        pytest.raises(Killed),
    ):
        write_whole(folder, NEW, ["gone.txt"])
    found = moves_of((folder / ASIDE / AHEAD).read_bytes())
    assert found is not None
    return found


@pytest.mark.parametrize("moved", range(4))
def test_what_was_begun_is_ended(tmp_path: Path, moved: int) -> None:
    """Wherever it stopped: all new files are there, what was to go is gone, nothing hidden is left."""
    left = killed(tmp_path, moved)
    assert [move.name for move in left] == ["buy.csv", "do.csv", "plan.xlsx", "gone.txt"]
    assert carry_on(tmp_path, left, back=False) == Carried(ahead=True)
    assert contents(tmp_path) == NEW


@pytest.mark.parametrize("moved", range(4))
def test_what_was_begun_is_taken_back(tmp_path: Path, moved: int) -> None:
    """Wherever it stopped: every earlier file is there again."""
    left = killed(tmp_path, moved)
    assert carry_on(tmp_path, left, back=True) == Carried(ahead=False)
    assert contents(tmp_path) == OLD


def test_a_file_saved_before_it_was_moved_over_takes_all_back(tmp_path: Path) -> None:
    """What was typed since the kill stays, and the files beside it are those that it belongs to."""
    left = killed(tmp_path, 2)
    (tmp_path / "plan.xlsx").write_bytes(b"old plan with a tick")
    assert carry_on(tmp_path, left, back=False) == Carried(ahead=False, theirs=("plan.xlsx",))
    assert contents(tmp_path) == OLD | {"plan.xlsx": b"old plan with a tick"}


def test_a_new_file_saved_since_stays_and_the_rest_is_moved(tmp_path: Path) -> None:
    """The new workbook was there already, and somebody ticked it."""
    left = killed(tmp_path, 3)
    (tmp_path / "plan.xlsx").write_bytes(b"new plan with a tick")
    assert carry_on(tmp_path, left, back=False) == Carried(ahead=True)
    assert contents(tmp_path) == NEW | {"plan.xlsx": b"new plan with a tick"}


def test_both_saved_since_are_left_alone(tmp_path: Path) -> None:
    """A new file and an earlier one were typed into: neither is lost, and which one stayed is told."""
    left = killed(tmp_path, 1)
    (tmp_path / "buy.csv").write_bytes(b"new buy with more")
    (tmp_path / "plan.xlsx").write_bytes(b"old plan with a tick")
    assert carry_on(tmp_path, left, back=False) == Carried(ahead=True, theirs=("plan.xlsx",))
    assert contents(tmp_path) == {
        "buy.csv": b"new buy with more", "do.csv": NEW["do.csv"], "plan.xlsx": b"old plan with a tick",
    }  # fmt: skip


def test_ending_it_may_be_interrupted_as_well(tmp_path: Path) -> None:
    """Back and back again, stopped after each file: the second time finds its way."""
    left = killed(tmp_path, 3)
    (tmp_path / ASIDE / AHEAD).rename(tmp_path / ASIDE / "back.json")
    real, done = moves._back, 0

    def once(folder: Path, at: int, place: Path) -> None:
        nonlocal done
        if done == 1:
            raise Killed
        done += 1
        real(folder, at, place)

    with patch.object(moves, "_back", once), pytest.raises(Killed):
        carry_on(tmp_path, left, back=True)
    assert carry_on(tmp_path, left, back=True) == Carried(ahead=False)
    assert contents(tmp_path) == OLD


def test_a_record_never_leads_out_of_the_folder(tmp_path: Path) -> None:
    """Not by a link either."""
    (tmp_path / "job" / ASIDE).mkdir(parents=True)
    (tmp_path / "job" / "out").symlink_to(tmp_path)
    with pytest.raises(Astray):
        carry_on(tmp_path / "job", [Move("out/a.txt", None, Stamp(1, 1))], back=False)


def test_moves_go_on_through_a_link_that_was_there_when_they_began(tmp_path: Path) -> None:
    """Its own number and the moment it was made are in the record; a link made anew, or guessed, leads nowhere."""
    for name in ("street", "quay", "other"):
        (tmp_path / name).mkdir()
    link = tmp_path / "street" / "quay"
    link.symlink_to(tmp_path / "quay")
    refusing = patch.object(moves, "_ahead", side_effect=Killed)
    with refusing, patch.object(files, "_taken_back", lambda *_: None), pytest.raises(Killed):
        write_whole(tmp_path / "street", {"quay/buy.csv": b"new"})
    record = (tmp_path / "street" / ASIDE / AHEAD).read_bytes()
    left, links = moves_of(record), links_of(record)
    assert left is not None
    (seen,) = links
    for wrong in (
        replace(seen, number=seen.number + 1),
        replace(seen, made_ns=seen.made_ns - 1),
        replace(seen, name="x"),
    ):
        with pytest.raises(Astray):
            carry_on(tmp_path / "street", left, False, (wrong,))
    with pytest.raises(Astray):
        carry_on(tmp_path / "street", [Move("quay/deeper/a.txt", None, Stamp(1, 1))], False, links)
    link.rename(tmp_path / "kept")
    link.symlink_to(tmp_path / "other")
    with pytest.raises(Astray):
        carry_on(tmp_path / "street", left, False, links)
    assert contents(tmp_path / "other") == contents(tmp_path / "quay") == {}


def test_an_untouched_link_is_followed(tmp_path: Path) -> None:
    """The new file is where the link leads, and the link is still one."""
    (tmp_path / "street").mkdir()
    (tmp_path / "quay").mkdir()
    (tmp_path / "street" / "quay").symlink_to("../quay")
    refusing = patch.object(moves, "_ahead", side_effect=Killed)
    with refusing, patch.object(files, "_taken_back", lambda *_: None), pytest.raises(Killed):
        write_whole(tmp_path / "street", {"quay/buy.csv": b"new"})
    record = (tmp_path / "street" / ASIDE / AHEAD).read_bytes()
    assert carry_on(tmp_path / "street", moves_of(record) or (), False, links_of(record)) == Carried(ahead=True)
    assert contents(tmp_path / "quay") == {"buy.csv": b"new"}
    assert (tmp_path / "street" / "quay").is_symlink()


def test_where_no_second_names_can_be_given(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """On disks without hard links the earlier file is copied instead, and can be put back."""

    def no_links(*_: object) -> None:
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr(os, "link", no_links)
    left = killed(tmp_path, 3)
    assert carry_on(tmp_path, left, back=True) == Carried(ahead=False)
    assert contents(tmp_path) == OLD
    write_whole(tmp_path, NEW, ["gone.txt"])
    assert contents(tmp_path) == NEW


def test_a_link_in_a_files_place_is_put_back_as_a_link(tmp_path: Path) -> None:
    """The file that it leads to is never written into."""
    (tmp_path / "real.csv").write_bytes(b"mine")
    (tmp_path / "job").mkdir()
    (tmp_path / "job" / "buy.csv").symlink_to(tmp_path / "real.csv")
    failing = patch.object(moves, "sync_all", side_effect=[OSError(5, "Input/output error"), None])
    with failing, pytest.raises(OSError, match="Input/output"):
        write_whole(tmp_path / "job", {"buy.csv": b"new"})
    assert (tmp_path / "job" / "buy.csv").is_symlink()
    write_whole(tmp_path / "job", {"buy.csv": b"new"})
    assert not (tmp_path / "job" / "buy.csv").is_symlink()
    assert (tmp_path / "real.csv").read_bytes() == b"mine"


def test_a_file_saved_while_the_others_are_moved(tmp_path: Path) -> None:
    """By a program that writes into the file it has open: all is put back, with what it wrote."""
    (tmp_path / "a.csv").write_bytes(b"old")
    (tmp_path / "b.csv").write_bytes(b"old")
    with (tmp_path / "a.csv").open("ab") as held_open:
        real = os.replace

        def saved(source: Path, target: Path) -> None:
            real(source, target)
            if Path(target).name == "a.csv" and Path(source).name.startswith("new-"):
                held_open.write(b" and more")
                held_open.flush()

        with patch.object(os, "replace", saved), pytest.raises(ChangedMeanwhile, match=r"a\.csv"):
            write_whole(tmp_path, {"a.csv": b"new", "b.csv": b"new"})
    assert contents(tmp_path) == {"a.csv": b"old and more", "b.csv": b"old"}


def test_moves_that_can_be_neither_ended_nor_taken_back(tmp_path: Path) -> None:
    """The record stays for the next run; nothing else is written over it."""
    error = OSError(5, "Input/output error")
    with (
        patch.object(files, "move_in", side_effect=error),
        patch.object(files, "move_back", side_effect=error),
        pytest.raises(HalfMoved),
    ):
        write_whole(tmp_path, {"a.csv": b"new"})
    with pytest.raises(FileExistsError, match=ASIDE):
        write_whole(tmp_path, {"a.csv": b"newer"})


def test_what_lies_aside_unmoved_is_swept(tmp_path: Path) -> None:
    """New files of a run that was killed before it moved any; but a link in that place is not followed."""
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "new-0").write_bytes(b"mine")
    shutil.copytree(tmp_path / "mine", tmp_path / ASIDE)
    sweep(tmp_path)
    assert contents(tmp_path) == {"mine/new-0": b"mine"}
    (tmp_path / ASIDE).symlink_to(tmp_path / "mine")
    with pytest.raises(FileExistsError, match=ASIDE):
        sweep(tmp_path)
    assert contents(tmp_path / "mine") == {"new-0": b"mine"}


def test_how_a_file_looks_from_outside(tmp_path: Path) -> None:
    """Its size and its time; none where there is none, that of the link where it leads nowhere."""
    assert stamp(tmp_path / "none") is None
    (tmp_path / "a").write_bytes(b"abc")
    os.utime(tmp_path / "a", ns=(5, 7_000_000_000))
    assert stamp(tmp_path / "a") == Stamp(3, 7_000_000_000)
    (tmp_path / "b").symlink_to("nowhere")
    found = stamp(tmp_path / "b")
    assert found is not None
    assert found.size == len("nowhere")
    with pytest.raises(IsADirectoryError):
        stamp(tmp_path)
