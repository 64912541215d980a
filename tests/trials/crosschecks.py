"""The same plan everywhere: other solvers, other Pythons, hash seeds, time zones, languages, screens, files, folders.

One try alone: `python -m tests.trials.crosschecks --seed 20261126 --tries 400 --number 7`.
"""

from __future__ import annotations

import argparse
import shutil
import sys
import tempfile
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from random import Random

from tests.trials.crosschecks_answers import by_cbc, every_plan, without_cbc
from tests.trials.crosschecks_child import came, same_object, unlike
from tests.trials.crosschecks_desk import JOB, VERBS, Desk
from tests.trials.crosschecks_places import Tried, line_ends, paths
from tests.trials.crosschecks_pythons import Pythons
from tests.trials.crosschecks_settings import Setting, command, hash_seed, locale_of, locales, running, screen, zone
from tests.trials.registry import SEED
from tests.trials.trial import Asked, Result, Row, Trial

FEW = 100
"""Below so many tries nothing is set up that takes long."""
Try = Callable[[Desk, Path, Random], Tried]


@dataclass(frozen=True)
class Axis:
    """One promise and how it is tried. `not_run`: why it cannot be tried here."""

    promise: str
    tried: Try
    seen: str
    not_run: str = ""


def in_setting(draw: Callable[[Random], Setting]) -> Try:
    """A command in other surroundings against the same one in plain ones."""

    def tried(desk: Desk, place: Path, dice: Random) -> Tried:
        index, verb = desk.drawn(dice)
        setting = draw(dice)
        job = desk.copy(index, verb, place / JOB)
        other = came(VERBS[verb], place, job, setting.env, command=command(setting), umask=setting.umask)
        plain = desk.plain(index, verb)
        wrong = unlike(plain, other, screen=setting.screen)
        if not setting.screen and not setting.shut and verb.endswith("--json"):
            wrong += same_object(plain, other)
        return f"{verb} of job {index} with {setting.said}", wrong

    return tried


def axes(asked: Asked) -> tuple[Axis, ...]:
    """Every promise, in the order in which they are told. With few tries no other Python is asked."""
    few = asked.tries < FEW
    made = locales(asked.folder / "locales", few=few)
    pythons = Pythons(asked.folder / "pythons", few=few)
    return (
        Axis("The plan is the one that trying every set in every placing finds", every_plan, "random listed faults"),
        Axis("CBC finds the same plan, and the same bytes", by_cbc, "HiGHS shut out", without_cbc()),
        Axis("Another Python makes the same bytes", pythons.tried, pythons.seen, pythons.not_run),
        Axis("The order of Python's sets changes nothing", in_setting(hash_seed), "fixed and random hash seeds"),
        Axis("Time zones change nothing", in_setting(zone), "13 zones; nights that clocks change, year's end"),
        Axis("The system's language changes no file", in_setting(locale_of(made)), f"{len(made)} locales"),
        Axis(
            "Encoding and width of the screen change no file", in_setting(screen), "ascii to utf-16, 1 column and more"
        ),
        Axis("Ways to start Python change nothing", in_setting(running), "-O, every warning an error, umask, no HOME"),
        Axis("Ends of lines and a mark in front change nothing", line_ends, "Windows, old Mac, none at the end"),
        Axis("Where a folder stands and how it is called change nothing", paths, "spaces, accents, links, depth"),
    )


def run(asked: Asked) -> Result:
    """Every axis in turn, each try with dice of its own."""
    promised = axes(asked)
    desk = Desk(asked.seed, asked.tries, asked.folder)
    with ThreadPoolExecutor(max(1, asked.lanes)) as lanes:
        found = list(lanes.map(lambda number: _one(asked, desk, promised, number), range(asked.tries)))
    rows = []
    for at, axis in enumerate(promised):
        mine = [] if axis.not_run else found[at :: len(promised)]
        seen = f"NOT RUN: {axis.not_run}" if axis.not_run else axis.seen
        rows.append(Row(axis.promise, len(mine), sum(bool(wrong) for wrong in mine), seen))
    return Result(tuple(rows), tuple(line for wrong in found for line in wrong))


def _one(asked: Asked, desk: Desk, promised: Sequence[Axis], number: int) -> tuple[str, ...]:
    """What was wrong with one try, in a line with all that repeats it."""
    axis = promised[number % len(promised)]
    if axis.not_run:
        return ()
    place = asked.folder / "tries" / str(number)
    place.mkdir(parents=True)
    said, wrong = axis.tried(desk, place, Random(f"{asked.seed}/{number}"))
    shutil.rmtree(place)
    again = f"python -m tests.trials.crosschecks --seed {asked.seed} --tries {asked.tries} --number {number}"
    return (f"{axis.promise}: {said!s}: {'; '.join(wrong)[:600]} ({again})",) if wrong else ()


TRIAL = Trial("crosschecks", "The same plan everywhere", 10, 400, run)


def main() -> int:
    """One try alone, told in a line. Exit code 1 where something differs."""
    said = argparse.ArgumentParser(description=__doc__)
    said.add_argument("--seed", type=int, default=SEED)
    said.add_argument("--tries", type=int, default=TRIAL.long)
    said.add_argument("--number", type=int, required=True)
    words = said.parse_args()
    with tempfile.TemporaryDirectory(prefix="trials-") as folder:
        asked = Asked(words.seed, words.tries, Path(folder))
        wrong = _one(asked, Desk(asked.seed, asked.tries, asked.folder), axes(asked), words.number)
    print("\n".join(wrong) or "the same")
    return int(bool(wrong))


if __name__ == "__main__":
    sys.exit(main())
