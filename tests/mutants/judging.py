"""Judge the mutants of one module: each in a process of its own, by the tests that run its line, quick ones first.

Nobody waits for tests that began to run endlessly: a process that takes three times the seconds that its tests took
before the change, and five more, is ended, and its mutant counts as killed "by time".
"""

from __future__ import annotations

import gc
import importlib
import os
import resource
import time
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from types import FunctionType

import pytest

from tests.mutants.operators import Mutant
from tests.mutants.swapped import dotted, forget, instead, living, swap

KILLED, SURVIVED, BY_TIME, UNTOUCHED, BROKEN = "killed", "survived", "killed by time", "no test", "cannot judge"
ARGUMENTS = ("-q", "-p", "no:cacheprovider", "--capture=no", "--no-header")
MEMORY = 3 * 2**30
"""Bytes that a mutant may take beyond what its process has at its start."""


@dataclass(frozen=True)
class Case:
    """A mutant, and the tests that judge it, in their order. `seconds`: what they took together before the change.

    `cold`: the module itself runs what is changed, so it must be imported anew.
    """

    mutant: Mutant
    tests: tuple[str, ...]
    seconds: float
    cold: bool


@dataclass(frozen=True)
class Verdict:
    """What became of a mutant, `by` the first test that noticed."""

    mutant: Mutant
    verdict: str
    by: str = ""


Found = tuple[str, str]
"""A verdict, and the test that decided it."""
Tell = Callable[[Verdict], None]


def judge(module: str, source: str, cases: Iterable[Case], tell: Tell) -> None:
    """Tell the verdict on each case. This process must not have imported budgetfix."""
    warm: list[Case] = []
    cold: list[Case] = []
    for case in cases:
        if not case.tests:
            tell(Verdict(case.mutant, UNTOUCHED))
        else:
            (cold if case.cold else warm).append(case)
    left = _warmed(module, source, warm, tell) if warm else []
    sound: dict[str, bool] = {}
    for case in [*left, *cold]:
        tell(Verdict(case.mutant, *_surely(case, partial(_fresh, source=source), sound)))


Work = Callable[[Case, bool], Found]
"""Run the tests of a case, with its change in place or without it."""


def _surely(case: Case, work: Work, sound: dict[str, bool]) -> tuple[str, str]:
    """A verdict whose test passes without the change, as `sound` remembers; one that does not is left out."""
    while True:
        verdict, by = _apart(case, partial(work, case, True))
        if verdict != KILLED or not by:
            return verdict, by
        if by not in sound:
            sound[by] = (
                _apart(replace(case, tests=(by,)), partial(work, replace(case, tests=(by,)), False))[0] == SURVIVED
            )
        if sound[by]:
            return verdict, by
        case = replace(case, tests=tuple(test for test in case.tests if test != by))
        if not case.tests:
            return BROKEN, by


def _warmed(module: str, source: str, cases: list[Case], tell: Tell) -> list[Case]:
    """Collect all tests once and judge from there. Gives back what must be judged by importing anew."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            os.close(reading)
            _quiet()
            _run({test for case in cases for test in case.tests}, Loop(module, source, cases, writing))
        finally:
            os._exit(0)
    os.close(writing)
    told: dict[int, str] = {}
    with os.fdopen(reading, encoding="utf-8") as lines:
        for line in lines:
            number, verdict, by = line.rstrip("\n").split("\t")
            told[int(number)] = verdict
            if verdict != BROKEN:
                tell(Verdict(cases[int(number)].mutant, verdict, by))
    os.waitpid(child, 0)
    return [case for at, case in enumerate(cases) if told.get(at, BROKEN) == BROKEN]


class Loop:
    """A pytest plugin whose run loop judges one mutant after the other, each in a fork of this process."""

    def __init__(self, module: str, source: str, cases: list[Case], writing: int) -> None:
        self.module, self.source, self.cases, self.writing = module, source, cases, writing
        self.items: dict[str, pytest.Item] = {}
        self.functions: dict[str, list[FunctionType]] = {}

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Instead of running the tests once."""
        self.items = {item.nodeid: item for item in session.items}
        importlib.import_module(dotted(self.module))
        forget()
        self.functions = living(self.module)
        gc.freeze()  # what never changes is not touched by collections of the forks, so it is never copied for them
        sound: dict[str, bool] = {}
        for number, case in enumerate(self.cases):
            verdict, by = _surely(case, self._one, sound)
            os.write(self.writing, f"{number}\t{verdict}\t{by}\n".encode())
        return True

    def _one(self, case: Case, changed: bool) -> Found:
        if changed and not swap(case.mutant, self.source, self.functions):
            return BROKEN, ""
        return first_failure(self.items, case.tests)


