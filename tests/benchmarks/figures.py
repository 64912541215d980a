"""Lines of a benchmark page, and what they are worked out with."""

from __future__ import annotations

import math
import resource
import time
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar

Made = TypeVar("Made")
KILOBYTES = 1024
HEAD = """| what | target | measured | |
| --- | --- | --- | --- |"""


@dataclass(frozen=True)
class Line:
    """One measured thing. `held`: whether the target was met; None where there is none."""

    what: str
    target: str
    measured: str
    held: bool | None = None

    def text(self) -> str:
        """One row of the table."""
        verdict = {True: "met", False: "**missed**", None: ""}[self.held]
        return f"| {self.what} | {self.target} | {self.measured} | {verdict} |"


@dataclass(frozen=True)
class Part:
    """One part of the page: a heading, how it is measured, and its lines, worked out one after the other."""

    title: str
    how: str
    lines: Callable[[], Iterable[Line]]


def peak_mb() -> float:
    """Most memory that this process ever held, in MB.

    Linux hands `ru_maxrss` on from the process that started this one, so its own figure is read where there is one.
    """
    own = Path("/proc/self/status")
    lines = own.read_text(encoding="utf-8").splitlines() if own.is_file() else []
    held = [int(line.split()[1]) for line in lines if line.startswith("VmHWM:")]
    return (held[0] if held else resource.getrusage(resource.RUSAGE_SELF).ru_maxrss) / KILOBYTES


def timed(do: Callable[[], Made], repeats: int = 1) -> tuple[float, Made]:
    """(least seconds of some repeats, what came out)."""
    best, made = math.inf, None
    for _ in range(repeats):
        began = time.perf_counter()
        made = do()
        best = min(best, time.perf_counter() - began)
    assert made is not None
    return best, made


def repeats_for(seconds: float) -> int:
    """More repeats of what is short."""
    return 5 if seconds < 0.2 else 2 if seconds < 1.0 else 0


def steady(do: Callable[[], Made]) -> tuple[float, Made]:
    """(least seconds, what came out), short things several times over."""
    seconds, made = timed(do)
    more = repeats_for(seconds)
    return (min(seconds, timed(do, more)[0]), made) if more else (seconds, made)


def geometric(ratios: Iterable[float]) -> float:
    """The geometric mean."""
    logs = [math.log(one) for one in ratios]
    return math.exp(sum(logs) / len(logs))


def spread(ratios: Sequence[float]) -> str:
    """Geometric mean and range, in words."""
    if len(ratios) == 1:
        return f"{ratios[0]:.2f}"
    return f"{geometric(ratios):.2f} (geometric mean of {len(ratios)}; {min(ratios):.2f} to {max(ratios):.2f})"
