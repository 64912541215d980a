"""Two runs at once in one folder: real processes, begun together."""

from __future__ import annotations

import os
import random
import subprocess
import sys
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from budgetfix.exports.lock import Busy
from budgetfix.pipeline.holding import holding
from tests.trials.kills_child import BUSY, DONE, REFUSED, begun, ended
from tests.trials.kills_desk import PLAN, Case, contents
from tests.trials.kills_disk import Told
from tests.trials.trial import Asked

if TYPE_CHECKING:
    from tests.trials.kills import Bench

TWO = "Two runs begun at once in one folder: in the end all files are one run's, and every tick is there"
WHOLE = "Two whole commands begun at once, as typed: the same, and one that is refused says what to do"
PAIRS, COMMANDS = 5, 100
"""A fifth as many pairs as kills, a hundredth as many of whole commands."""
PLANS, REPLANS = ("plan", "job", "-q"), ("replan", "job", "-q", "--day", "2026-06-01")
SAYS = ("Another run of budgetfix is at work in job.", "job/plan.xlsx holds ticks or figures of yours")


def pair_parts(asked: Asked) -> list[Callable[[Bench], list[Told]]]:
    """Both rows."""
    return [lambda made: [_pairs(asked, made)], lambda made: [_whole_commands(asked, made)]]


def _pairs(asked: Asked, made: Bench) -> Told:
    """Two processes with the same new files; often the second finds the lock, often what the first has written."""
    told = Told(TWO)
    for number in range(asked.tries // PAIRS):
        draw = random.Random(f"{asked.seed}/pair/{number}")
        case = made.cases[draw.randrange(len(made.cases))]
        place = made.place(case)
        waits = draw.random() < 0.5
        work = [partial(_one, case, place, draw.random() * 0.02, waits) for _ in range(2)]
        children = [begun(one) for one in work]
        codes = sorted(ended(child) for child in children)
        told.note(f"seed {asked.seed}, pair {number}, {case.name}", _wrong(case, place, codes))
    return told


def _whole_commands(asked: Asked, made: Bench) -> Told:
    """`plan` twice in a folder that has no plan, or `plan` beside `replan` in one with a ticked workbook."""
    told, place = Told(WHOLE), asked.folder / "whole" / "job"
    alone: dict[str, list[dict[str, bytes]]] = {}
    for number in range(asked.tries // COMMANDS):
        case = made.cases[1 + number % 2]
        words = (PLANS, PLANS if case.ticks is None else REPLANS)
        if case.name not in alone:
            case.lay(place)
            _typed(place, words[1]).communicate()
            alone[case.name] = [dict(case.before), contents(place)]
        case.lay(place)
        both = [_typed(place, one) for one in words]
        said = [one.communicate()[1] for one in both]
        codes = [one.returncode for one in both]
        wrong = [f"codes {codes}"] if not set(codes) <= {0, 2} or (codes == [2, 2] and case.ticks is None) else []
        wrong += [f"said {text}" for code, text in zip(codes, said, strict=True) if code and not text.startswith(SAYS)]
        wrong += [] if contents(place) == alone[case.name][0 in codes] else ["not all files are one run's"]
        told.note(f"commands {number}, {case.name}", wrong)
    return told


def _typed(place: Path, words: tuple[str, ...]) -> subprocess.Popen[str]:
    paths = os.pathsep.join(sys.path)
    return subprocess.Popen(
        [sys.executable, "-m", "budgetfix", *words], cwd=place.parent, text=True, stderr=subprocess.PIPE,
        env={**os.environ, "PYTHONPATH": paths, "COLUMNS": "200"},
    )  # fmt: skip


def _one(case: Case, place: Path, pause: float, waits: bool) -> None:
    time.sleep(pause)
    while True:
        try:
            case.run(place)
            return
        except Busy:
            if not waits:
                raise
            time.sleep(0.005)


def _wrong(case: Case, place: Path, codes: list[int]) -> list[str]:
    with holding(place, case.names):
        now = contents(place)
    wrong = [] if DONE in codes else [f"neither was done: {codes}"]
    wrong += [f"ended with {code}" for code in codes if code not in (DONE, BUSY, REFUSED)]
    if now != dict(case.after):
        wrong.append("not all files are one run's")
    if case.ticks is not None and case.ticks not in now.values():
        wrong.append("the ticked workbook is gone")
    if PLAN in case.after and now.get(PLAN) != case.after[PLAN]:
        wrong.append("the workbook is not the new one")
    return wrong
