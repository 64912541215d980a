"""One try: the command itself, typed in a folder of its own, and what must hold whatever the files were."""

from __future__ import annotations

import re
import shutil
import traceback
import warnings
import zipfile
from collections.abc import Iterator, Mapping
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, field
from datetime import datetime, tzinfo
from pathlib import Path
from unittest.mock import patch
from xml.parsers import expat

from typer.testing import CliRunner

from budgetfix.cli import commands, replan
from budgetfix.cli.app import app
from budgetfix.intake.job import Job as ReadJob
from budgetfix.pipeline import inspecting

Files = Mapping[str, bytes | None]
"""None: a folder of that name."""
WORDS = {
    "inspect": ("--json",),
    "plan": ("--seconds", "0", "--quiet"),
    "replan": ("--seconds", "0", "--quiet", "--day", "2026-06-01"),
}
ENDS = {"inspect": (0, 3), "plan": (0, 1, 3, 4), "replan": (0, 1, 3, 4)}
MISUSE = 2
REFUSED = 3
LINE = re.compile(r"(.*?)(?: \[([^\]]*)\])? found (.+), wanted (.+)")
SUM = re.compile(r"(\d+) problems? in \d+ files?\. Nothing was written(?: but (.+))?\.")
LABELS = {".yaml": re.compile(r"line [1-9]\d*"), ".csv": re.compile(r"[A-Z]{1,3}[1-9]\d*|"), ".xlsx": re.compile(r".*")}
LIBRARIES = (DeprecationWarning, PendingDeprecationWarning, ImportWarning, ResourceWarning)
"""Warnings that Python shows to nobody but developers."""


class Noon(datetime):
    """A clock that stands still, so that counts do not depend on the day."""

    @classmethod
    def now(cls, tz: tzinfo | None = None) -> Noon:
        """Always the same."""
        return cls(2026, 6, 1, 12, tzinfo=tz)


@dataclass(frozen=True)
class Told:
    """One line about a file."""

    file: str
    label: str
    found: str


@dataclass
class Seen:
    """What came of a try. `faults`: what did not hold, by the promise that it breaks."""

    code: int
    out: str
    err: str
    told: tuple[Told, ...] = ()
    job: ReadJob | None = None
    faults: dict[str, list[str]] = field(default_factory=dict)

    def fault(self, promise: str, words: str) -> None:
        """Note a break."""
        self.faults.setdefault(promise, []).append(words)

    @property
    def refused(self) -> bool:
        """True for exit code 3."""
        return self.code == REFUSED


def seen(command: str, files: Files, folder: Path) -> Seen:
    """The command, run in this folder, which is made for it and taken away again; the three common promises judged."""
    _lay_out(folder, files)
    read: list[ReadJob] = []
    with warnings.catch_warnings(record=True) as warned:
        warnings.simplefilter("always")
        with _watched(read):
            done = CliRunner().invoke(app, [command, str(folder), *WORDS[command]])
    found = Seen(done.exit_code, done.stdout, done.stderr, job=read[0] if read else None)
    if done.exception is not None and not isinstance(done.exception, SystemExit):
        last = traceback.extract_tb(done.exception.__traceback__)[-1]
        where = f"{Path(last.filename).name}:{last.name}"
        found.fault("words", f"{type(done.exception).__name__} in {where}: {str(done.exception)[:120]!r}")
    elif found.code not in ENDS[command] and not (found.code == MISUSE and files.get("plan.xlsx", b"") is None):
        found.fault("words", f"exit {found.code}: {found.err[:160]!r}")
    noise = [str(one.message)[:80] for one in warned if not issubclass(one.category, LIBRARIES)]
    if noise:
        found.fault("words", f"a library's own warning: {noise[0]!r}")
    if found.refused and not found.faults:
        _judge_lines(found, files, folder)
    _judge_folder(found, command, files, folder)
    shutil.rmtree(folder)
    return found


@contextmanager
def _watched(read: list[ReadJob]) -> Iterator[None]:
    """The clock stands; the job that the command has read is kept."""
    whole = inspecting.inspected

    def spy(job: ReadJob) -> inspecting.Inspected:
        read.append(job)
        return whole(job)

    with ExitStack() as stack:
        stack.enter_context(patch.object(commands, "datetime", Noon))
        stack.enter_context(patch.object(replan, "datetime", Noon))
        stack.enter_context(patch.object(inspecting, "inspected", spy))
        yield


def _lay_out(folder: Path, files: Files) -> None:
    folder.mkdir()
    for name, data in files.items():
        if data is None:
            (folder / name).mkdir()
        else:
            (folder / name).write_bytes(data)


def _judge_lines(found: Seen, files: Files, folder: Path) -> None:
    """A refusal is lines that each name a file and a place that it has, and a sum."""
    *lines, empty, total = (
        found.err.removesuffix("\n").split("\n") if found.err.count("\n") > 2 else ["", "", found.err]
    )
    told = []
    for line in lines:
        parts = LINE.fullmatch(line)
        if parts is None or not _placed(parts[1], parts[2] or "", files, folder):
            found.fault("lines", f"no line about a file: {line[:160]!r}")
        else:
            told.append(Told(parts[1], parts[2] or "", parts[3]))
    ended = SUM.fullmatch(total)
    if empty or ended is None or int(ended[1]) != len(lines):
        found.fault("lines", f"no sum that fits {len(lines)} lines: {total[:120]!r}")
    if found.out:
        found.fault("lines", "something on standard output")
    found.told = tuple(told)


def _placed(file: str, label: str, files: Files, folder: Path) -> bool:
    if file == str(folder):
        return True
    if file not in files:
        return file == "brief.yaml" and not label
    if label and label.startswith("line "):
        data = files[file] or b""
        most = max(data.count(b"\n"), data.count(b"\r")) + 2
        return int(label.removeprefix("line ")) <= most
    pattern = LABELS.get(Path(file).suffix)
    return not label or (pattern is not None and pattern.fullmatch(label) is not None)


def _judge_folder(found: Seen, command: str, files: Files, folder: Path) -> None:
    """Nothing that was there is another now; new is only a marked copy that was told, or a whole plan."""
    for name, data in files.items():
        place = folder / name
        ours = (command == "plan" and name == "plan.xlsx") or (command == "replan" and name == "plan.xlsx")
        if found.code in (0, 4) and ours:
            continue
        same = place.is_dir() if data is None else place.is_file() and place.read_bytes() == data
        if not same:
            found.fault("folder", f"{name} was changed")
    new = sorted(path.name for path in folder.iterdir() if path.name not in files)
    if found.code in (0, 4) and command != "inspect":
        return
    ended = SUM.search(found.err)
    said = (ended[2] or "").split(", ") if ended is not None and found.refused else []
    for name in new:
        book = name.replace(".marked.xlsx", ".xlsx")
        if name not in said or book == name or book not in files:
            found.fault("folder", f"{name} was written")
        elif not _opens(folder / name):
            found.fault("folder", f"{name} is no workbook")


def _opens(book: Path) -> bool:
    """A marked copy is a whole archive whose sheets are XML."""
    with zipfile.ZipFile(book) as parts:
        for name in parts.namelist():
            if name.endswith((".xml", ".rels")):
                expat.ParserCreate().Parse(parts.read(name), True)
    return True
