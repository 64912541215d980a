"""A child process that writes, and what happens to it at one of its steps at the file system."""

from __future__ import annotations

import os
import signal
import sys
from collections.abc import Callable
from io import BufferedWriter
from pathlib import Path
from typing import IO, Any, cast
from unittest.mock import patch

from budgetfix.exports.files import HalfMoved
from budgetfix.exports.lock import Busy
from budgetfix.exports.moves import ChangedMeanwhile
from budgetfix.pipeline.writing import OpenElsewhere, Touched

DONE, REFUSED, HALF, BUSY, BROKE, KILLED = 0, 10, 11, 12, 70, -signal.SIGKILL
STEPS = {
    "open", "os.rename", "os.remove", "os.link", "os.symlink", "os.mkdir", "os.rmdir", "os.truncate", "os.listdir",
    "os.scandir", "shutil.copyfile", "shutil.rmtree",
}  # fmt: skip
"""Names of the interpreter's own audit events, each told just before it happens."""
At = Callable[[str, tuple[object, ...]], None]


class Slowly:
    """A file whose bytes arrive in two halves, with a step in between."""

    def __init__(self, file: BufferedWriter, at: At) -> None:
        self.file, self.at = file, at

    def __enter__(self) -> Slowly:
        return self

    def __exit__(self, *_: object) -> None:
        self.file.close()

    def write(self, data: bytes) -> None:
        """Half, a step, the other half."""
        self.file.write(data[: len(data) // 2])
        self.file.flush()
        self.at("half", ())
        self.file.write(data[len(data) // 2 :])

    def __getattr__(self, name: str) -> object:
        return getattr(self.file, name)


def stepping(folder: Path, work: Callable[[], object], at_step: Callable[[int, str, tuple[object, ...]], None]) -> int:
    """Do the work, and call at each of its steps below the folder; gives the number of steps.

    For a child process only: an audit hook stays for good. Nothing is really synced, which takes most of the time and
    which a killed process cannot miss.
    """
    counted, root, inside = 0, str(folder), False

    def at(event: str, args: tuple[object, ...]) -> None:
        nonlocal counted, inside
        if inside:
            return
        inside = True
        counted += 1
        try:
            at_step(counted, event, args)
        finally:
            inside = False

    def hook(event: str, args: tuple[object, ...]) -> None:
        here = any(root in str(one) for one in args if isinstance(one, str | os.PathLike))
        if event in STEPS and (here or event in {"os.remove", "os.rmdir"}):
            at(event, args)

    real_open = Path.open

    def opened(self: Path, mode: str = "r", *more: Any, **words: Any) -> IO[Any]:
        file = real_open(self, mode, *more, **words)
        return cast("IO[Any]", Slowly(cast("BufferedWriter", file), at)) if mode == "xb" else file

    def synced(_number: int) -> None:
        at("fsync", ())

    sys.addaudithook(hook)
    with patch.object(Path, "open", opened), patch.object(os, "fsync", synced):
        work()
    return counted


def in_child(work: Callable[[], object], seconds: float | None = None) -> int:
    """Do it in a child; how that ended: one of the numbers above, or a signal's. `seconds`: then it is killed."""
    child = begun(work)
    if seconds is not None:
        import time

        time.sleep(seconds)
        os.kill(child, signal.SIGKILL)
    return ended(child)


def begun(work: Callable[[], object]) -> int:
    """The child's number."""
    child = os.fork()
    if child:
        return child
    code = BROKE
    try:
        work()
        code = DONE
    except HalfMoved:
        code = HALF
    except Busy:
        code = BUSY
    except (OSError, ChangedMeanwhile, OpenElsewhere, Touched):
        code = REFUSED
    finally:
        os._exit(code)


def ended(child: int) -> int:
    """How a child ended, waited for."""
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def killed_at(step: int) -> Callable[[int, str, tuple[object, ...]], None]:
    """The process is gone just before that step."""

    def at_step(number: int, _event: str, _args: tuple[object, ...]) -> None:
        if number == step:
            os.kill(os.getpid(), signal.SIGKILL)

    return at_step


def failing_at(step: int, number_of_error: int, on: bool = False) -> Callable[[int, str, tuple[object, ...]], None]:
    """That step fails; `on`: and so does whatever would fill the disk further."""

    def at_step(number: int, event: str, _args: tuple[object, ...]) -> None:
        fills = event in {"open", "half", "os.mkdir", "os.link"}
        if number == step or (on and number > step and fills):
            raise OSError(number_of_error, os.strerror(number_of_error))

    return at_step


def steps_of(folder: Path, work: Callable[[], object]) -> int:
    """How many steps the work has when nothing happens to it. The folder is as it is after the work."""
    reading, telling = os.pipe()
    child = os.fork()
    if not child:
        counted = 0
        try:
            counted = stepping(folder, work, lambda *_: None)
        finally:
            os.write(telling, str(counted).encode())
            os._exit(0)
    os.close(telling)
    with os.fdopen(reading) as told:
        counted = int(told.read() or 0)
    os.waitpid(child, 0)
    assert counted, "the work failed"
    return counted
