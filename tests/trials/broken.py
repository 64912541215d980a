"""Broken files: ten thousand runs of `inspect`, `plan` and `replan` on jobs with something wrong in their files."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterable
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from functools import lru_cache
from multiprocessing import get_context
from pathlib import Path

from tests.trials import broken_harmless, broken_planted, broken_ticked
from tests.trials.broken_jobs import Job, jobs
from tests.trials.broken_run import Files, Seen, seen
from tests.trials.broken_wild import damaged, wild
from tests.trials.trial import Asked, Result, Row, Trial

SORTS = ("wild",) * 7 + ("damaged",) * 3 + ("planted",) * 6 + ("harmless",) * 2 + ("ticked",) * 2
JOBS = (
    *("listed",) * 10, *("briefed",) * 10, *("room-text",) * 6, *("room-book",) * 2, "couple", "stager", "starter",
    "renter",
)  # fmt: skip
"""As often as a try of them is cheap."""
PIECE = 50
"""Tries that a process does at a time."""
PROMISES = {
    "words": "Whatever the files hold, a command ends in words of its own: no traceback, no library's warning",
    "lines": "A refusal is exit 3; each line names a file and its cell or line, what was found and what was wanted",
    "folder": "No file is changed; nothing is written beside a refused one but the marked copy of a workbook",
    "sure": "What is surely wrong (two to five values in a job) is refused, never read as something else",
    "all": "Each of these values is told in the same run, at its own cell or line",
    "same": "A job saved otherwise (semicolons, decimal commas, moved columns, marks, quotes) is read as the same",
    "ticked": "A ticked plan, broken in any way, is read back or refused by `replan`; each wrong cell is told",
}


@dataclass
class Counted:
    """What came of some tries."""

    tried: Counter[str] = field(default_factory=Counter)
    broken: Counter[str] = field(default_factory=Counter)
    ends: Counter[str] = field(default_factory=Counter)
    lines: list[str] = field(default_factory=list)

    def add(self, number: int, seed: int, sort: str, found: Seen) -> None:
        """Count one try for every promise that it tries."""
        tries = ["words", "folder", *(["lines"] if found.refused else [])]
        tries += {"planted": ["sure", "all"], "harmless": ["same"], "ticked": ["ticked"]}.get(sort, [])
        self.tried.update(tries)
        self.ends["refused" if found.refused else "taken"] += 1
        if sort == "ticked":
            self.ends["ticked refused" if found.refused else "ticked taken"] += 1
        told = {("ticked" if sort == "ticked" else promise): words for promise, words in found.faults.items()}
        for promise, words in sorted(told.items()):
            self.broken[promise] += 1
            again = f"python -m tests.trials --only broken --seed {seed}; try {number} ({sort})"
            self.lines.append(f"{promise}: {'; '.join(words)[:400]} | {again}")

    def join(self, other: Counted) -> None:
        """Both together."""
        self.tried += other.tried
        self.broken += other.broken
        self.ends += other.ends
        self.lines += other.lines


def run(asked: Asked) -> Result:
    """Every try by its number alone; as many processes as there are lanes."""
    counted = Counted()
    pieces = [range(first, min(first + PIECE, asked.tries)) for first in range(0, asked.tries, PIECE)]
    tasks = [(asked.seed, piece, asked.folder) for piece in pieces]
    if asked.lanes == 1 or len(pieces) == 1:
        for task in tasks:
            counted.join(some(task))
        return _result(counted)
    with ProcessPoolExecutor(asked.lanes, mp_context=get_context("spawn")) as pool:
        for part in pool.map(some, tasks):
            counted.join(part)
    return _result(counted)


def some(task: tuple[int, Iterable[int], Path]) -> Counted:
    """The tries of these numbers."""
    seed, numbers, folder = task
    counted = Counted()
    for number in numbers:
        sort = SORTS[number % len(SORTS)]
        counted.add(number, seed, sort, one(seed, number, sort, folder / f"try-{number}"))
    return counted


def one(seed: int, number: int, sort: str, folder: Path) -> Seen:
    """One try, by its seed and number alone."""
    chance = random.Random(f"{seed}/{number}")
    job = _job("ticked" if sort == "ticked" else chance.choice(JOBS))
    match sort:
        case "planted":
            what = broken_planted.planted(job, chance)
            found = seen(job.command, broken_planted.files_of(job, what), folder)
            _if_told(found, lambda: broken_planted.judge(found, what))
        case "harmless":
            files, how = broken_harmless.harmless(job, chance)
            found = seen("inspect", files, folder)
            _if_told(found, lambda: broken_harmless.judge(found, _untouched(job, folder.parent), how))
        case "ticked":
            broken, wrong = broken_ticked.broken(job, chance)
            found = seen("replan", broken, folder)
            _if_told(found, lambda: broken_ticked.judge(found, wrong))
        case _:
            spoilt: Files = wild(job, chance) if sort == "wild" else damaged(job, chance)
            found = seen(job.command, spoilt, folder)
    return found


def _if_told(found: Seen, judge: object) -> None:
    """What comes after a crash is no break of its own."""
    if "words" not in found.faults and callable(judge):
        judge()


@lru_cache(maxsize=1)
def by_name() -> dict[str, Job]:
    """All jobs, read once."""
    return {job.name: job for job in jobs()}


def _job(name: str) -> Job:
    return by_name()[name]


@lru_cache(maxsize=16)
def _untouched(job: Job, folder: Path) -> Seen:
    """What the job is before anything is done to it."""
    return seen("inspect", job.parts(), folder / f"untouched-{job.name}")


def _result(counted: Counted) -> Result:
    ends = counted.ends
    said = {
        "words": f"{ends['refused']:,} refused, {ends['taken']:,} taken",
        "ticked": f"{ends['ticked refused']:,} refused, {ends['ticked taken']:,} read back",
    }
    rows = tuple(
        Row(words, counted.tried[name], counted.broken[name], said.get(name, "")) for name, words in PROMISES.items()
    )
    return Result(rows, tuple(counted.lines))


TRIAL = Trial("broken", "Broken files", small=40, long=10_000, run=run)
