"""What a fair plan is for each of two people, in the words of screen, workbook and page."""

from __future__ import annotations

from dataclasses import replace
from html import unescape

import pytest

from budgetfix.exports.fair_words import fair_lines
from budgetfix.exports.more_words import more_note
from budgetfix.exports.page.page import plan_page
from budgetfix.exports.page.words import proof_words
from budgetfix.exports.plan_screen import plan_text
from budgetfix.outcome.book import Side
from tests.exports.plan_sheets import sheet_of, values
from tests.exports.sample_book import BOOK

ANN, BEN = Side("Ann", 900, 900, 500, ()), Side("Ben", 621, 700, 300, ("Longer rod", "Deeper shade"))
FAIR = replace(BOOK, sides=(ANN, BEN))
SAID = (
    "Ann gets 100 % of what a plan for Ann alone would do (900 of 900 points by Ann's own priorities), "
    "and gives nothing up.",
    "Ben gets 88 % of what a plan for Ben alone would do (621 of 700 points by Ben's own priorities), "
    "and gives up: Longer rod; Deeper shade.",
    "Half the money each, planned apart, would come to 55 % for Ann and 42 % for Ben: "
    "planned together, neither has less.",
)


def test_each_hears_what_comes_out_and_what_is_given_up() -> None:
    """Two sentences for two people, one for half the money; nothing for one household."""
    assert fair_lines(FAIR) == SAID
    assert fair_lines(BOOK) == ()


def test_nothing_is_promised_about_half_the_money() -> None:
    """Where half the money alone would be better for somebody that is said; where it is not known, nothing is."""
    worse = replace(FAIR, sides=(replace(ANN, half=600), replace(BEN, half=650)))
    assert fair_lines(worse)[-1] == (
        "Half the money each, planned apart, would come to 66 % for Ann and 92 % for Ben: "
        "better for Ben than this plan."
    )
    assert len(fair_lines(replace(FAIR, sides=(ANN, replace(BEN, half=None))))) == 2


@pytest.mark.parametrize(("gets", "said"), [(0, "all"), (-5, "0 %")])
def test_who_can_gain_nothing(gets: int, said: str) -> None:
    """An ideal of nothing has no percentage."""
    line = fair_lines(replace(FAIR, sides=(ANN, Side("Ben", gets, 0, None, ()))))[1]
    assert line.startswith(f"Ben gets {said} of what")


def test_screen_workbook_and_page_tell_it() -> None:
    """All three hold the sentences, and none calls the plan the one that takes away most."""
    screen = " ".join(plan_text(FAIR, (), unicode=True).split())
    summary = [str(value) for value in values(sheet_of(FAIR, "Summary")).values()]
    page = unescape(plan_page(FAIR).decode())
    for line in SAID:
        assert line in screen
        assert line in summary
        assert line in page
    assert more_note(FAIR).startswith("The fair plans for some sums")
    for made in (screen, " ".join(summary), proof_words(FAIR)):
        assert "no plan is fairer" in made.lower()
        assert "takes away more" not in made
