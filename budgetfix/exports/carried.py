"""What a book carries on from an earlier plan: lines and steps that stand above what is left, and the money in all."""

from __future__ import annotations

from dataclasses import dataclass, replace

from budgetfix.outcome.book import PlanBook, SessionRow, Task
from budgetfix.outcome.remembering import carried_on, counted_minor, step_id
from budgetfix.outcome.so_far import LineBack, PlannedStep, StepBack

SO_FAR = "So far"
STILL_TO_BUY, STILL_TO_DO = "Still to buy", "Still to do"
"""Headings between the rows; a plan without rows carried on has none."""
PAST = "–"
"""The number of a step that was carried on: it has none in the new order."""
TICK = "✓"
RETURNED, SOLD_OUT = "returned", "sold out"
"""What can be typed where a tick stands, beside it."""


@dataclass(frozen=True, slots=True)
class Carried:
    """Settled rows of an earlier plan. `minutes`: real minutes of steps that are not done yet, by row."""

    lines: tuple[LineBack, ...] = ()
    steps: tuple[StepBack, ...] = ()
    minutes: tuple[tuple[str, int], ...] = ()

    def __bool__(self) -> bool:
        """Whether there is any such row."""
        return bool(self.lines or self.steps)

    @property
    def paid_minor(self) -> int:
        """What they have cost so far."""
        return sum(map(counted_minor, self.lines))

    @property
    def ids(self) -> tuple[str, ...]:
        """The ids of the lines, which no other line may have."""
        return tuple(one.planned.id for one in self.lines)


def carried(plan: PlanBook) -> Carried:
    """Nothing where the book is not the rest of another."""
    if plan.so_far is None:
        return Carried()
    settled = carried_on(plan.so_far, plan.tasks)
    left = {step_id(task) for task in plan.tasks}
    typed = tuple(
        (one.planned.id, one.real_minutes)
        for one in plan.so_far.steps
        if not one.done and one.real_minutes is not None and one.planned.id in left
    )
    return Carried(settled.lines, settled.steps, typed)


def whole_budget(plan: PlanBook) -> int | None:
    """The budget of all that was paid and is still to be paid."""
    if plan.whole_budget_minor is not None or plan.budget_minor is None:
        return plan.whole_budget_minor
    return plan.budget_minor + carried(plan).paid_minor


def in_session(step: PlannedStep, sessions: tuple[SessionRow, ...] | None) -> Task:
    """The task of a step with the number that its session has now; with none where it is not among them."""
    if step.on is None:
        return step.task
    there = ((row.number, row.on, row.start_minute) for row in sessions or ())
    number = next((number for number, on, start in there if (on, start) == (step.on, step.start_minute)), None)
    return replace(step.task, session=number)
