"""One command run on a hostile job, watched: what it says, opens, writes, and where it reaches."""

from __future__ import annotations

import os
import resource
import signal
import sys
import tempfile
import unicodedata
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import datetime, tzinfo
from pathlib import Path
from types import FrameType
from unittest.mock import patch

from typer.testing import CliRunner

from budgetfix.cli.app import app

SECONDS = 240
"""A try that takes longer is a break; a busy machine is slow."""
COMMANDS = {
    "plan": ["--seconds", "20"],
    "inspect": [],
    "replan": ["--day", "2026-06-06"],
    "compare": ["--budget", "+9"],
}
WRITES = os.O_WRONLY | os.O_RDWR | os.O_CREAT | os.O_TRUNC | os.O_APPEND
MEMORY_KB = 1_200_000
"""At most, of the whole process: Python, all libraries, the trial itself."""
NEW = "\n"


class Noon(datetime):
    """The clock of a try stands still."""

    @classmethod
    def now(cls, tz: tzinfo | None = None) -> Noon:
        """Noon of a day in spring."""
        return cls(2026, 5, 20, 12, tzinfo=tz)


class TooLong(Exception):
    """The time of a try is over."""


@dataclass
class Ran:
    """How a command ended, and what of it breaks a promise: promise and words."""

    code: int
    said: str
    wrote: tuple[str, ...]
    breaks: list[tuple[str, str]] = field(default_factory=list)

    @property
    def refused(self) -> bool:
        return self.code == 3


class Watch:
    """Hears of every socket, process and file opened to be written, from when it is set until it is unset.

    openpyxl packs a marked copy by way of a temporary file, which it takes away: that one is let
    pass, and those without a name.
    """

    def __init__(self) -> None:
        self.inside: str | None = None
        self.passing = os.path.join(os.path.realpath(tempfile.gettempdir()), "openpyxl.")
        self.heard: list[tuple[str, str]] = []
        sys.addaudithook(self._hear)

    def _hear(self, event: str, args: tuple[object, ...]) -> None:
        if self.inside is None:
            return
        if event.startswith(("socket.", "urllib.", "http.", "ftplib.", "smtplib.", "webbrowser.")):
            self.heard.append(("socket", event))
        elif event in ("subprocess.Popen", "os.system", "os.exec", "os.posix_spawn", "os.startfile"):
            self.heard.append(("outside", f"{event} {args[0]!r}"))
        elif event == "open" and isinstance(args[2], int) and args[2] & WRITES and isinstance(args[0], str | bytes):
            if not os.path.isdir(args[0]):
                self._path("open", args[0])
        elif event in ("os.remove", "os.rename", "os.mkdir", "os.rmdir", "os.symlink", "os.link", "os.truncate"):
            handles = [one for one in args[1:] if isinstance(one, int) and event != "os.truncate"]
            for path in args[:2]:
                if isinstance(path, str | bytes):
                    self._path(event, os.path.join(_held(handles[-1:]), os.fsdecode(path)))

    def _path(self, event: str, path: str | bytes) -> None:
        real = os.path.realpath(os.fsdecode(path))
        if self.inside is not None and not real.startswith((self.inside, self.passing, os.devnull)):
            self.heard.append(("outside", f"{event} {real}"))


def _held(handles: list[int]) -> str:
    """The folder that a handle holds, from which a path goes on."""
    return f"/proc/self/fd/{handles[0]}" if handles and handles[0] >= 0 else ""


_watch: list[Watch] = []


def watch() -> Watch:
    """The one of this process: a hook stays for good."""
    if not _watch:
        _watch.append(Watch())
    return _watch[0]


def ran(command: str, folder: Path, files: dict[str, bytes]) -> Ran:
    """Run one command on a folder; everything beside it is a canary. `files`: what the job holds, by name."""
    canary = _tree(folder.parent, folder)
    ear = watch()
    ear.inside, ear.heard = os.path.realpath(folder), []
    try:
        with _in_time(), patch("budgetfix.cli.commands.datetime", Noon), patch("budgetfix.cli.replan.datetime", Noon):
            done = CliRunner().invoke(app, [command, str(folder), *COMMANDS[command]])
    finally:
        ear.inside = None
    here = _tree(folder, None)
    wrote = tuple(sorted(name for name in here if name not in files))
    found = Ran(done.exit_code, done.output + done.stderr, wrote, list(dict.fromkeys(ear.heard)))
    if done.exception is not None and not isinstance(done.exception, SystemExit):
        found.breaks.append(("words", f"{type(done.exception).__name__}: {str(done.exception)[:200]}"))
    if "Traceback" in found.said or "Warning" in found.said:
        found.breaks.append(("words", found.said[:200]))
    if _tree(folder.parent, folder) != canary:
        found.breaks.append(("outside", "something beside the folder changed"))
    if resource.getrusage(resource.RUSAGE_SELF).ru_maxrss > MEMORY_KB:
        found.breaks.append(("words", "too much memory, in this try or one before it"))
    found.breaks += _said(found)
    if found.refused and any(not name.endswith(".marked.xlsx") for name in wrote):
        found.breaks.append(("words", f"wrote {wrote} though it refused"))
    return found


def _said(found: Ran) -> Iterator[tuple[str, str]]:
    signs = {sign for sign in found.said if sign != NEW and unicodedata.category(sign) in ("Cc", "Cs", "Zl", "Zp")}
    signs |= {sign for sign in found.said if unicodedata.category(sign) == "Cf" and sign not in "\u200c\u200d"}
    if signs:
        yield "screen", f"the screen was sent {sorted(signs)!r}"


def _tree(folder: Path, without: Path | None) -> dict[str, object]:
    """Names in a folder with what stands there; links and pipes are not followed."""
    found: dict[str, object] = {}
    for path in sorted(folder.rglob("*")):
        if without is not None and (path == without or without in path.parents):
            continue
        plain = path.is_file() and not path.is_symlink()
        found[str(path.relative_to(folder))] = path.read_bytes() if plain else path.lstat().st_mode
    return found


@contextmanager
def _in_time() -> Iterator[None]:
    def over(_number: int, _frame: FrameType | None) -> None:
        raise TooLong(f"after {SECONDS} s")

    was = signal.signal(signal.SIGALRM, over)
    signal.alarm(SECONDS)
    try:
        yield
    finally:
        signal.alarm(0)
        signal.signal(signal.SIGALRM, was)
