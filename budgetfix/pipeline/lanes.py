"""Several jobs planned on all cores: each job lives in one process for good, with everything fitted for it.

The same calls in the same order a job give the same answers, however many processes there are.
"""

from __future__ import annotations

import os
import signal
from collections.abc import Callable, Sequence
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from contextlib import AbstractContextManager, suppress
from dataclasses import dataclass, replace
from multiprocessing import get_context, parent_process
from threading import Thread
from types import TracebackType

from budgetfix.base.problems import FilesRefused
from budgetfix.intake.job import Job
from budgetfix.optimize.problem import NoPlan
from budgetfix.optimize.sharing import Answered
from budgetfix.optimize.stock import Packs
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.alone import Alone, planned_alone
from budgetfix.pipeline.planning import Wish
from budgetfix.pipeline.seat import Place, Seat, answered, as_before, book, fair_held, fitted_more, sit
from budgetfix.pipeline.writing import plan_files

Seats = dict[int, Seat]
Tell = Callable[[str], None]


@dataclass(frozen=True)
class Sit:
    """Plan a job with every piece; what its files get wrong is told, not raised."""

    job: Job
    wish: Wish

    def __call__(self, seats: Seats, at: int) -> Answered | NoPlan | FilesRefused:
        try:
            found = sit(self.job, self.wish)
        except FilesRefused as refused:
            return refused
        if isinstance(found, NoPlan):
            return found
        seats[at] = found
        told = answered(found, (), self.wish)
        assert told is not None
        return told


@dataclass(frozen=True)
class Ask:
    """Answer a job within ceilings; `until`: when the clock ends for all of them (None: only its own seconds do)."""

    ceilings: Packs
    wish: Wish
    until: float | None = None

    def __call__(self, seats: Seats, at: int) -> Answered | None:
        return answered(seats[at], self.ceilings, _left(self.wish, self.until))


@dataclass(frozen=True)
class Refit:
    """Fit anew under the ceilings of an answer; True where that brought something new."""

    answer: Packs
    wish: Wish
    until: float | None = None

    def __call__(self, seats: Seats, at: int) -> bool:
        return fitted_more(seats[at], self.answer, _left(self.wish, self.until))


@dataclass(frozen=True)
class Undo:
    """Go back to what was there before a job was last fitted anew."""

    wish: Wish

    def __call__(self, seats: Seats, at: int) -> None:
        as_before(seats[at])


@dataclass(frozen=True)
class FairPieces:
    """The packs that the fair plan beside an answer holds (see `seat.fair_held`)."""

    answer: Packs
    wish: Wish

    def __call__(self, seats: Seats, at: int) -> Packs | None:
        return fair_held(seats[at], self.answer, self.wish)


def _left(wish: Wish, until: float | None) -> Wish:
    """No more seconds than are left for all; the clock is that of the machine, the same in every process."""
    left = wish.seconds if until is None else until - wish.clock()
    return replace(wish, seconds=max(0.0, min(wish.seconds, left)))


@dataclass(frozen=True)
class Made:
    """A plan's book and its files by name."""

    book: PlanBook
    files: dict[str, bytes]


@dataclass(frozen=True)
class Write:
    """Make the book and the files of a job's answer (see `seat.book`)."""

    place: Place
    wish: Wish

    def __call__(self, seats: Seats, at: int) -> Made:
        made = book(seats[at], self.place, self.wish)
        return Made(made, plan_files(made))


@dataclass(frozen=True)
class ByItself:
    """Plan a job that has nothing to do with the others; what its files get wrong is told, not raised."""

    job: Job
    wish: Wish

    def __call__(self, _seats: Seats, _at: int) -> Alone | NoPlan | FilesRefused:
        try:
            return planned_alone(self.job, self.wish)
        except FilesRefused as refused:
            return refused


Task = Sit | Ask | Refit | Undo | FairPieces | Write | ByItself
Result = Answered | NoPlan | FilesRefused | Made | Packs | Alone | bool | None

_HERE: Seats = {}
"""The jobs that live in this process, where it is one of several."""


class _Named(AbstractContextManager[None]):
    """Whatever goes wrong inside is told with the name of the job."""

    def __init__(self, name: str) -> None:
        self._name = name

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if error is not None:
            error.add_note(f"This happened in the job {self._name}.")


def _done(task: Task, name: str, at: int, seats: Seats | None = None) -> Result:
    with _Named(name):
        return task(_HERE if seats is None else seats, at)


def _begin() -> None:
    """A process ends when it is told to, or when the one that began it is gone; Ctrl-C is the other's matter."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    Thread(target=_end_with_parent, daemon=True).start()


def _end_with_parent() -> None:
    parent = parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


def cores() -> int:
    """Cores that this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


class LaneEnded(Exception):
    """The process that planned a job was ended from outside: it holds the job's name."""


class Lanes:
    """The processes, each with its jobs; with one lane, or one job, everything is done right here."""

    def __init__(self, names: Sequence[str], lanes: int, tell: Tell | None = None) -> None:
        self._names = tuple(names)
        self._tell = tell
        self._seats: Seats = {}
        count = min(lanes, len(names))
        self._pools = [_pool() for _ in range(count)] if count > 1 else []
        self._pids: list[Future[int]] = [pool.submit(os.getpid) for pool in self._pools]

    @property
    def processes(self) -> int:
        """How many there are beside this one."""
        return len(self._pools)

    @property
    def pids(self) -> tuple[int, ...]:
        """The processes that have begun, by lane."""
        return tuple(
            told.result() for told in self._pids if told.done() and not told.cancelled() and not told.exception()
        )

    def __enter__(self) -> Lanes:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Wait for idle processes; stop busy ones where something went wrong."""
        for pool in self._pools:
            pool.shutdown(wait=False, cancel_futures=True)
        if error is not None:
            for pid in self.pids:
                with suppress(ProcessLookupError):
                    os.kill(pid, signal.SIGTERM)
        for pool in self._pools:
            pool.shutdown(wait=True)

    def each(self, tasks: Sequence[tuple[int, Task]], doing: str) -> list[Result]:
        """Do every (job, task), and give what came of it in the same order. `doing` begins the line of progress."""
        if not self._pools:
            return [self._here(number, len(tasks), at, task, doing) for number, (at, task) in enumerate(tasks, start=1)]
        futures = [self._pools[at % len(self._pools)].submit(_done, task, self._names[at], at) for at, task in tasks]
        for number, _ in enumerate(as_completed(futures), start=1):
            self._say(f"{doing}: {number} of {len(tasks)}")
        return [_result(future, self._names[at]) for future, (at, _) in zip(futures, tasks, strict=True)]

    def _here(self, number: int, count: int, at: int, task: Task, doing: str) -> Result:
        words = f"{doing}: {self._names[at]}, {number} of {count}"
        self._say(words)
        return _done(self._heard(task, words), self._names[at], at, self._seats)

    def _heard(self, task: Task, words: str) -> Task:
        """The task, with its own progress behind ours."""
        tell = self._tell
        if tell is None:
            return task
        return replace(task, wish=replace(task.wish, report=lambda text: tell(f"{words}. {text}")))

    def _say(self, text: str) -> None:
        if self._tell is not None:
            self._tell(text)


def _result(future: Future[Result], name: str) -> Result:
    try:
        return future.result()
    except BrokenProcessPool as gone:
        raise LaneEnded(name) from gone


def _pool() -> ProcessPoolExecutor:
    return ProcessPoolExecutor(max_workers=1, mp_context=get_context("spawn"), initializer=_begin)
