"""What an earlier plan left in a job folder that the new one does not write: it would speak of another plan."""

from __future__ import annotations

import os
from collections.abc import Iterable
from fnmatch import fnmatchcase
from pathlib import Path

SIGNS = {
    "quote.html": b"<!DOCTYPE html>",
    "landlord.txt": b"Date: ____",
    "plan-*.ics": b"PRODID:-//budgetfix//",
}
"""Files that only some plans have, by pattern, and what ours hold near their beginning."""
NEAR = 200
"""Bytes."""


def outdated(folder: Path, made: Iterable[str]) -> tuple[str, ...]:
    """Names of our own files of an earlier plan in this folder that are not among `made`.

    Errors: OSError, also for a folder that may not be looked through: what stayed would speak of another plan.
    """
    if not folder.is_dir():
        return ()
    kept, there = frozenset(made), sorted(os.listdir(folder))
    return tuple(
        name
        for pattern, sign in SIGNS.items()
        for name in there
        if fnmatchcase(name, pattern) and name not in kept and _begins_with(folder / name, sign)
    )


def _begins_with(path: Path, sign: bytes) -> bool:
    return path.is_file() and sign in path.read_bytes()[:NEAR]
