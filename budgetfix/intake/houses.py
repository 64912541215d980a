"""A folder of jobs: which of its sub-folders are jobs, and which are passed over."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from budgetfix.intake.job import SURVEYS

WHAT_MAKES_A_JOB = (*SURVEYS, "faults.csv")


@dataclass(frozen=True)
class Houses:
    """Names of the sub-folders of one folder, in the order of their letters."""

    jobs: tuple[str, ...]
    others: tuple[str, ...] = ()


def is_job(folder: Path) -> bool:
    """True for a folder that holds a survey or listed faults."""
    return any((folder / name).is_file() for name in WHAT_MAKES_A_JOB)


def houses(folder: Path) -> Houses | None:
    """The jobs in a folder; None where it is a job itself, or holds none. Hidden folders are not looked at."""
    if not folder.is_dir() or is_job(folder):
        return None
    inside = sorted(one.name for one in folder.iterdir() if one.is_dir() and not one.name.startswith("."))
    jobs = tuple(name for name in inside if is_job(folder / name))
    return Houses(jobs, tuple(name for name in inside if name not in jobs)) if jobs else None
