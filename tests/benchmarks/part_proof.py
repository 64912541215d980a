"""Part 9: seconds to proof of whole houses, each in a process of its own so that its peak memory is its own."""

from __future__ import annotations

import json
import subprocess
import sys
import time
from collections.abc import Iterator
from dataclasses import asdict, dataclass

from budgetfix.optimize import solve
from budgetfix.optimize.problem import Answer
from tests.benchmarks.bare import handed_by
from tests.benchmarks.figures import Line, Part, peak_mb, timed
from tests.benchmarks.house_jobs import first_program, house_job, names, short

ROOMS = (1, 4, 8, 32)
TARGETS = {8: 5.0, 32: 30.0}
"""Seconds by rooms."""


@dataclass(frozen=True)
class Proof:
    """One house. Seconds: from files to a problem, to proof, and of bare HiGHS on the first model; peak memory in MB.

    `asked`, `reached`: points and least spend.
    """

    framing: float
    proof: float
    proven: bool
    bare: float
    rows: int
    columns: int
    peak_mb: float
    asked: tuple[int, int]
    reached: tuple[int, int]


def prove(name: str, bare: bool) -> Proof:
    """One house in this process; `bare`: then its first model by HiGHS alone as well, that memory not counted."""
    framing, house = timed(lambda: house_job(name))
    proof, answer = timed(lambda: solve(house.problem, seconds=120.0, clock=time.perf_counter, depth="figures"))
    assert isinstance(answer, Answer)
    peak = peak_mb()
    reached = (house.points - answer.plan.points, answer.plan.spent_minor)
    alone, rows, columns = _alone(name) if bare else (0.0, 0, 0)
    return Proof(
        framing, proof, answer.proven, alone, rows, columns, peak, (house.best, house.spend_minor), reached
    )  # fmt: skip


def _alone(name: str) -> tuple[float, int, int]:
    handed = handed_by(*first_program(house_job(name).problem))
    return handed.solved(), *handed.size


def elsewhere(name: str) -> Proof:
    """One house in a new process."""
    command = [sys.executable, "-m", "tests.benchmarks.part_proof", name]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    told = json.loads(done.stdout.splitlines()[-1])
    return Proof(**{**told, "asked": tuple(told["asked"]), "reached": tuple(told["reached"])})


def lines() -> Iterator[Line]:
    """House by house."""
    for rooms in ROOMS:
        for name in names(rooms):
            yield _line(rooms, name, elsewhere(name))


def _line(rooms: int, name: str, found: Proof) -> Line:
    target = TARGETS.get(rooms)
    right = found.proven and found.reached == found.asked
    asked = "" if right else f"; **{found.reached} reached, {found.asked} is best, proven: {found.proven}**"
    size = f"{found.rows:,} rows, {found.columns:,} columns"
    measured = (
        f"{found.proof:.2f} s, {found.proof / found.bare:.1f} × the {found.bare:.2f} s of bare HiGHS on its first "
        f"model ({size}); from files to problem {found.framing:.2f} s; at most {found.peak_mb:.0f} MB{asked}"
    )
    quick = target is None or found.proof < target
    said = "the optimum" if target is None else f"the optimum in < {target:g} s"
    return Line(short(name), said, measured, right and quick)


PART = Part(
    "Whole houses to proof",
    "Points and spend proven, each house in a process of its own, so that its peak memory is its own; the optimum is "
    "the one that a separate program proved.",
    lines,
)

if __name__ == "__main__":
    print(json.dumps(asdict(prove(sys.argv[1], bare=True))))
