from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from budgetfix.exports.lettering import long_day
from budgetfix.exports.page.page import plan_page
from budgetfix.exports.page.words import (
    again_words,
    change_words,
    does_words,
    left_words,
    listed,
    price_words,
    proof_words,
    session_words,
    so_far_words,
    stop_words,
)
from budgetfix.outcome.book import PlanBook
from tests.exports.remembered_book import KEPT, rest_of
from tests.exports.sample_book import BOOK, NO_HOURS, NO_LIMIT, NOTHING, SESSIONS, STOPS, TASKS
from tests.intake.ticked import Desk


def test_days_and_names_in_words() -> None:
    """A day in full, the same on every machine; names with `and` before the last."""
    assert long_day(date(2026, 6, 6)) == "Saturday 6 June"
    assert [listed(names) for names in ((), ("Ann",), ("Ann", "Ben"), ("Ann", "Ben", "Cleo"))] == [
        "",
        "Ann",
        "Ann and Ben",
        "Ann, Ben and Cleo",
    ]


def test_a_session_says_when_and_how_full() -> None:
    """With a date and without."""
    assert session_words(SESSIONS[0]) == ("Session 1, Saturday 6 June, 09:00", "3 h 35 min of 6 h")
    assert session_words(replace(SESSIONS[1], on=None)) == ("Session 2", "1 h 45 min of 4 h")


def test_what_a_plan_takes() -> None:
    """Money and time, as far as there is either."""
    assert price_words(BOOK, 14172, 320) == ("€141.72", "5 h 20 min of work")
    assert price_words(BOOK, 0, 90) == ("no money", "1 h 30 min of work")
    assert price_words(BOOK, 500, 0) == ("€5.00", "")


@pytest.mark.parametrize(
    ("before", "after", "words"),
    [
        (1, 0, "the one hazard is gone"),
        (2, 0, "both hazards are gone"),
        (4, 0, "all 4 hazards are gone"),
        (4, 3, "1 of 4 hazards is gone"),
        (4, 1, "3 of 4 hazards are gone"),
        (1, 1, "the one hazard stays"),
        (3, 3, "3 hazards left"),
        (0, 1, "1 hazard left"),
    ],
)
def test_hazards_are_counted_apart(before: int, after: int, words: str) -> None:
    """How many there were and are, as people say it."""
    fixed = tuple(row for row in BOOK.faults if row.state == "fixed")
    assert does_words(replace(BOOK, hazards_before=before), fixed, after) == f"2 of 2 faults go and {words}"


def test_nothing_found_is_said() -> None:
    """A room without a fault and without a hazard."""
    assert does_words(replace(BOOK, hazards_before=0), (), 0) == "no fault was found"


@pytest.mark.parametrize(
    ("book", "words"),
    [
        (BOOK, "proven: no other set of these 16 remedies takes away more within €150.00 and these hours"),
        (NO_HOURS, "proven: no other set of these 16 remedies takes away more within €150.00"),
        (NO_LIMIT, "proven: no other set of these 16 remedies takes away more within these hours"),
        (replace(NO_HOURS, budget_minor=None), "proven: no other set of these 16 remedies takes away more"),
        (replace(BOOK, proven=False, bound=969), "the search stopped after 60 s: at most 16 points more exist"),
        (replace(BOOK, proven=False), "the search stopped after 60 s: its points cannot be beaten"),
        (
            replace(BOOK, everything=True),
            "proven: no other way to do everything ends sooner, or as soon for less, within €150.00 and these hours",
        ),
        (replace(NO_HOURS, everything=True), "proven: no other way to do everything costs less within €150.00"),
    ],
)
def test_no_more_is_claimed_than_is_proven(book: PlanBook, words: str) -> None:
    """Within which means nothing better exists, or how far away the best may be."""
    assert proof_words(book) == words


def test_the_second_inspection_is_told() -> None:
    """What came new is named; listed faults cannot be inspected."""
    assert again_words(BOOK) == "The changed room was inspected again: new: rod hung low (Big window)."
    calm = tuple(row for row in BOOK.faults if row.state != "new")
    assert again_words(replace(BOOK, faults=calm)).endswith("nothing new, nothing worse.")
    assert again_words(replace(BOOK, faults=BOOK.faults[-1:])) == ""


def test_what_is_left_of_the_budget() -> None:
    """Left, over, or no budget at all; what is held back is no money to spend."""
    assert left_words(BOOK, 14172) == "€8.28 left of €160.00, €10.00 of it held back"
    assert left_words(BOOK, 16972) == "€19.72 more than there is (budget €160.00, €10.00 of it held back)"
    assert left_words(NO_LIMIT, 14172) == ""


def test_another_plan_is_told_by_what_is_different() -> None:
    """What it does besides and what it leaves out, by name, five at most; errands are nobody's wish."""
    assert change_words(TASKS, STOPS[3].tasks) == "Besides: Stand a basket beside the console."
    assert change_words(TASKS, STOPS[1].tasks) == (
        "Without: Hang a longer rod, higher · Hang two pairs of longer panels · Put brighter bulbs in both lamps."
    )
    assert change_words(TASKS, TASKS[1:]) == ""
    many = tuple(replace(TASKS[1], candidate=f"c{at}", name=f"Move {at}") for at in range(7))
    assert change_words((), many) == "Besides: Move 0 · Move 1 · Move 2 · Move 3 · Move 4 · and 2 more."


def test_a_stop_speaks() -> None:
    """Money, faults, time and hazards, as a screen reader says them; no hazards where there are none."""
    assert stop_words(BOOK, STOPS[0].sums, STOPS[0].faults) == "€0.00, 1 of 6 faults fixed, 1 h 30 min, 1 hazard left"
    none = replace(NOTHING, hazards_before=0)
    assert stop_words(none, replace(STOPS[1].sums, minutes=45), ()) == "€9.80, 0 of 0 faults fixed, 45 min"


def test_what_was_before_the_plan() -> None:
    """Things bought, steps done and money paid, in one line; nothing is said where nothing was before."""
    desk = Desk()
    desk.type("Buy", "product:rod@harrow", "Bought", "✓")
    desk.type("Buy", "product:bulb@harrow", "Bought", "sold out")
    desk.type("Buy", "delivery:Delivery, Mill Lane Home@mill", "Paid in all", 6)
    desk.type("Do", "rod#1", "Done", "✓")
    book = rest_of(desk.back())
    line = "So far: 1 thing bought, 1 step done, €45.00 paid. The lists below are what is left."
    assert so_far_words(book) == line
    assert f'<p class="room">{line}</p>' in plan_page(book).decode()
    assert so_far_words(BOOK) == ""
    assert "So far" not in plan_page(BOOK).decode()


def test_a_page_of_a_job_that_is_done() -> None:
    """With every step done the verdict is that nothing more is to do, not that nothing helps."""
    desk = Desk()
    for step in KEPT.remembered.steps if KEPT.remembered else ():
        desk.type("Do", step.id, "Done", "✓")
    for line in KEPT.remembered.lines if KEPT.remembered else ():
        desk.type("Buy", line.id, "Bought", "✓")
    page = plan_page(rest_of(desk.back())).decode()
    assert "There is <b>nothing more to do</b>: no other remedy that fits the money and the hours helps." in page
    assert "So far: 5 things bought, 7 steps done, €141.72 paid." in page
