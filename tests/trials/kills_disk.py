"""Disks that are full, fail or are read-only, things in the way, and workbooks that somebody has open or saves."""

from __future__ import annotations

import errno
import os
import resource
import shutil
import subprocess
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from budgetfix.intake.open_elsewhere import LOCKS
from budgetfix.pipeline.holding import holding
from tests.trials.kills_child import DONE, HALF, REFUSED, failing_at, in_child, stepping
from tests.trials.kills_desk import PLAN, Case, contents, ticked_more
from tests.trials.trial import Asked, Row

if TYPE_CHECKING:
    from tests.trials.kills import Bench

FULL = "A disk that is full from a step on, each step in turn: nothing is changed, or all is written"
FAILS = "One step that fails with an error of the disk, each in turn: nothing is changed, or the next run ends it"
LARGE = "A system that ends a file after so many bytes, really: nothing is changed"
TINY = "A disk of so many kilobytes, really full: nothing is changed"
NO_RIGHT = "A folder, a disk or a file that may not be written to, really: nothing is changed"
IN_THE_WAY = "A folder in a file's place, for each file: nothing is changed"
OPEN = "A workbook that another program has open: nothing is changed, whenever it was opened"
SAVED = "A workbook saved while a run writes, before each of its steps: what was saved is there afterwards"
ERRORS = (errno.ENOSPC, errno.EIO, errno.EACCES, errno.EROFS, errno.EDQUOT)
NOBODY = 65534
Work = Callable[[], None]


class Told:
    """Tries of one promise, and a line for each break."""

    def __init__(self, promise: str) -> None:
        self.promise = promise
        self.tried = 0
        self.lines: list[str] = []
        self.bad = 0
        self.seen = ""

    def note(self, what: str, wrong: list[str]) -> None:
        """One try, and what was wrong with it."""
        self.tried += 1
        self.bad += bool(wrong)
        self.lines += [f"{what}: {one} ({self.promise})" for one in wrong]

    def add(self, other: Told) -> None:
        """What was told of the same promise elsewhere."""
        self.tried += other.tried
        self.bad += other.bad
        self.lines += other.lines
        self.seen = self.seen or other.seen

    def row(self) -> Row:
        """As it is told."""
        return Row(self.promise, self.tried, self.bad, self.seen)


def disk_parts(asked: Asked) -> list[Callable[[Bench], list[Told]]]:
    """Every row on disks and on what is open. Small runs take one case, and some of its steps."""
    every = 1 if asked.tries >= FULL_FROM else 7
    rows: list[Callable[[Bench], Told]] = [
        lambda made: _each_step(made, every, FULL, lambda step: failing_at(step, errno.ENOSPC, on=True)),
        lambda made: _each_step(made, every, FAILS, lambda step: failing_at(step, ERRORS[step % len(ERRORS)])),
        _large,
        partial(_tiny, asked),
        partial(_no_right, asked),
        _in_the_way,
        _open,
        partial(_saved, every),
    ]
    return [partial(_part, row, every > 1) for row in rows]


def _part(row: Callable[[Bench], Told], few: bool, made: Bench) -> list[Told]:
    return [row(replace(made, cases=tuple(one for one in made.cases if one.ticks is not None or not few)))]


FULL_FROM = 500
"""From so many tries on, every step is tried."""


def unchanged(case: Case, place: Path, code: int) -> list[str]:
    """What is wrong after a run that was to be refused, or done whole."""
    now = {name: data for name, data in contents(place).items() if not name.rsplit("/", 1)[-1].startswith(LOCK_STARTS)}
    if code == REFUSED:
        return [] if now == dict(case.before) else ["refused, but not as before"]
    if code == DONE:
        return [] if now == dict(case.after) else ["done, but not all of it"]
    return [f"ended with {code}"]


LOCK_STARTS = (".~lock.", "~$")


def _each_step(made: Bench, every: int, promise: str, failing: Callable[[int], Callable[..., None]]) -> Told:
    told = Told(promise)
    for case in made.cases:
        for step in range(1, made.steps[case.name] + 1, every):
            place = made.place(case)
            code = in_child(partial(_stepped, case, place, failing(step)))
            told.note(f"{case.name}, step {step}", _failed(case, place, code, made))
    return told


def _stepped(case: Case, place: Path, at: Callable[..., None]) -> None:
    stepping(place, lambda: case.run(place), at)


def _failed(case: Case, place: Path, code: int, made: Bench) -> list[str]:
    """Nothing changed or all there, visibly; with the next run nothing is left over."""
    from tests.trials.kills import half_files, mixed

    if code == HALF:
        return [*half_files(case, place), *mixed(case, place, made)]
    if code not in (DONE, REFUSED):
        return [f"ended with {code}"]
    with holding(place, case.names):
        return unchanged(case, place, code)


def _large(made: Bench) -> Told:
    """The system's own limit on the size of a file, from nothing to larger than any."""
    told = Told(LARGE)
    for case in made.cases:
        most = max(map(len, case.after.values()))
        for part in range(8):
            place, size = made.place(case), most * part // 8
            code = in_child(partial(_limited, case, place, size))
            wrong = unchanged(case, place, code)
            told.note(f"{case.name}, {size} bytes", wrong if code == REFUSED else [*wrong, "was not refused"])
    return told


def _limited(case: Case, place: Path, size: int) -> None:
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))
    case.run(place)


