"""The marked copy of a workbook that was refused: the user's own file is never touched."""

from __future__ import annotations

from pathlib import Path

from budgetfix.exports.files import write_whole
from budgetfix.exports.lock import Busy
from budgetfix.exports.moves import ChangedMeanwhile


def write_marked(target: Path, data: bytes) -> bool:
    """Write a file whole or not at all; False where it cannot be written, since the problems are told all the same."""
    try:
        write_whole(target.parent, {target.name: data})
    except (Busy, ChangedMeanwhile, OSError):
        return False
    return True
