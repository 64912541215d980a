"""New files moved into their places, or the earlier ones back, one by one: each step may be the last one of a run."""

from __future__ import annotations

import contextlib
import errno
import os
import shutil
import stat
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from budgetfix.base.moves import AHEAD, ASIDE, BACK, Link, Move, Stamp


class ChangedMeanwhile(Exception):
    """Somebody saved the file after it was read: what was typed since would be lost. Holds its path."""


class Astray(Exception):
    """What lies aside is none of ours: it would move files outside of the folder. Holds its path."""


@dataclass(frozen=True)
class Carried:
    """How an interrupted run was ended. `ahead`: all is new; else all is as it was.

    `theirs`: files that somebody saved since; they were left alone.
    """

    ahead: bool
    theirs: tuple[str, ...] = ()


def new(folder: Path, at: int) -> Path:
    """Where the new file of a move waits."""
    return folder / ASIDE / f"new-{at}"


def old(folder: Path, at: int) -> Path:
    """Where the earlier file of a move is kept."""
    return folder / ASIDE / f"old-{at}"


def stamp(place: Path) -> Stamp | None:
    """How a file looks from outside; None where there is none. Errors: OSError, also for a folder."""
    try:
        seen = place.stat()
    except FileNotFoundError:
        if not place.is_symlink():
            return None
        seen = place.lstat()
    if stat.S_ISDIR(seen.st_mode):
        raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR), str(place))
    return Stamp(seen.st_size, seen.st_mtime_ns)


def move_in(folder: Path, moves: Sequence[Move]) -> None:
    """Every move, in order, and the names that came of it synced. Errors: OSError; ChangedMeanwhile.

    A file that was saved since its stamp was taken is not moved over; neither is one lost that a program still held
    open and wrote into while it gave way.
    """
    _make_folders(folder, moves)
    kept = [stamp(old(folder, at)) for at in range(len(moves))]
    for at, move in enumerate(moves):
        if stamp(folder / move.name) != move.was:
            raise ChangedMeanwhile(str(folder / move.name))
        _ahead(folder, at, move)
    for at, move in enumerate(moves):
        if stamp(old(folder, at)) != kept[at]:
            raise ChangedMeanwhile(str(folder / move.name))
    sync_all(folder, moves)


def _ahead(folder: Path, at: int, move: Move) -> None:
    place = folder / move.name
    if move.new is None:
        place.unlink(missing_ok=True)
        return
    os.replace(new(folder, at), place)


def _make_folders(folder: Path, moves: Sequence[Move]) -> None:
    """Before the first look at a file, so that nothing lies between the last look at it and its move."""
    for move in moves:
        if move.new is not None:
            (folder / move.name).parent.mkdir(parents=True, exist_ok=True)


def move_back(folder: Path, moves: Sequence[Move]) -> tuple[str, ...]:
    """The earlier files in their places again; may be begun anew when it was interrupted. Errors: OSError.

    Gives the names of files that are neither the new nor the earlier ones; they are left alone.
    """
    theirs = []
    for at, move in reversed(tuple(enumerate(moves))):
        place = folder / move.name
        now = stamp(place)
        moved = not os.path.lexists(new(folder, at))
        if now == move.new and moved:
            _back(folder, at, place)
        elif now != move.was:
            theirs.append(move.name)
    sync_all(folder, moves)
    return tuple(sorted(theirs))


def _back(folder: Path, at: int, place: Path) -> None:
    if os.path.lexists(old(folder, at)):
        os.replace(old(folder, at), place)
    else:
        place.unlink(missing_ok=True)


def turn_back(folder: Path) -> None:
    """From here on an interrupted run is taken back, not carried through."""
    os.replace(folder / ASIDE / AHEAD, folder / ASIDE / BACK)
    sync(folder / ASIDE)


def carry_on(folder: Path, moves: Sequence[Move], back: bool, links: Sequence[Link] = ()) -> Carried:
    """End what an interrupted run began: ahead, or `back` where it was on its way back. Errors: Astray, OSError.

    Where somebody saved a file that was still to be moved over, all is taken back, so that nothing typed is lost. Only
    where that would also undo what was typed into a new file is the rest carried through, and theirs left. `links`:
    sub-folders that were links already when the moves were begun; moves go into these, wherever they lead.
    """
    _inside(folder, moves, links)
    waiting = [at for at, move in enumerate(moves) if move.new is not None and os.path.lexists(new(folder, at))]
    theirs = tuple(moves[at].name for at in waiting if stamp(folder / moves[at].name) != moves[at].was)
    if not back and theirs and not _typed(folder, moves, waiting):
        turn_back(folder)
        back = True
    if back:
        theirs = move_back(folder, moves)
    else:
        _make_folders(folder, moves)
        for at, move in enumerate(moves):
            if move.name not in theirs and (at in waiting or (move.new is None and _as_it_was(folder, move))):
                _ahead(folder, at, move)
        sync_all(folder, moves)
    end(folder)
    return Carried(not back, theirs)


def _typed(folder: Path, moves: Sequence[Move], waiting: Sequence[int]) -> bool:
    """Whether somebody saved one of the new files that are in their places already."""
    done = (move for at, move in enumerate(moves) if move.new is not None and at not in waiting)
    return any(stamp(folder / move.name) != move.new for move in done)


def _as_it_was(folder: Path, move: Move) -> bool:
    return stamp(folder / move.name) == move.was


def _inside(folder: Path, moves: Sequence[Move], links: Sequence[Link]) -> None:
    root = folder.resolve()
    known = {root / link.name for link in links if link_at(root, link.name) == link}
    for parent in {(root / move.name).parent for move in moves} - known:
        if not parent.resolve().is_relative_to(root):
            raise Astray(str(folder / ASIDE))


def link_at(folder: Path, name: str) -> Link | None:
    """How a link in a folder looks, itself and not what it leads to; None for what is none, or not right in it."""
    place = folder / name
    if place.parent != folder or not place.is_symlink():
        return None
    seen = place.lstat()
    return Link(name, seen.st_ino, seen.st_ctime_ns)


def end(folder: Path) -> None:
    """All is where it belongs: first the record goes, then what else lies aside. Errors: OSError."""
    for name in (AHEAD, BACK):
        (folder / ASIDE / name).unlink(missing_ok=True)
    sync(folder / ASIDE)
    shutil.rmtree(folder / ASIDE, ignore_errors=True)


def sweep(folder: Path) -> None:
    """Take away what lies aside, where no move of it was begun. Errors: OSError, also for a record that is open."""
    aside = folder / ASIDE
    if not os.path.lexists(aside):
        return
    if aside.is_symlink() or not aside.is_dir() or (aside / AHEAD).exists() or (aside / BACK).exists():
        raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(aside))
    shutil.rmtree(aside)


def sync_all(folder: Path, moves: Sequence[Move]) -> None:
    """Names as they are now, on the disk."""
    for parent in sorted({(folder / move.name).parent for move in moves}):
        if parent.is_dir():
            sync(parent)


if sys.platform == "win32":

    def sync(folder: Path) -> None:
        """There, the system keeps the names of a folder by itself."""

else:

    def sync(folder: Path) -> None:
        """The names in a folder, on the disk, where the file system lets folders be synced."""
        number = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            with contextlib.suppress(OSError):
                os.fsync(number)
        finally:
            os.close(number)
