"""What an earlier plan left in a job folder that the new one does not write: it would speak of another plan."""

from __future__ import annotations

from collections.abc import Iterable
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
    """Names of our own files of an earlier plan in this folder that are not among `made`. Errors: OSError."""
    kept = frozenset(made)
    return tuple(
        path.name
        for pattern, sign in SIGNS.items()
        for path in sorted(folder.glob(pattern))
        if path.is_file() and path.name not in kept and sign in path.read_bytes()[:NEAR]
    )
