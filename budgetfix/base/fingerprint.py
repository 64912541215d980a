"""Has anybody typed into a sheet? What stood in it when it was written, as one short text."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable

PROPERTY = "as written"
"""The document property of a workbook that holds its fingerprint."""


def fingerprint(cells: Iterable[tuple[str, str | float]]) -> str:
    """Sixteen hexadecimal digits of all (sheet, typed value); formulas and empty cells are left out by the caller.

    The order of rows has no say (sorting is not typing), nor has spacing, nor how a program writes a number.
    """
    lines = sorted(f"{sheet}\t{_plain(value)}" for sheet, value in cells)
    return hashlib.sha256("\n".join(lines).encode("utf-8", "replace")).hexdigest()[:16]


def _plain(value: str | float) -> str:
    return " ".join(value.split()) if isinstance(value, str) else f"{float(value):.9g}"
