"""Is a workbook open in another program? Office programs leave a small file beside it while it is."""

from __future__ import annotations

from pathlib import Path

LOCKS = (".~lock.{}#", "~${}")
"""Names of such files beside the workbook's own (common practice: open documents; the usual one on Windows)."""


def open_lock(book: Path) -> Path | None:
    """The file that says so; None where nobody has the workbook open, as far as can be seen."""
    beside = (book.with_name(lock.format(book.name)) for lock in LOCKS)
    return next((one for one in beside if one.is_file()), None)