def first_failure(items: dict[str, pytest.Item], tests: Iterable[str]) -> Found:
    """Run these tests until one fails, which is named."""
    from _pytest.runner import runtestprotocol

    chosen = [items[test] for test in tests if test in items]
    for item, following in zip(chosen, [*chosen[1:], None], strict=True):
        if any(report.failed for report in runtestprotocol(item, nextitem=following, log=False)):
            return KILLED, item.nodeid
    return (SURVIVED if chosen else BROKEN), ""


class Only:
    """A pytest plugin that runs the tests of a case, in its order, and names the first that fails."""

    def __init__(self, tests: tuple[str, ...]) -> None:
        self.tests = tests
        self.found: Found = (BROKEN, "")

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Instead of running all that was collected. What cannot even be imported is noticed."""
        items = {item.nodeid: item for item in session.items}
        self.found = (KILLED, "") if session.testsfailed else first_failure(items, self.tests)
        return True


def _fresh(case: Case, changed: bool, source: str) -> Found:
    if changed:
        instead(case.mutant, source)
    only = Only(case.tests)
    _run(set(case.tests), only)
    return only.found


def _run(tests: Iterable[str], plugin: object) -> None:
    _quiet_hypothesis()
    files = sorted({test.split("::")[0] for test in tests})
    pytest.main([*ARGUMENTS, *files], plugins=[plugin])


def _quiet_hypothesis() -> None:
    from hypothesis import HealthCheck, Phase, settings

    settings.register_profile(
        "mutants",
        derandomize=True,
        database=None,
        deadline=None,
        phases=(Phase.explicit, Phase.generate),
        suppress_health_check=list(HealthCheck),
    )
    settings.load_profile("mutants")


def _apart(case: Case, work: Callable[[], Found]) -> Found:
    """Do the work in a fork, with a limit to its processor's seconds, its memory and the time on the wall."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            os.close(reading)
            _quiet()
            _limited(case.seconds)
            os.write(writing, "\t".join(work()).encode())
        finally:
            os._exit(0)
    os.close(writing)
    code = _ended(child, 60 + 20 * case.seconds)
    with os.fdopen(reading, encoding="utf-8") as said:
        words = said.read()
    if words:
        verdict, by = words.split("\t")
        return verdict, by
    return (BY_TIME if code < 0 else BROKEN), ""


def _quiet() -> None:
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    os.dup2(nowhere, 2)


def _limited(seconds: float) -> None:
    most = int(5 + 3 * seconds)
    resource.setrlimit(resource.RLIMIT_CPU, (most, most + 2))
    pages = int(Path("/proc/self/statm").read_text("ascii").split()[0]) if Path("/proc/self/statm").exists() else 0
    if pages:
        most = pages * resource.getpagesize() + MEMORY
        resource.setrlimit(resource.RLIMIT_AS, (most, most))


def _ended(child: int, seconds: float) -> int:
    """The exit code, or minus the signal; ended from outside when it takes longer on the wall."""
    last, pause = time.monotonic() + seconds, 0.001
    while True:
        done, status = os.waitpid(child, os.WNOHANG)
        if done:
            return os.waitstatus_to_exitcode(status)
        if time.monotonic() > last:
            os.kill(child, 9)
            return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        time.sleep(pause)
        pause = min(0.05, pause * 1.5)
