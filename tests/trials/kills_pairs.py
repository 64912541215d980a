"""Two runs at once in one folder: real processes, begun together."""

from __future__ import annotations

import random
import time
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from budgetfix.exports.lock import Busy
from budgetfix.pipeline.holding import holding
from tests.trials.kills_child import BUSY, DONE, REFUSED, begun, ended
from tests.trials.kills_desk import PLAN, Case, contents
from tests.trials.kills_disk import Told
from tests.trials.trial import Asked, Row

if TYPE_CHECKING:
    from tests.trials.kills import Bench

TWO = "Two runs begun at once in one folder: in the end all files are one run's, and every tick is there"
PAIRS = 5
"""A fifth as many pairs as kills."""


def pair_rows(asked: Asked, made: Bench) -> tuple[list[Row], list[str]]:
    """Pairs that write the same folder, the second with files that differ from those of the first in every byte."""
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
    return [told.row()], told.lines


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
