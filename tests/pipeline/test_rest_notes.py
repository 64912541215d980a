"""What was typed beside no tick, and what is at home unused: said in a sentence each."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

from budgetfix.outcome.book import MoneyLine, Task
from budgetfix.outcome.since import Since
from budgetfix.outcome.so_far import LineBack, PlannedLine, PlannedStep, Remembered, SoFar, StepBack
from budgetfix.pipeline.rest_notes import typed_notes, unused_notes

LINE = PlannedLine("product:pad@mill", MoneyLine("product", "pad", "Pad", "mill", "Mill", 2, 2100, 4200), Fraction(2))
STEP = PlannedStep("pad:rug#1", Task("pad:rug", "Lay a pad", 1, 1, 1, "Lay it", 10, 8, 10, 12, 1), "rug-pad", 10)


def test_a_sum_for_what_was_sold_out() -> None:
    """It counts, and that is said; sold out without a sum says nothing."""
    said = typed_notes(SoFar(Remembered(), (LineBack(LINE, "sold out", 400), LineBack(LINE, "sold out"))), "EUR")
    assert said == ("Pad: sold out, and 4.00 was typed as paid; it counts.",)


def test_minutes_without_a_tick() -> None:
    """They come off the session though the step is still to do: somebody may have forgotten the tick."""
    said = typed_notes(SoFar(Remembered(), (), (StepBack(STEP, False, 12), StepBack(STEP, True, 12))), "EUR")
    assert said == (
        "Lay a pad: 12 minutes are typed, but it is not ticked as done. They come off their session, "
        "and it is still to do.",
    )


def test_bought_and_not_used() -> None:
    """Each by its name, with the last day to give it back where that is known."""
    since = Since(date(2026, 6, 7), unused=(("Lamp, E27", date(2026, 7, 4)), ("Rug", None)))
    assert unused_notes(since) == (
        "Bought, not used; see whether it can be given back: Lamp, E27 (until 4 July 2026), Rug.",
    )
    assert unused_notes(Since(date(2026, 6, 7))) == ()
