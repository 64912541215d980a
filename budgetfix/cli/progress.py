"""Progress on a terminal, on standard error, once something takes longer than half a second."""

from __future__ import annotations

import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from threading import Event, Lock, Thread

AFTER_SECONDS = 0.5
BEAT_SECONDS = 1.0
"""How often the seconds move on while nothing new is told."""
LEAST_SECONDS = 0.1
"""Between two lines."""
WIDTH = 78


class Progress:
    """One line that is written over; nothing in a pipe. Call `clear` when done."""

    def __init__(self, clock: Callable[[], float] = time.monotonic, *, beating: bool = True) -> None:
        self._clock = clock
        self._started = self._last = clock()
        self._text = ""
        self._shown = 0
        self._lock = Lock()
        self._done = Event()
        if beating:
            Thread(target=self._beat, daemon=True).start()

    def __call__(self, text: str) -> None:
        """Tell something new; shown when it is time for another line."""
        with self._lock:
            self._text = text
            if self._clock() - self._last >= LEAST_SECONDS:
                self._show()

    def _beat(self) -> None:
        """A long solve says nothing: the seconds move on all the same."""
        while not self._done.wait(BEAT_SECONDS):
            with self._lock:
                if not self._done.is_set():
                    self._show()

    def _show(self) -> None:
        now = self._clock()
        if now - self._started < AFTER_SECONDS or not self._text:
            return
        self._last = now
        seconds = f"  {now - self._started:.0f} s"
        line = self._text[: WIDTH - len(seconds)] + seconds
        sys.stderr.write("\r" + line.ljust(self._shown))
        sys.stderr.flush()
        self._shown = len(line)

    def clear(self) -> None:
        """Wipe the line."""
        self._done.set()
        with self._lock:
            if self._shown:
                sys.stderr.write("\r" + " " * self._shown + "\r")
                sys.stderr.flush()
                self._shown = 0


def progress(quiet: bool) -> Progress | None:
    """A progress line, or None where nobody would see it."""
    return None if quiet or not sys.stderr.isatty() else Progress()


@contextmanager
def progress_shown(quiet: bool) -> Iterator[Progress | None]:
    """A progress line while something is worked out, wiped before anything else is said."""
    line = progress(quiet)
    try:
        yield line
    finally:
        if line is not None:
            line.clear()
