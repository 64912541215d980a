"""Jobs in folders of their own, and what each command makes of them where nothing is unusual."""

from __future__ import annotations

import shutil
import warnings
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from threading import Lock

from tests.trials.crosschecks_child import PLANNING, Came, came
from tests.trials.crosschecks_jobs import write_job

JOB = "job"
"""The folder's name; a plan carries it as its title, so it is the same in every run that is compared."""
TRIES_A_JOB = 40
VERBS: Mapping[str, tuple[str, ...]] = {
    "plan --json": ("plan", JOB, "--json", *PLANNING),
    "plan": ("plan", JOB, *PLANNING),
    "replan": ("replan", JOB, "--day", "2026-03-29", *PLANNING),
    "inspect": ("inspect", JOB),
    "start": ("start", JOB, "--currency", "EUR"),
    "houses": ("plan", JOB, "--json", *PLANNING),
}
OFTEN = ("plan --json", "plan --json", "plan", "plan", "replan", "inspect", "start", "houses")
HOUSES = ("elm-street", "Zoës Küche")
"""Folders of the two jobs that `houses` plans together."""


@dataclass
class Desk:
    """Job folders that stay as they are, and the plain run of each command on each, made once.

    `seed` draws the jobs, one for each 40 of the `tries`; the first of them is always the measured room.
    """

    seed: int
    tries: int
    folder: Path
    _plain: dict[tuple[int, str], Came] = field(default_factory=dict)
    _locks: dict[tuple[int, str], Lock] = field(default_factory=dict)
    _guard: Lock = field(default_factory=Lock)

    def drawn(self, dice: Random, verbs: tuple[str, ...] = OFTEN) -> tuple[int, str]:
        """A job and a command; with few tries always the same, since each costs a plain run as well."""
        if self.tries < TRIES_A_JOB:
            return 0, "plan --json"
        return dice.randrange(1 + self.tries // TRIES_A_JOB), dice.choice(verbs)

    def job(self, index: int, verb: str) -> Path:
        """The folder of a job as it is before a command.

        Without files for `start`, with a ticked plan for `replan`, with two jobs of listed faults for `houses`.
        """
        word = verb.split(" ")[0]
        folder = self.folder / "jobs" / str(index) / word / JOB
        with self._lock((index, f"files for {word}")):
            if not folder.exists():
                self._make(folder, index, word)
        return folder

    def _make(self, folder: Path, index: int, word: str) -> None:
        if word == "start":
            folder.mkdir(parents=True)
            return
        if word == "houses":
            for at, name in enumerate(HOUSES, 1):
                write_job(folder / name, index + at, self.seed)
            return
        write_job(folder, index, self.seed)
        if word == "replan":
            came(VERBS["plan"], folder.parent, folder)
            _tick(folder / "plan.xlsx")

    def copy(self, index: int, verb: str, place: Path) -> Path:
        """A copy of a job, as `place`."""
        place.parent.mkdir(parents=True, exist_ok=True)
        shutil.copytree(self.job(index, verb), place)
        return place

    def plain(self, index: int, verb: str) -> Came:
        """What the command makes of a job in plain surroundings."""
        key = index, verb
        with self._lock(key):
            if key not in self._plain:
                cwd = self.folder / "plain" / str(index) / verb
                self._plain[key] = came(VERBS[verb], cwd, self.copy(index, verb, cwd / JOB))
                shutil.rmtree(cwd)
            return self._plain[key]

    def _lock(self, key: tuple[int, str]) -> Lock:
        with self._guard:
            return self._locks.setdefault(key, Lock())


def _tick(path: Path) -> None:
    """The first step done and the first thing bought, as a user would tick them; nothing where there is no plan."""
    from openpyxl import load_workbook

    if not path.is_file():
        return
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        book = load_workbook(path)
    for title in ("Buy", "Do"):
        if title in book.sheetnames and book[title]["A5"].value:
            book[title]["B5"] = "x"
    book.save(path)
