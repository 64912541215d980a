"""Names of files and folders as text that every output can hold."""

from __future__ import annotations

import os


def readable(name: str) -> str:
    """A name as the system gave it, read as UTF-8, whatever encoding the system's language asks for.

    Python carries bytes that are no text in that encoding as lone surrogates, which no file can be written with; what
    is no UTF-8 either stands as `�`.
    """
    return os.fsencode(name).decode("utf-8", "replace")
