"""One run at a time writes into a folder. The lock is the system's own: it ends with the process, however that ends."""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path

LOCK = ".budgetfix-lock"
"""The file that is locked where folders cannot be."""


class Busy(Exception):
    """Another process holds the folder: it is the only argument, as text."""


_OURS: set[tuple[int, int]] = set()
"""The folders that this process holds, by device and number: it may write into them at any depth of calls."""


@contextlib.contextmanager
def held(folders: Iterable[Path]) -> Iterator[None]:
    """Hold these folders, which must be there; those that this process holds already stay held.

    A file system that knows no locks is not waited for: there, nothing is held. Errors: Busy, OSError; none is held
    then.
    """
    with contextlib.ExitStack() as stack:
        for folder in sorted({folder.resolve() for folder in folders}):
            stack.enter_context(_one(folder))
        yield


@contextlib.contextmanager
def _one(folder: Path) -> Iterator[None]:
    there = folder.stat()
    key = (there.st_dev, there.st_ino)
    if key in _OURS:
        yield
        return
    with _locked(folder):
        _OURS.add(key)
        try:
            yield
        finally:
            _OURS.discard(key)


if sys.platform == "win32":

    @contextlib.contextmanager
    def _locked(folder: Path) -> Iterator[None]:
        import msvcrt

        place = folder / LOCK
        with place.open("ab") as file:
            try:
                msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
            except OSError as taken:
                raise Busy(str(folder)) from taken
            try:
                yield
            finally:
                file.seek(0)
                msvcrt.locking(file.fileno(), msvcrt.LK_UNLCK, 1)
        with contextlib.suppress(OSError):
            place.unlink()

else:

    @contextlib.contextmanager
    def _locked(folder: Path) -> Iterator[None]:
        import fcntl

        number = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            with contextlib.suppress(OSError):
                try:
                    fcntl.flock(number, fcntl.LOCK_EX | fcntl.LOCK_NB)
                except BlockingIOError as taken:
                    raise Busy(str(folder)) from taken
            yield
        finally:
            os.close(number)
