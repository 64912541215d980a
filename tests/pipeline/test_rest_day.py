"""The day as of which the rest of a job is planned, where none is named."""

from __future__ import annotations

from datetime import date

import pytest

from budgetfix.brief.models import Brief, Hours
from budgetfix.outcome.book import Task
from budgetfix.outcome.so_far import PlannedStep, Remembered, SoFar, StepBack
from budgetfix.pipeline.rest_day import standing_day

FIRST, SIXTH, SEVENTH, EIGHTH = (date(2026, 6, day) for day in (1, 6, 7, 8))


def brief(*days: date | None, ordered: date = FIRST) -> Brief:
    """Four hours on each of these days."""
    made = tuple(Hours(minutes=(240,), day=at, length_minutes=240, on=on) for at, on in enumerate(days))
    return Brief(hours=made, ordered=ordered)


def ticked(*days: date) -> SoFar:
    """A plan made on the first, with a step done on each of these days."""
    task = Task("i1", "Sweep", 1, 1, 1, "Sweep", 10, 10, 10, 10, 1)
    steps = [StepBack(PlannedStep(f"i1#{at}", task, on=on), True) for at, on in enumerate(days, 1)]
    return SoFar(Remembered(ordered=FIRST), (), tuple(steps))


@pytest.mark.parametrize(
    ("made", "so_far", "today", "day"),
    [
        (brief(SIXTH, SEVENTH), ticked(SIXTH), SEVENTH, SEVENTH),
        (brief(SIXTH, SEVENTH), ticked(), EIGHTH, FIRST),
        (brief(SIXTH, SEVENTH), ticked(SIXTH), EIGHTH, SIXTH),
        (brief(SIXTH, SEVENTH, ordered=EIGHTH), ticked(SIXTH), EIGHTH, EIGHTH),
        (brief(SIXTH, None), ticked(SIXTH), EIGHTH, EIGHTH),
        (Brief(hours=None, ordered=FIRST), ticked(), EIGHTH, EIGHTH),
    ],
    ids=["a session to come", "nothing ticked", "where it was left", "no day of its own", "undated", "no hours"],
)
def test_the_day(made: Brief, so_far: SoFar, today: date, day: date) -> None:
    """Today, unless a brief that fixes its own day has only sessions that are over."""
    assert standing_day(made, so_far, today) == day
