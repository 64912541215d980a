"""Kills: the process ended at any moment of a writing, full disks, books open elsewhere, two runs at once."""

from __future__ import annotations

import random
import shutil
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from budgetfix.pipeline.holding import holding
from tests.trials.kills_child import KILLED, begun, ended, in_child, killed_at, stepping, steps_of
from tests.trials.kills_desk import PLAN, Case, cases, clock, contents, same_ticks
from tests.trials.kills_disk import disk_rows
from tests.trials.kills_pairs import pair_rows
from tests.trials.trial import Asked, Result, Row, Trial

FROM_OUTSIDE, TWICE = 5, 3
"""Of so many kills one comes from outside, at a moment of the clock; of so many others, one is followed by a second."""
WEIGHTS = (2, 1, 4, 1)
"""How often each case is drawn: the one with ticks half of the time."""
STEP = "Killed at a step of its writing, a run leaves every file whole, the earlier or the new one, and every tick"
MOMENT = "So it is when it is killed from outside, at a moment of the clock"
AGAIN = "So it is when the next run is killed as well, while it ends what was begun"
AFTER = "The next run finds all files earlier or all new, nothing left over, and reads the same ticks"


@dataclass
class Bench:
    """A folder to break things in, the cases, how many steps each has, and what was read back so far."""

    folder: Path
    cases: tuple[Case, ...]
    steps: dict[str, int]
    seconds: dict[str, float]
    known: dict[bytes, dict[str, tuple[object, object]]]

    def place(self, case: Case) -> Path:
        """The folder of a case, as it is before."""
        place = self.folder / "at" / case.name.replace(" ", "-")
        case.lay(place)
        return place


def bench(folder: Path) -> Bench:
    """Everything is done once without harm: what comes out is what the case says."""
    made = Bench(folder, cases(folder), {}, {}, {})
    for case in made.cases:
        place = made.place(case)
        case.run(place)
        assert contents(place) == dict(case.after), f"{case.name} does not write what it should"
        place, began = made.place(case), clock()
        made.steps[case.name] = steps_of(place, partial(case.run, place))
        made.seconds[case.name] = clock() - began
    return made


def half_files(case: Case, place: Path) -> Iterator[str]:
    """What is wrong right after a kill, before anything is mended."""
    now = {name: data for name, data in contents(place).items() if not _hidden(name)}
    for name in sorted({*case.before, *case.after, *now}):
        allowed = [case.before.get(name), case.after.get(name)]
        if now.get(name) not in allowed:
            yield f"{name} is neither the earlier nor the new one"
        if name.endswith(PLAN) and name in case.before and name not in now:
            yield f"{name} is gone"
    if case.ticks is not None and case.ticks not in now.values():
        yield "the ticked workbook is not kept"


def _hidden(name: str) -> bool:
    return any(part.startswith(".") for part in name.split("/"))


def mixed(case: Case, place: Path, made: Bench) -> Iterator[str]:
    """What is wrong once the next run has the folder in hand."""
    with holding(place, case.names):
        now = contents(place)
    if now not in (dict(case.before), dict(case.after)):
        other = sorted(name for name in {*now, *case.after} if now.get(name) != case.after.get(name))
        yield f"neither all earlier nor all new: {', '.join(other)}"
    elif not same_ticks(case, place, made.known):
        yield "ticks are lost"


@dataclass
class Count:
    """Tries and breaks of one promise."""

    promise: str
    tried: int = 0
    broken: int = 0

    def row(self, seen: str = "") -> Row:
        """As it is told."""
        return Row(self.promise, self.tried, self.broken, seen)


def kill_rows(asked: Asked, made: Bench) -> tuple[list[Row], list[str]]:
    """Every kill, in an order that the seed fixes."""
    step, moment, again, after = Count(STEP), Count(MOMENT), Count(AGAIN), Count(AFTER)
    broken: list[str] = []
    for number in range(asked.tries):
        draw = random.Random(f"{asked.seed}/{number}")
        case = draw.choices(made.cases, WEIGHTS)[0]
        place = made.place(case)
        first = moment if number % FROM_OUTSIDE == FROM_OUTSIDE - 1 else step
        counts = [(first, _killed(case, place, made, draw, first is moment))]
        if first is step and draw.randrange(TWICE) == 0:
            counts.append((again, _killed_again(case, place, draw)))
        counts.append((after, list(mixed(case, place, made))))
        for count, wrong in counts:
            count.tried += 1
            count.broken += bool(wrong)
            broken += [f"seed {asked.seed}, kill {number}, {case.name}: {one} ({count.promise})" for one in wrong]
    return [step.row(), moment.row(), again.row(), after.row()], broken


def _killed(case: Case, place: Path, made: Bench, draw: random.Random, outside: bool) -> list[str]:
    if outside:
        in_child(partial(case.run, place), draw.random() * made.seconds[case.name])
    else:
        at = killed_at(draw.randint(1, made.steps[case.name]))
        code = in_child(partial(_stepped, case, place, at))
        if code != KILLED:
            return [f"the process was not killed, but ended with {code}"]
    return list(half_files(case, place))


def _stepped(case: Case, place: Path, at: Callable[[int, str, tuple[object, ...]], None]) -> None:
    stepping(place, partial(case.run, place), at)


def _killed_again(case: Case, place: Path, draw: random.Random) -> list[str]:
    """The next run is killed before, while or after it ends what was begun."""

    def next_run() -> None:
        with holding(place, case.names):
            pass

    at = killed_at(draw.randint(1, 12))
    in_child(partial(stepping, place, next_run, at))
    return list(half_files(case, place))


def run(asked: Asked) -> Result:
    """Every row of the trial."""
    made = bench(asked.folder)
    rows, broken = kill_rows(asked, made)
    for more in (disk_rows, pair_rows):
        found, wrong = more(asked, made)
        rows += found
        broken += wrong
    shutil.rmtree(asked.folder / "at", ignore_errors=True)
    return Result(tuple(rows), tuple(broken))


TRIAL = Trial("kills", "Kills, full disks, two at once", 24, 1_000, run)


def planted(case: Case, made: Bench, steps: Sequence[int]) -> list[str]:
    """What is found when a case is killed at each of these steps: for tests of the trial itself."""
    found = []
    for step in steps:
        place = made.place(case)
        ended(begun(partial(_stepped, case, place, killed_at(step))))
        found += list(half_files(case, place)) or list(mixed(case, place, made))
    return found
