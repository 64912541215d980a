"""A job planned under another name than its folder's: `python -m tests.trials.crosschecks_named FOLDER NAME-IN-HEX`."""

from __future__ import annotations

import os
import sys
import time
from dataclasses import replace
from datetime import date
from pathlib import Path

from budgetfix.intake.job import Job
from budgetfix.optimize.problem import NoPlan
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.reading import JobOptions, read
from budgetfix.pipeline.writing import write_plan


def main(folder: Path, name: str) -> int:
    """Exit code 0, or 1 where there is no plan."""
    job: Job = replace(read(folder, JobOptions(), date(2026, 6, 1)), name=name)
    book = planned(job, Wish(600.0, time.monotonic))
    if isinstance(book, NoPlan):
        return 1
    write_plan(folder, book)
    return 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), os.fsdecode(bytes.fromhex(sys.argv[2]))))
