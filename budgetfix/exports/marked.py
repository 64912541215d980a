"""The marked copy of a workbook that was refused: the user's own file is never touched."""

from __future__ import annotations

import os
from pathlib import Path


def write_marked(target: Path, data: bytes) -> None:
    """Write a file whole or not at all. Errors: OSError."""
    fresh = target.with_name(f".{target.name}.part")
    fresh.write_bytes(data)
    os.replace(fresh, target)
