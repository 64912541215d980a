"""Kills: the process ended at any moment of a writing, full disks, books open elsewhere, two runs at once."""

from __future__ import annotations

import pickle
import random
import shutil
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from budgetfix.pipeline.holding import holding
from tests.trials.kills_child import KILLED, begun, ended, in_child, killed_at, stepping, steps_of
from tests.trials.kills_desk import PLAN, Case, cases, clock, contents, same_ticks
from tests.trials.kills_disk import Told, disk_parts
from tests.trials.kills_pairs import pair_parts
from tests.trials.trial import Asked, Result, Trial

FROM_OUTSIDE, TWICE = 5, 3
"""Of so many kills one comes from outside, at a moment of the clock; of so many others, one is followed by a second."""
WEIGHTS = (2, 1, 4, 1)
"""How often each case is drawn: the one with ticks half of the time."""
STEP = "Killed at a step of its writing, a run leaves every file whole, the earlier or the new one, and every tick"
MOMENT = "So it is when it is killed from outside, at a moment of the clock"
AGAIN = "So it is when the next run is killed as well, while it ends what was begun"
AFTER = "The next run finds all files earlier or all new, nothing left over, and reads the same ticks"


Part = Callable[["Bench"], list[Told]]


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


def kill_rows(asked: Asked, made: Bench, part: int = 0, parts: int = 1) -> list[Told]:
    """Every kill, in an order that the seed fixes; or every so many of them, from `part` on."""
    step, moment, again, after = Told(STEP), Told(MOMENT), Told(AGAIN), Told(AFTER)
    for number in range(part, asked.tries, parts):
        draw = random.Random(f"{asked.seed}/{number}")
        case = draw.choices(made.cases, WEIGHTS)[0]
        place = made.place(case)
        first = moment if number % FROM_OUTSIDE == FROM_OUTSIDE - 1 else step
        what = f"seed {asked.seed}, kill {number}, {case.name}"
        first.note(what, _killed(case, place, made, draw, first is moment))
        if first is step and draw.randrange(TWICE) == 0:
            again.note(what, _killed_again(case, place, draw))
        after.note(what, list(mixed(case, place, made)))
    return [step, moment, again, after]


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

    at = killed_at(draw.randint(1, 40))
    in_child(partial(stepping, place, next_run, at))
    return list(half_files(case, place))


def run(asked: Asked) -> Result:
    """Every row of the trial, in so many processes as there are lanes."""
    made = bench(asked.folder)
    kills = [partial(kill_rows, asked, part=part, parts=PARTS) for part in range(PARTS)]
    found = side_by_side(asked.lanes, asked.folder, [*kills, *disk_parts(asked), *pair_parts(asked)], made)
    told: dict[str, Told] = {}
    for one in found:
        told.setdefault(one.promise, Told(one.promise)).add(one)
    return Result(tuple(one.row() for one in told.values()), tuple(line for one in told.values() for line in one.lines))


PARTS = 8
"""The kills are dealt out in so many parts, whatever the lanes."""


def side_by_side(lanes: int, folder: Path, parts: Sequence[Part], made: Bench) -> list[Told]:
    """What every part tells, in their order. Each lane is a process with a folder of its own."""
    children = [begun(partial(_lane, lane, lanes, folder, parts, made)) for lane in range(lanes)]
    codes = [ended(child) for child in children]
    assert codes == [0] * lanes, f"a lane ended with {codes}"
    return [one for at in range(len(parts)) for one in pickle.loads((folder / f"told-{at}").read_bytes())]


def _lane(lane: int, lanes: int, folder: Path, parts: Sequence[Part], made: Bench) -> None:
    mine = replace(made, folder=folder / f"lane-{lane}")
    for at in range(lane, len(parts), lanes):
        (folder / f"told-{at}").write_bytes(pickle.dumps(parts[at](mine)))
    shutil.rmtree(mine.folder, ignore_errors=True)


TRIAL = Trial("kills", "Kills, full disks, two at once", 24, 1_000, run)


def planted(case: Case, made: Bench, steps: Sequence[int]) -> list[str]:
    """What is found when a case is killed at each of these steps: for tests of the trial itself."""
    found = []
    for step in steps:
        place = made.place(case)
        ended(begun(partial(_stepped, case, place, killed_at(step))))
        found += list(half_files(case, place)) or list(mixed(case, place, made))
    return found
