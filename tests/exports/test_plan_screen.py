from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.exports.lettering import columns_of
from budgetfix.exports.plan_screen import plan_text
from budgetfix.outcome.book import MorePlan, NextStep, PlanBook
from budgetfix.outcome.so_far import PlannedStep, Remembered, SoFar, StepBack
from tests.exports.sample_book import BOOK, FREE_HANDS, LONG, NO_HOURS, NO_LIMIT, NOTHING, TASKS, many

FILES = ("front-room/plan.xlsx", "front-room/buy.csv", "front-room/do.csv")
HUGE = replace(
    BOOK,
    title=LONG * 3,
    spent_minor=12_345_678_900,
    budget_minor=99_999_999_999,
    tasks=(replace(TASKS[1], name=LONG * 2, minutes=100_000, worth=1_234_567, cost_minor=12_345_678_900, steps=3),),
)
PLANS = {
    "usual": BOOK,
    "empty": NOTHING,
    "no hours": NO_HOURS,
    "no budget": NO_LIMIT,
    "no time": FREE_HANDS,
    "yen": many(100, "JPY"),
    "huge": HUGE,
}

WHOLE = """\
Front room: 160.00 EUR to spend (10.00 of it held back), 10 h in 2 sessions, 2
  people.

  before  ████████████████████████████████████████   1,553 points
  after   ███████████████                              600 points
          2 of 6 faults go; hazards: 1 before, 0 after; 1 new, see below

step  what to do                                            min     cost  worth
  Session 1, Sat 6 Jun: 3 h 35 min of 6 h
   1  One round of shops                                     60
   2  Lower the TV by 12 in                           !2     45     free    350
   3  Fix the bookcase to the wall                    !      25     9.80    500
   4  Hang a longer rod, higher (1 of 2)                     10    39.00
  Session 2, Sun 7 Jun: 1 h 45 min of 4 h
   5  Hang a longer rod, higher (2 of 2)              !      50             575
   6  Hang two pairs of longer panels                 !      20    56.00    525
   7  Put brighter bulbs in both lamps                        5    12.00    124
                                                            260   141.72
      ! take care: read Mind in the task list   2 two people, minutes each
      worth: points that would come back without it, hazards counted in

BUY   Harrow Tools 65.82, Mill Lane Home 61.90, hire 14.00: 141.72 in all, 8.28
      left

LEFT OUT
      Hang a 48 in picture over the sofa: 400 points; 82.80 more is needed
      Stand a basket beside the console: 267 points; 15.80 more is needed
      Add a table lamp on the bookcase: 100 points; 21.80 more is needed

PROOF no other set of these 16 remedies takes away more within 150.00 EUR and
      these sessions.
      The changed room was inspected again: new: rod hung low (Big window).
PLANS best            141.72     953 points  5 h 20 min, hazards left 0
      recommended     129.72     900 points  5 h 15 min, hazards left 0
      free              free     350 points  1 h 30 min, hazards left 1
MORE  267 points more for 28.00 more than this plan (with Stand a basket beside
      the console).
      One hour more in session 3 buys 60 points more (with Sort the shelf).
NOTE  1 of the prices is still an example; put in your shop's.

Wrote front-room/plan.xlsx, front-room/buy.csv, front-room/do.csv"""


def test_a_whole_plan_word_for_word() -> None:
    """The front room, as it is printed."""
    assert plan_text(BOOK, FILES) == WHOLE


@pytest.mark.parametrize("plan", PLANS.values(), ids=PLANS)
def test_nothing_runs_over_the_edge(plan: PlanBook) -> None:
    """79 columns, no blanks at a line's end, and pure ASCII where nothing else shows."""
    for line in plan_text(plan, FILES).split("\n"):
        assert columns_of(line) <= 79, line
        assert line == line.rstrip()
    assert plan_text(plan, FILES, unicode=False).isascii()


def test_a_long_figure_is_never_cut() -> None:
    """Money and points are shown whole; the words give way."""
    text = plan_text(HUGE, ())
    assert "A remarkably long product name wit… (1 … !2 100000 123456789.00 1,234,567" in " ".join(text.split())


def test_without_hours_no_session_is_named() -> None:
    """No list of hours: the steps stand in one list."""
    text = plan_text(NO_HOURS, ())
    assert "no limit of hours" in text
    assert "ession" not in text.replace("sessions", "")
    assert "Wrote" not in text


def test_an_empty_plan_says_so() -> None:
    """Nothing fits: one sentence instead of a table."""
    text = plan_text(NOTHING, FILES)
    assert "The best plan is to do nothing" in text
    assert "step  what" not in text


def test_when_everything_is_done_that_is_all_it_says() -> None:
    """Of nothing on offer there is no proof, no plans beside it and nothing more to buy."""
    text = plan_text(replace(NOTHING, candidates=0, so_far=back(everything=True)), ())
    assert "\nEverything is done.\n" in f"{text}\n"
    assert not [word for word in ("PROOF", "PLANS", "MORE", "do nothing") if word in text]
    nothing = plan_text(replace(NOTHING, candidates=0, so_far=back(everything=False)), ())
    assert "The best plan is to do nothing" in nothing
    assert "PROOF" not in nothing
    assert "PROOF" in plan_text(replace(NOTHING, candidates=3), ())


def back(*, everything: bool) -> SoFar:
    """What came of a plan: all of it done, or nothing."""
    return SoFar(
        Remembered(), steps=tuple(StepBack(PlannedStep(f"{at}", one), everything) for at, one in enumerate(TASKS))
    )


def test_a_plan_stopped_by_the_clock_says_what_may_be_missing() -> None:
    """Not proven: the seconds, and how many points more there may be."""
    text = plan_text(replace(BOOK, proven=False, bound=969), ())
    assert "STOPPED after 60 s, not proven: at most 16 points more exist." in text
    assert "PROOF" not in text


def test_more_money_that_only_takes_hazards_away_is_told() -> None:
    """A dearer plan with the same points and one hazard less is worth a line, what it takes from the reserve too."""
    point = replace(BOOK.more[-1], improvement=953, hazards_after=0, with_=(), spent_minor=15900)
    text = plan_text(replace(BOOK, hazards_after=1, next=NextStep(point)), ())
    assert "MORE  1 hazard fewer for 17.28 more than this plan, what is held back" in text


def test_doing_everything_is_proven_to_be_soonest_and_cheapest() -> None:
    """Where everything is asked for, points are not what the proof is about."""
    text = " ".join(plan_text(replace(BOOK, everything=True), ()).split())
    assert "PROOF no other way to do everything ends sooner, or as soon for less, within 150.00 EUR" in text
    assert "takes away more" not in text
    assert "everything costs less within" in " ".join(plan_text(replace(NO_HOURS, everything=True), ()).split())


def test_nothing_more_is_told_as_well() -> None:
    """No money buys a point in these hours, and an hour buys nothing, or makes it cheaper."""
    same = MorePlan(14172, 953, 0, 320, (), ())
    text = plan_text(replace(BOOK, next=NextStep(None, True, same, 2)), ())
    assert "MORE  No money buys one point more in these hours." in text
    assert "One hour more in session 2 buys nothing more for the same money." in text
    cheaper = replace(same, spent_minor=14072, improvement=954)
    text = plan_text(replace(NO_HOURS, next=NextStep(None, True, cheaper, 2)), ())
    assert "MORE  No money buys one point more.\n" in text
    assert "One hour more in session 2 buys 1 point more, for 1.00 less." in text
