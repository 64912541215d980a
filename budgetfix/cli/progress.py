"""Progress on a terminal, on standard error, once something takes longer than half a second."""

from __future__ import annotations

import sys
import time
from collections.abc import Callable

AFTER_SECONDS = 0.5


class Progress:
    """One line that is written over; nothing in a pipe. Call `clear` when done."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._started = clock()
        self._shown = 0

    def __call__(self, text: str) -> None:
        if self._clock() - self._started < AFTER_SECONDS:
            return
        line = text[:78]
        sys.stderr.write("\r" + line.ljust(self._shown))
        sys.stderr.flush()
        self._shown = len(line)

    def clear(self) -> None:
        """Wipe the line."""
        if self._shown:
            sys.stderr.write("\r" + " " * self._shown + "\r")
            sys.stderr.flush()
            self._shown = 0


def progress(quiet: bool) -> Progress | None:
    """A progress line, or None where nobody would see it."""
    return None if quiet or not sys.stderr.isatty() else Progress()
