"""The household's pace through the whole walk: typed in the brief, learnt from real minutes, shown, not taken twice."""

from __future__ import annotations

import time
from collections.abc import Mapping
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.paces import Learnt
from budgetfix.outcome.so_far import SoFar, StepBack
from budgetfix.pipeline.planning import Wish
from budgetfix.pipeline.reading import JobOptions, read
from budgetfix.pipeline.replanning import Replanned, replanned
from tests.pipeline.listed_job import proven_plan, write_job

TODAY = date(2026, 6, 1)
REMEDIES: list[dict[str, object]] = [
    {"remedy": f"m{number}", "answers": {f"f{number}": 1}, "hours": 0.5} for number in (1, 2, 3)
]


def folder_of(there: Path, **brief: object) -> Path:
    """Three remedies of half an hour each, and three sessions."""
    write_job(there, [300, 200, 100], REMEDIES, {"hours": [1, 1, 1], **brief})
    return there


def back(book: PlanBook, real: Mapping[str, int]) -> SoFar:
    """What comes back when some remedies are ticked, with the minutes that they really took."""
    assert book.remembered is not None
    done = book.so_far.done if book.so_far is not None else ()
    took = {one.planned.task.candidate: one.real_minutes for one in done} | dict(real)
    steps = tuple(
        StepBack(one, one.task.candidate in took, took.get(one.task.candidate)) for one in book.remembered.steps
    )
    return SoFar(book.remembered, (), steps)


def rest(folder: Path, so_far: SoFar) -> PlanBook:
    """The rest of a job, proven."""
    found = replanned(read(folder, JobOptions(), TODAY), so_far, TODAY, Wish(60.0, time.monotonic))
    assert isinstance(found, Replanned)
    assert found.book.proven
    return found.book


def minutes(book: PlanBook) -> dict[str, int]:
    """Planned minutes by remedy."""
    return {task.candidate: task.minutes for task in book.tasks}


def test_a_pace_in_the_brief(tmp_path: Path) -> None:
    """A household that takes 1.2 times the usual minutes plans 36 for 30; the usual pace is nothing to tell."""
    slow = proven_plan(folder_of(tmp_path, pace={"all": 1.2}))
    assert minutes(slow) == dict.fromkeys(("m1", "m2", "m3"), 36)
    assert slow.paces is not None
    assert slow.paces.household == Fraction(6, 5)
    usual = proven_plan(folder_of(tmp_path))
    assert minutes(usual) == dict.fromkeys(("m1", "m2", "m3"), 30)
    assert usual.paces is None


def test_real_minutes_change_the_rest(tmp_path: Path) -> None:
    """30 minutes took 60: all the rest is planned at (4 + 2) / 5 = 1.2 times, and the book says from what."""
    folder = folder_of(tmp_path)
    book = rest(folder, back(proven_plan(folder), {"m1": 60}))
    assert minutes(book) == {"m2": 36, "m3": 36}
    assert book.paces is not None
    assert book.paces.learnt == (Learnt("all", 1, 30, 60, Fraction(1), 4, Fraction(6, 5)),)


def test_learning_twice_starts_from_the_first_minutes(tmp_path: Path) -> None:
    """Then 36 planned took 36: that is 1.2 times the 30 of before, so (4 + 2 x 96/60) / 6 = 1.2 again."""
    folder = folder_of(tmp_path)
    once = rest(folder, back(proven_plan(folder), {"m1": 60}))
    twice = rest(folder, back(once, {"m2": 36}))
    assert minutes(twice) == {"m3": 36}
    assert twice.paces is not None
    assert twice.paces.learnt == (Learnt("all", 2, 60, 96, Fraction(1), 4, Fraction(6, 5)),)


@pytest.mark.parametrize("brief", [{"learn": "off"}, {}])
def test_nothing_learnt_changes_nothing(tmp_path: Path, brief: dict[str, object]) -> None:
    """With `learn: off`, or where what was done took what was planned, the rest keeps its minutes."""
    folder = folder_of(tmp_path, **brief)
    book = rest(folder, back(proven_plan(folder), {"m1": 60 if brief else 30}))
    assert minutes(book) == {"m2": 30, "m3": 30}
    assert (book.paces is None) == bool(brief)
