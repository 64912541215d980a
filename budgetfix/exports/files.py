"""Files of one job written together: all of them, or none, whenever the process is ended."""

from __future__ import annotations

import contextlib
import os
import shutil
from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date
from pathlib import Path

from budgetfix.base.moves import AHEAD, ASIDE, BACK, Link, Move, Stamp, moves_text
from budgetfix.exports.lock import held
from budgetfix.exports.moves import end, link_at, move_back, move_in, new, old, stamp, sweep, sync, turn_back

LONG_AGO = date(2000, 1, 1)
"""The day of files whose brief names no day of ordering: the clock would change the bytes."""


class HalfMoved(Exception):
    """Files could be moved neither on nor back; the record of it stays for the next run. Holds the folder."""


def write_whole(
    folder: Path, files: Mapping[str, bytes], gone: Iterable[str] = (), check: Callable[[], None] | None = None
) -> None:
    """Write all of these files, or leave all as they were. The folder is made when it is not there.

    `gone`: files of an earlier time that do not belong beside these any more; they are taken away at the end. `check`
    is asked when every new file stands ready and nothing is moved yet; what it raises ends the writing.

    Each is first written whole aside, in a hidden folder; then a record of the moves is written, and the files are
    moved into their places, workbooks last, since they are what people type into. A process that ends before the
    record is there has changed nothing; after that `carry_on` ends what it began. Errors: Busy, ChangedMeanwhile and
    OSError, with nothing changed; HalfMoved.
    """
    with _folder(folder), held({folder, *_inside(folder, files)}), _aside(folder):
        order = sorted(files, key=lambda name: (name.endswith(".xlsx"), name))
        moves = [_ready(folder, at, name, files[name]) for at, name in enumerate(order)]
        moves += [_going(folder, at, name) for at, name in enumerate(sorted(set(gone) - set(order)), len(moves))]
        sync(folder / ASIDE)
        if check is not None:
            check()
        _moved(folder, tuple(moves))


def _inside(folder: Path, files: Iterable[str]) -> set[Path]:
    """The folders of the files that are there."""
    return {parent for name in files if (parent := (folder / name).parent).is_dir()}


@contextlib.contextmanager
def _folder(folder: Path) -> Iterator[None]:
    """The folder is there; where it was made for nothing, it goes again."""
    missing = [one for one in (folder, *folder.parents) if not one.exists()]
    try:
        folder.mkdir(parents=True, exist_ok=True)
        yield
    finally:
        with contextlib.suppress(OSError):
            for one in missing:
                one.rmdir()


@contextlib.contextmanager
def _aside(folder: Path) -> Iterator[None]:
    """A hidden folder of our own, swept again unless it holds moves that were begun and not ended."""
    sweep(folder)
    aside = folder / ASIDE
    aside.mkdir(mode=0o700)
    try:
        yield
    finally:
        if aside.exists() and not (aside / AHEAD).exists() and not (aside / BACK).exists():
            shutil.rmtree(aside, ignore_errors=True)


def _ready(folder: Path, at: int, name: str, data: bytes) -> Move:
    """One new file written aside; the one that it takes the place of gets a second name there."""
    place = folder / name
    was = stamp(place)
    _write(new(folder, at), data, place)
    _keep(folder, at, place, was)
    return Move(name, was, stamp(new(folder, at)))


def _going(folder: Path, at: int, name: str) -> Move:
    place = folder / name
    was = stamp(place)
    _keep(folder, at, place, was)
    return Move(name, was, None)


def _write(part: Path, data: bytes, place: Path) -> None:
    """Write a file that must not be there yet, down to the disk. Errors: OSError that names `place`."""
    try:
        with part.open("xb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
    except OSError as error:
        raise OSError(error.errno, error.strerror, str(place)) from error


def _keep(folder: Path, at: int, place: Path, was: Stamp | None) -> None:
    if was is None:
        return
    kept = old(folder, at)
    if place.is_symlink():
        os.symlink(os.readlink(place), kept)
        return
    try:
        os.link(place, kept)
    except OSError:
        shutil.copy2(place, kept)


def _moved(folder: Path, moves: tuple[Move, ...]) -> None:
    """The moves, under a record of them; when one fails or is broken off, what was already moved is put back."""
    aside = folder / ASIDE
    _write(aside / "record", moves_text(moves, _links(folder, moves)), aside / AHEAD)
    done = False
    try:
        os.replace(aside / "record", aside / AHEAD)
        sync(aside)
        sync(folder)
        move_in(folder, moves)
        done = True
    finally:
        if not done:
            _taken_back(folder, moves)
    try:
        end(folder)
    except OSError as error:
        raise HalfMoved(str(folder)) from error


def _links(folder: Path, moves: tuple[Move, ...]) -> tuple[Link, ...]:
    """Sub-folders with moves in them that are links."""
    names = sorted({move.name.rpartition("/")[0] for move in moves} - {""})
    return tuple(link for name in names if (link := link_at(folder, name)) is not None)


def _taken_back(folder: Path, moves: tuple[Move, ...]) -> None:
    if not (folder / ASIDE / AHEAD).exists():
        return
    try:
        turn_back(folder)
        move_back(folder, moves)
        end(folder)
    except OSError as error:
        raise HalfMoved(str(folder)) from error
