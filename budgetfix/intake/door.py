"""The one door through which files come in: ordinary files up to a size, and nothing that could keep us waiting."""

from __future__ import annotations

import os
import stat
from pathlib import Path

from budgetfix.base.limits import BOOK_BYTES
from budgetfix.base.problems import FileProblem, Place

A_FILE = "an ordinary file"
SMALLER = "make the pictures in it smaller, or take them out"
"""What to do about a workbook that is too large on disk."""
KINDS = (
    (stat.S_ISDIR, "a folder"),
    (stat.S_ISFIFO, "a pipe"),
    (stat.S_ISSOCK, "a socket"),
    (stat.S_ISCHR, "a device"),
    (stat.S_ISBLK, "a device"),
)


def bytes_of(
    path: Path, most: int, problems: list[FileProblem], place: Place | None = None, todo: str = ""
) -> bytes | None:
    """The whole file; or None after noting why it is not taken: no ordinary file, too large, not to be opened.

    A link is followed. `most`: bytes. `place`: where the file is named, for the message (default: the file itself).
    `todo`: what to do about one that is too large.
    """
    wanted, what_to_do = A_FILE, ""
    try:
        found = _no_file(path)
        if not found:
            with path.open("rb") as file:
                size = os.fstat(file.fileno()).st_size
                data = file.read(most + 1) if size <= most else b""
            if max(size, len(data)) <= most:
                return data
            found, wanted, what_to_do = f"{max(size, len(data)):,} bytes", f"{most:,} at most", todo
    except (OSError, ValueError) as error:
        found = f"a file that cannot be opened ({getattr(error, 'strerror', None) or error})"
    problems.append(FileProblem(place or Place(path.name), found, wanted, what_to_do))
    return None


def book_bytes(path: Path, problems: list[FileProblem]) -> bytes | None:
    """The whole workbook; or None after noting why it is not taken."""
    return bytes_of(path, BOOK_BYTES, problems, todo=SMALLER)


def there(path: Path) -> bool:
    """True where anything at all goes by that name, be it a folder, a pipe or a link to nothing."""
    return os.path.lexists(path)


def _no_file(path: Path) -> str:
    """What it is instead of a file; a pipe would keep us waiting if it were opened. Errors: OSError, ValueError."""
    mode = path.stat().st_mode
    return next((name for test, name in KINDS if test(mode)), "")
