"""The one door through which files come in: ordinary files up to a size, and nothing that could keep us waiting."""

from __future__ import annotations

import os
import stat
from pathlib import Path

from budgetfix.base.problems import FileProblem, Place

A_FILE = "an ordinary file"
KINDS = (
    (stat.S_ISDIR, "a folder"),
    (stat.S_ISFIFO, "a pipe"),
    (stat.S_ISSOCK, "a socket"),
    (stat.S_ISCHR, "a device"),
    (stat.S_ISBLK, "a device"),
)


def bytes_of(path: Path, most: int, problems: list[FileProblem], place: Place | None = None) -> bytes | None:
    """The whole file; or None after noting why it is not taken: no ordinary file, too large, not to be opened.

    A link is followed. `most`: bytes. `place`: where the file is named, for the message (default: the file itself).
    """
    wanted = A_FILE
    try:
        found = _no_file(path)
        if not found:
            with path.open("rb") as file:
                data = file.read(most + 1)
                size = max(os.fstat(file.fileno()).st_size, len(data))
            if len(data) <= most:
                return data
            found, wanted = f"{size:,} bytes", f"{most:,} at most"
    except (OSError, ValueError) as error:
        found = f"a file that cannot be opened ({getattr(error, 'strerror', None) or error})"
    problems.append(FileProblem(place or Place(path.name), found, wanted))
    return None


def there(path: Path) -> bool:
    """True where anything at all goes by that name, be it a folder, a pipe or a link to nothing."""
    return os.path.lexists(path)


def _no_file(path: Path) -> str:
    """What it is instead of a file; a pipe would keep us waiting if it were opened. Errors: OSError, ValueError."""
    mode = path.stat().st_mode
    return next((name for test, name in KINDS if test(mode)), "")
