"""What an earlier run began to write in a folder, and did not end because it was killed."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path

from budgetfix.base.limits import RECORD_BYTES
from budgetfix.base.moves import AHEAD, ASIDE, BACK, Link, Move, links_of, moves_of


@dataclass(frozen=True)
class Unfinished:
    """Moves that were begun, and whether they were on their way `back`. `moves` None: the record is none of ours."""

    moves: tuple[Move, ...] | None
    back: bool
    links: tuple[Link, ...] = ()


def unfinished(folder: Path) -> Unfinished | None:
    """What lies aside with a record of moves; None where no move was begun. Errors: OSError."""
    aside = folder / ASIDE
    if not os.path.lexists(aside):
        return None
    if aside.is_symlink() or not aside.is_dir() or not _ours(aside):
        return Unfinished(None, False)
    for name, back in ((BACK, True), (AHEAD, False)):
        record = aside / name
        if os.path.lexists(record):
            sound = record.is_file() and not record.is_symlink() and record.stat().st_size <= RECORD_BYTES
            data = record.read_bytes() if sound else b""
            return Unfinished(moves_of(data), back, links_of(data))
    return None


def _ours(aside: Path) -> bool:
    """False where somebody else made it: moves are not taken from strangers who may write into a shared folder."""
    return not hasattr(os, "geteuid") or aside.stat().st_uid == os.geteuid()
