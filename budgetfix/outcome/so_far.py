"""What became of an earlier plan: what was bought, paid and done, read back from its workbook and carried on.

The workbook remembers what it planned (`Remembered`, on a sheet of its own); what people typed stands beside it.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from typing import Literal

from budgetfix.outcome.book import MoneyLine, Task
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.survey import Value

State = Literal["bought", "returned", "sold out"]
"""What a person can say of a line of goods: it is at home, it went back to the shop, the shop has none."""


@dataclass(frozen=True, slots=True)
class PlannedLine:
    """One line of money as it was planned. `id` is that of its row on Buy (`money_lines.line_ids`)."""

    id: str
    line: MoneyLine
    units: Fraction = Fraction(0)
    """What all its packs hold, in the product's unit; 0 where it is no product."""
    users: tuple[str, ...] = ()
    """Ids of the chosen candidates that it was planned for."""
    ordered: date | None = None
    """The day from which its days of waiting count."""
    steps: tuple[str, ...] = ()
    """Ids of the steps that it was planned for: those that are paid, or done with the tool; of a fixed cost, all."""
    worked_minor: int | None = None
    """The sum that stands as paid though nobody typed it: it was worked out, and is again each time."""
    whole_minor: int | None = None
    """What it was planned at, where only a part of it counts."""
    goods: tuple[str, ...] = ()
    """Ids of the lines of goods that a delivery or a tax comes with."""
    ordered_day: int = 0
    """The same among sessions without dates, as they count days: 0 for the day of the plan."""


@dataclass(frozen=True, slots=True)
class PlannedStep:
    """One row of Do as it was planned. `id` is the row's: `<candidate>#<step from 1>`, 0 for one without steps."""

    id: str
    task: Task
    kind: str = ""
    """The kind of its remedy: real minutes are learnt by kind."""
    base_minutes: int = 0
    """Planned minutes before any learning."""
    people: tuple[str, ...] = ()
    """Who was to do it, by the brief's names."""
    on: date | None = None
    start_minute: int = 0
    """Day and minute at which its session begins, where sessions have dates."""


@dataclass(frozen=True, slots=True)
class Planned:
    """A candidate of an earlier plan. `was`: (thing, field, value) of all that it changes, as surveyed before.

    `chosen` False: it was on offer only, fitted to the room as that plan left it.
    """

    candidate: Candidate
    chosen: bool = True
    was: tuple[tuple[str, str, Value], ...] = ()


@dataclass(frozen=True, slots=True)
class Remembered:
    """All that a workbook knows of its own plan, so that it can be read back whatever became of the other files."""

    lines: tuple[PlannedLine, ...] = ()
    steps: tuple[PlannedStep, ...] = ()
    candidates: tuple[Planned, ...] = ()
    ordered: date | None = None
    spent_minor: int = 0
    """What that plan was to cost in all, with what had been paid before it."""
    hazard_points_after: int = 0
    points_after: int = 0
    budget_minor: int | None = None
    """The budget of the whole job."""
    minutes: tuple[int, ...] = ()
    """Person-minutes of each session of the whole job, as the brief had them."""
    marks: tuple[tuple[str, str], ...] = ()
    """(survey, catalog, brief or faults, a short text that is another one when that is changed)."""
    known: tuple[tuple[str, str, int], ...] = ()
    """(kind, name, amount) of what had come out otherwise when that plan was made: no reason for a later change."""


@dataclass(frozen=True, slots=True)
class LineBack:
    """A line of money with what was typed: `paid_minor` what was paid in all, None where nothing was typed."""

    planned: PlannedLine
    state: State | None = None
    paid_minor: int | None = None


@dataclass(frozen=True, slots=True)
class StepBack:
    """A step with what was typed: ticked or not, and the minutes that it really took."""

    planned: PlannedStep
    done: bool = False
    real_minutes: int | None = None


@dataclass(frozen=True, slots=True)
class SoFar:
    """An earlier plan with everything that was typed into its workbook, rows in the order of the plan."""

    remembered: Remembered
    lines: tuple[LineBack, ...] = ()
    steps: tuple[StepBack, ...] = ()

    @property
    def told(self) -> tuple[LineBack, ...]:
        """The lines of which somebody said something."""
        return tuple(one for one in self.lines if one.state is not None or one.paid_minor is not None)

    @property
    def done(self) -> tuple[StepBack, ...]:
        """The steps that are ticked."""
        return tuple(one for one in self.steps if one.done)