@contextmanager
def mounted(place: Path, options: str) -> Iterator[bool]:
    """A small disk in memory at that place; False where this may not be done."""
    place.mkdir(parents=True, exist_ok=True)
    tool = shutil.which("mount")
    if tool is None or not hasattr(os, "geteuid") or os.geteuid() != 0:
        yield False
        return
    done = subprocess.run([tool, "-t", "tmpfs", "-o", options, "tmpfs", str(place)], check=False, capture_output=True)
    if done.returncode:
        yield False
        return
    try:
        yield True
    finally:
        subprocess.run(["umount", str(place)], check=True, capture_output=True)


def _tiny(asked: Asked, made: Bench) -> Told:
    """Real disks from just large enough for what is there to large enough for all, four kilobytes at a time."""
    told, at = Told(TINY), asked.folder / "tiny"
    for case in made.cases:
        least = sum(-(-len(data) // 4096) + 1 for data in case.before.values()) + 2
        more = sum(-(-len(data) // 4096) + 1 for data in case.after.values()) + 2
        for pages in range(least, least + more, max(1, more // 8)):
            with mounted(at, f"size={pages * 4}k") as there:
                if not there:
                    told.seen = "not run here: needs the right to mount"
                    return told
                place = at / "job"
                case.lay(place)
                code = in_child(partial(case.run, place))
                told.note(f"{case.name}, {pages * 4} kB", unchanged(case, place, code))
    return told


def _no_right(asked: Asked, made: Bench) -> Told:
    """Another user's folder, a read-only disk, a house on a disk of its own, a folder that went."""
    told, at = Told(NO_RIGHT), asked.folder / "disk"
    for case in made.cases:
        place = made.place(case)
        for one in (place, *(place / name for name in case.names)):
            one.chmod(0o555)
        _refused(told, f"{case.name}, no right", case, place, partial(_as_nobody, case, place))
        for one in (place, *(place / name for name in case.names)):
            one.chmod(0o755)
        with mounted(at, "size=8m") as there:
            if there:
                case.lay(at / "job")
                subprocess.run(["mount", "-o", "remount,ro", str(at)], check=True, capture_output=True)
                _refused(told, f"{case.name}, read-only disk", case, at / "job", partial(case.run, at / "job"))
    return told


def _as_nobody(case: Case, place: Path) -> None:
    if os.geteuid() == 0:
        os.seteuid(NOBODY)
    case.run(place)


def _refused(told: Told, what: str, case: Case, place: Path, work: Work) -> None:
    code = in_child(work)
    told.note(what, unchanged(case, place, code) if code == REFUSED else [f"was not refused, but ended with {code}"])


def _in_the_way(made: Bench) -> Told:
    told = Told(IN_THE_WAY)
    for case in made.cases:
        for name in sorted(name for name, data in case.after.items() if case.before.get(name) != data):
            place = made.place(case)
            (place / name).unlink(missing_ok=True)
            (place / name).mkdir()
            before = contents(place)
            code = in_child(partial(case.run, place))
            kept = name.startswith("plan-kept") and code == DONE and contents(place)["plan-kept-2.xlsx"] == case.ticks
            wrong = (
                [] if kept or (code == REFUSED and contents(place) == before) else [f"ended with {code}, or changed"]
            )
            told.note(f"{case.name}, {name}", wrong)
    return told


def _open(made: Bench) -> Told:
    """Opened before, or while the plan is made, just before the first file is moved."""
    told = Told(OPEN)
    for case in made.cases:
        for book in sorted(name for name in case.before if name.endswith(PLAN)):
            for lock in LOCKS:
                for later in (False, True):
                    place = made.place(case)
                    beside = (place / book).with_name(lock.format(PLAN))
                    at = _opens(beside) if later else _nothing
                    if not later:
                        beside.write_bytes(b"somebody")
                    code = in_child(partial(_stepped, case, place, at))
                    wrong = unchanged(case, place, code)
                    told.note(f"{case.name}, {beside.name}, later {later}", wrong if code == REFUSED else [f"{code}"])
    return told


def _nothing(*_: object) -> None:
    """Nothing happens at this step."""


def _opens(beside: Path) -> Callable[..., None]:
    def at_step(_number: int, event: str, _args: tuple[object, ...]) -> None:
        if event == "half" and not beside.exists():
            beside.write_bytes(b"somebody")

    return at_step


def _saved(every: int, made: Bench) -> Told:
    """Somebody saves the workbook before a step, in place or as programs do, by a new file moved there."""
    told = Told(SAVED)
    for case in made.cases:
        for book in sorted(name for name in case.before if name.endswith(PLAN))[:1]:
            saved = ticked_more(case, book)
            for step in range(1, made.steps[case.name] + 1, every):
                for by_move in (False, True):
                    place = made.place(case)
                    at = _saves(place / book, saved, step, by_move)
                    code = in_child(partial(_stepped, case, place, at))
                    with holding(place, case.names):
                        now = contents(place)
                    wrong = [] if saved in now.values() else [f"ended with {code}, and it is gone"]
                    told.note(f"{case.name}, step {step}, by a move {by_move}", wrong)
    return told


def _saves(book: Path, saved: bytes, step: int, by_move: bool) -> Callable[..., None]:
    """The last look at a file and its move are one step for us: what is saved in between is not promised."""
    waits = False

    def at_step(number: int, event: str, args: tuple[object, ...]) -> None:
        nonlocal waits
        if number != step and not waits:
            return
        waits = event == "os.rename" and len(args) > 1 and str(args[1]) == str(book)
        if waits:
            return
        if by_move:
            beside = book.with_name("saving.tmp")
            beside.write_bytes(saved)
            os.rename(beside, book)
        else:
            book.write_bytes(saved)

    return at_step
