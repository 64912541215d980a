"""A plan as its workbook would come back: ticked, paid and timed as a test says, without a file in between."""

from __future__ import annotations

import time
from collections.abc import Mapping
from datetime import date
from pathlib import Path

from budgetfix.intake.job import Job
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.so_far import LineBack, SoFar, State, StepBack
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.reading import JobOptions, read
from budgetfix.pipeline.replanning import Replanned, replanned

TODAY = date(2026, 6, 1)
TICKABLE = ("product", "tool", "hire", "remedy")


def wish() -> Wish:
    """A minute to choose."""
    return Wish(60.0, time.monotonic)


def read_at(folder: Path, budget: str | None = None) -> Job:
    """The job of a folder."""
    return read(folder, JobOptions(budget), TODAY)


def plan_of(job: Job) -> PlanBook:
    """The plan of a job, where it must be there and proven."""
    book = planned(job, wish())
    assert isinstance(book, PlanBook)
    assert book.proven
    return book


def back(
    book: PlanBook,
    bought: Mapping[str, State] | None = None,
    paid: Mapping[str, int] | None = None,
    done: tuple[str, ...] = (),
    minutes: Mapping[str, int] | None = None,
) -> SoFar:
    """What was typed: states and sums by the ids of lines, ticks and minutes by those of steps (`f1#1`).

    Lines and steps that a book carried over from before stay as they were.
    """
    assert book.remembered is not None
    states, sums, real = dict(bought or {}), dict(paid or {}), dict(minutes or {})
    old = book.so_far
    before: dict[str, LineBack] = {one.planned.id: one for one in old.told} if old is not None else {}
    lines = tuple(
        LineBack(
            one,
            states.pop(one.id, before[one.id].state if one.id in before else None),
            sums.pop(one.id, before[one.id].paid_minor if one.id in before else None),
        )
        for one in book.remembered.lines
    )
    ticked: dict[str, StepBack] = {one.planned.id: one for one in old.done} if old is not None else {}
    steps = tuple(
        StepBack(one, one.id in done or one.id in ticked, real.pop(one.id, _real(ticked, one.id)))
        for one in book.remembered.steps
    )
    unknown = [*states, *sums, *real, *(id for id in done if id not in {each.planned.id for each in steps})]
    assert not unknown, f"{unknown} of {[*(one.planned.id for one in lines), *(one.planned.id for one in steps)]}"
    return SoFar(book.remembered, lines, steps)


def _real(ticked: Mapping[str, StepBack], id: str) -> int | None:
    return ticked[id].real_minutes if id in ticked else None


def everything(book: PlanBook) -> SoFar:
    """All of it bought and done as planned."""
    assert book.remembered is not None
    lines = {one.id: one for one in book.remembered.lines}
    bought: dict[str, State] = {id: "bought" for id, one in lines.items() if one.line.kind in TICKABLE}
    return back(book, bought, done=tuple(one.id for one in book.remembered.steps))


def rest(job: Job, so_far: SoFar, day: date = TODAY) -> Replanned:
    """The rest, where there is a plan for it, proven."""
    found = replanned(job, so_far, day, wish())
    assert isinstance(found, Replanned), found
    assert found.book.proven
    return found


def ids(book: PlanBook) -> list[str]:
    """What is chosen, by id."""
    return [row.id for row in book.chosen]


def lines(book: PlanBook) -> list[tuple[str, int]]:
    """(name, minor units) of every line of money."""
    return [(line.name, line.line_minor) for line in book.money]
