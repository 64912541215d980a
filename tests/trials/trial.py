"""What a trial asks for and gives back: it tries to break promises, many times, in an order that a seed fixes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True)
class Asked:
    """How often to try, and in which order. `folder` is empty, the trial's own, and is taken away afterwards.

    `lanes`: processes at most. The counts that come out are the same for the same `seed` and `tries`, whatever the
    lanes, the clock and the machine.
    """

    seed: int
    tries: int
    folder: Path
    lanes: int = 1


@dataclass(frozen=True)
class Row:
    """One promise: how often it was tried, how often it did not hold, and what else came out, in a few words."""

    promise: str
    tried: int
    broken: int
    seen: str = ""


@dataclass(frozen=True)
class Result:
    """Every promise of a trial, and a line for each break with all that is needed to see it again.

    `measured`: a table of what depends on the machine (times, memory), its headings first; empty for none.
    """

    rows: tuple[Row, ...]
    broken: tuple[str, ...] = ()
    measured: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True)
class Trial:
    """`small` tries in the gate, `long` in `make trials`."""

    slug: str
    title: str
    small: int
    long: int
    run: Callable[[Asked], Result]
