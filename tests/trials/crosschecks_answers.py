"""The same job answered in other ways: by trying everything, by another solver, under another Python."""

from __future__ import annotations

import importlib
import json
import sys
from pathlib import Path
from random import Random

from tests.proof.checker import broken
from tests.proof.comparing import unlike as unlike_every_plan
from tests.proof.every_plan import best_plan
from tests.proof.job_files import read_job
from tests.proof.random_jobs import write
from tests.trials.crosschecks_child import Came, came, unlike
from tests.trials.crosschecks_desk import JOB, VERBS, Desk
from tests.trials.crosschecks_places import Tried

CBC = (sys.executable, "-m", "tests.trials.crosschecks_cbc")
NUMBERS = 100_000


def every_plan(desk: Desk, place: Path, dice: Random) -> Tried:
    """The command on a random job of listed faults, against every set of remedies in every placing."""
    del desk
    number = dice.randrange(NUMBERS)
    write(place / JOB, number)
    job = read_job(place / JOB)
    plan, best = came(VERBS["plan --json"], place, place / JOB), best_plan(job)
    said = f"listed faults {number}"
    if best is None or plan.code != 0:
        return said, [] if best is None and plan.code == 1 else [f"exit code {plan.code}; every plan: {best}"]
    told = json.loads(plan.out)
    return said, [*broken(job, told), *unlike_every_plan(job, told, best)]


def by_cbc(desk: Desk, place: Path, dice: Random) -> Tried:
    """A random job of listed faults, or one of the pool, with HiGHS and with CBC."""
    if dice.random() < 0.2 or desk.tries < 100:
        index, verb = desk.drawn(dice, ("plan --json", "plan", "replan"))
        job = desk.copy(index, verb, place / JOB)
        return f"{verb} of job {index}", unlike(desk.plain(index, verb), came(VERBS[verb], place, job, command=CBC))
    number = dice.randrange(NUMBERS)
    plans: list[Came] = []
    for name, command in (("highs", ()), ("cbc", CBC)):
        write(place / name / JOB, number)
        more = {"command": command} if command else {}
        plans.append(came(VERBS["plan --json"], place / name, place / name / JOB, **more))  # type: ignore[arg-type]
    return f"listed faults {number}", unlike(*plans)


def without_cbc() -> str:
    """Why CBC cannot be asked here; empty where it can."""
    pulp = importlib.import_module("pulp")
    cbc = getattr(pulp, "PULP_CBC_CMD", None)
    if cbc is not None and cbc(msg=False).available():
        return ""
    return f"PuLP {importlib.import_module('importlib.metadata').version('pulp')} ships no CBC"
