"""Jobs at each limit, planned by the command in a process of its own: time and memory."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tests.trials.limits_jobs import Axis

HEADS = ("A job with", "How much", "Seconds", "Of computing", "Megabytes", "Workbook kB", "Page kB", "Plan")
SECONDS = 20
"""Given to the choosing of each plan; reading, looking around the plan and writing come on top."""


LONGEST = ("rooms",)
"""Begun before the others."""


@dataclass(frozen=True)
class Measured:
    """One run of the command. `seconds` by the clock, `computing` of the processor; `megabytes` at the highest."""

    axis: str
    size: int
    seconds: float
    computing: float
    megabytes: float
    code: int
    proven: bool | None
    """None: no plan, or one that does nothing."""
    share: int
    """Of the most that any plan can take away, in hundredths, rounded down."""
    book: int
    page: int

    @property
    def row(self) -> tuple[str, ...]:
        """As a row of the table."""
        most = f"{self.share} % of the most there is, or more"
        plan = {True: "proven", False: most, None: f"nothing, exit {self.code}"}[self.proven]
        seconds, computing = f"{self.seconds:.0f}", f"{self.computing:.0f}"
        sizes = (f"{self.book / 1000:,.0f}", f"{self.page / 1000:,.0f}")
        return (self.axis, f"{self.size:,}", seconds, computing, f"{self.megabytes:,.0f}", *sizes, plan)


def measured(folder: Path, axes: Sequence[Axis], lanes: int) -> tuple[list[Measured], list[str]]:
    """Every axis at its limit, `lanes` jobs at a time; and a line for each that gave no plan.

    The longest are begun first, so that no lane waits for them in the end; told in the order of the axes.
    """
    with ThreadPoolExecutor(max(1, lanes)) as at_work:
        order = sorted(enumerate(axes), key=lambda one: one[1].name not in LONGEST)
        begun = {number: at_work.submit(run, folder / f"large-{number}", axis, axis.size) for number, axis in order}
        found = [begun[number].result() for number in range(len(axes))]
    bad = [
        f"{one.size:,} {one.axis}: exit {one.code}, no plan that does anything" for one in found if one.proven is None
    ]
    return found, bad


def run(folder: Path, axis: Axis, size: int) -> Measured:
    """One job through `plan --json`."""
    axis.write(folder, size)
    words = [sys.executable, "-m", "budgetfix", "plan", str(folder), "--json", "--seconds", str(SECONDS)]
    begun = time.monotonic()
    with (folder / "told.json").open("wb") as told:
        child = subprocess.Popen(words, stdout=told, stderr=subprocess.DEVNULL)
        _, status, used = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)
    text = (folder / "told.json").read_text("utf-8")
    plan: dict[str, Any] = json.loads(text) if text else {"chosen": []}
    does = bool(plan["chosen"])
    return Measured(
        axis.name,
        size,
        time.monotonic() - begun,
        used.ru_utime + used.ru_stime,
        used.ru_maxrss / 1024,
        child.returncode,
        bool(plan["proven"]) if does else None,
        100 * plan["improvement"] // max(1, plan["bound"]) if does else 0,
        _bytes(folder / "plan.xlsx"),
        _bytes(folder / "plan.html"),
    )


def _bytes(path: Path) -> int:
    return path.stat().st_size if path.is_file() else 0
