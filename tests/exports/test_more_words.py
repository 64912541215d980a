"""One point and one hour more, in the words that the screen and the workbook share."""

from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.exports.more_words import more_note, next_lines
from budgetfix.outcome.book import MorePlan, NextStep
from tests.exports.sample_book import BOOK

SAME = MorePlan(14172, 953, 0, 320, (), ())
STEPS = (
    (NextStep(), ()),
    (NextStep(no_point=True), ("No money buys one point more in these hours.",)),
    (NextStep(replace(SAME, spent_minor=17172, improvement=954)), ("1 point more for 30.00 more than this plan.",)),
    (
        NextStep(hour=replace(SAME, improvement=1200, spent_minor=14972), hour_session=2),
        ("One hour more in session 2 buys 247 points more, for 8.00 more.",),
    ),
    (NextStep(hour=SAME, hour_session=1), ("One hour more in session 1 buys nothing more for the same money.",)),
)


@pytest.mark.parametrize(("step", "wanted"), STEPS)
def test_every_step_has_its_sentence(step: NextStep, wanted: tuple[str, ...]) -> None:
    """What is known is said, and nothing else."""
    assert next_lines(replace(BOOK, next=step)) == wanted


def test_a_hazard_for_some_points() -> None:
    """A plan that takes a hazard away may leave points that this one takes: both are told."""
    safer = replace(SAME, spent_minor=18172, improvement=900, hazards_after=0)
    (line,) = next_lines(replace(BOOK, hazards_after=2, next=NextStep(safer)))
    assert line == "2 hazards fewer, 53 points less for 40.00 more than this plan."


def test_the_sheet_says_whether_the_rows_are_all_there_are() -> None:
    """All sums of money at which more can be done, or some of them."""
    assert "Every sum" in more_note(BOOK)
    assert "Hazards go first" in more_note(BOOK)
    some = more_note(replace(BOOK, next=NextStep(), hazards_before=0))
    assert "between two rows" in some
    assert "Hazards" not in some
