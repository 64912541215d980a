"""What became of an earlier plan, as a record."""

from __future__ import annotations

from fractions import Fraction

from pydantic import TypeAdapter

from budgetfix.outcome.book import MoneyLine, Task
from budgetfix.outcome.so_far import LineBack, Planned, PlannedLine, PlannedStep, Remembered, SoFar, StepBack
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.room.survey import Change

LINE = PlannedLine("product:pad@mill", MoneyLine("product", "pad", "Pad", "mill", "Mill", 2, 2100, 4200), Fraction(2))
STEP = PlannedStep("pad:rug#1", Task("pad:rug", "Lay a pad", 1, 1, 1, "Lay it", 10, 8, 10, 12, 1), "rug-pad", 10)


def test_told_and_done() -> None:
    """A line is told of when it is ticked or paid; a step is done when it is ticked, whatever its minutes."""
    so_far = SoFar(
        Remembered((LINE,), (STEP,)),
        (LineBack(LINE), LineBack(LINE, "bought"), LineBack(LINE, None, 4000)),
        (StepBack(STEP, False, 12), StepBack(STEP, True)),
    )
    assert [one.paid_minor for one in so_far.told] == [None, 4000]
    assert [one.real_minutes for one in so_far.done] == [None]


def test_survives_as_json() -> None:
    """What a workbook remembers comes back from its text as it went in: fractions, changes, all numbers."""
    change = Change("rugs", "rug", (("width", 1600.0), ("from_left", 2.5), ("pad", True)))
    one = Candidate("pad:rug", "rug-pad", "Lay a pad", changes=(change,), work=(Work("Lay it", 10, 8, 10, 12),))
    all_of_it = Remembered((LINE,), (STEP,), (Planned(one, True, (("rug", "width", 1500.0),)),), None, 4200, 0, 310)
    adapter = TypeAdapter(Remembered)
    assert adapter.validate_json(adapter.dump_json(all_of_it)) == all_of_it
