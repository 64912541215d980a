from __future__ import annotations

from dataclasses import replace
from datetime import date

from budgetfix.exports.page.rows import Detail, Distinct, buy_row, buy_ticks, do_row, fault_now, fault_seen, hazard_row
from tests.exports.sample_book import BOOK, FAULTS, MONEY, TASKS


def test_a_line_to_buy_says_all_that_a_shop_asks() -> None:
    """Label, range, price each, the most to pay, second choice, what to take along and when to give it back."""
    line = replace(
        MONEY[2], most_minor=1550, second_choice="a 1000 lm one", take_along="the old bulb", accepts="900 to 1200 lm",
        return_by=date(2026, 6, 20), bag="B", lead_days=1,
    )  # fmt: skip
    row = buy_row(BOOK, line, "buy product:bulb@harrow")
    assert (row.packs, row.name, row.total) == ("2 ×", "LED bulb 1100 lm", "€12.00")
    assert [f"{one.label}: {one.text}" for one in row.details] == [
        "Label: E27, 2700 K",
        "Takes: 900 to 1200 lm",
        "Each: €6.00",
        "Pay at most: €15.50 in all",
        "Second choice: a 1000 lm one",
        "Take along: the old bulb",
        "Give back by: Saturday 20 June",
        "Comes: 1 day after the order",
        "Bag: B",
        "For: Put brighter bulbs in both lamps",
        ": example price",
    ]


def test_what_comes_with_the_goods_is_not_ticked() -> None:
    """Delivery and tax have no box."""
    ticks = [buy_row(BOOK, line, tick).tick for line, tick in zip(MONEY, buy_ticks(MONEY), strict=True)]
    assert ticks[-2:] == ["", ""]
    assert all(ticks[:-2])


def test_pay_and_fixed_costs_are_not_ticked() -> None:
    """Nobody buys an hour of work or the van: no box, though it says what it is for."""
    pay = replace(MONEY[4], kind="labour", name="Labour: rod")
    rows = [buy_row(BOOK, line, "buy x") for line in (pay, replace(pay, kind="fixed"), MONEY[4])]
    assert [row.tick for row in rows] == ["", "", "buy x"]
    assert rows[0].details == (Detail("For", "Hang a longer rod, higher"),)


def test_boxes_have_names_of_their_own() -> None:
    """Two lines of one product at one shop are told apart, as in the workbook."""
    assert buy_ticks((MONEY[0], MONEY[0], MONEY[4])) == [
        "buy product:rod@harrow",
        "buy product:rod@harrow#2",
        "buy hire:Hire: cordless drill",
    ]


def test_a_step_is_told_whole() -> None:
    """Part, lines, done when, who, tools, what it leaves in the wall, and care."""
    row = do_row(replace(TASKS[4], leaves="plugs", bag="A"), people=2)
    assert (row.tick, row.part, row.minutes) == ("do rod#2", "part 2 of 2", "50 min")
    assert row.lines == ("Drill, plug, screw the brackets", "lay the rod in.")
    assert row.done == "the rod is level, 90 in up"
    assert [f"{one.label}: {one.text}" for one in row.details] == [
        "Who: Ben",
        ": 75 min if it goes badly",
        "Tools: drill, ladder",
        "Bag: A",
        "Leaves in the wall: plugs",
    ]
    assert row.cares == ("Ladder.", "Mind wires and pipes before you drill.")


def test_one_person_alone_is_not_told_who() -> None:
    """Where there is only one person, names say nothing; two pairs of hands are said."""
    assert do_row(TASKS[2], people=1).details[0].label == ""
    assert do_row(replace(TASKS[1], who=()), people=1).details[0].text == "2 people"


def test_a_fault_keeps_what_was_found_apart_from_what_became_of_it() -> None:
    """The first is one row in every plan; doubt is marked, and rooms are told where there are several."""
    assert fault_seen(FAULTS[5], rooms=True).subject == "TV, front room"
    assert fault_seen(FAULTS[5], rooms=False).before == "2.6 diagonals ~"
    assert [fault_seen(row, False).sort for row in (FAULTS[0], FAULTS[1], FAULTS[-1])] == ["safety", "", "listed"]
    assert fault_now(FAULTS[1]).state == "○ still there"
    assert fault_now(FAULTS[1]).look == "still-there"


def test_a_hazard_that_nothing_in_the_plan_answers_names_no_step() -> None:
    """It is gone all the same; and what is new says so."""
    assert hazard_row(replace(BOOK, chosen=()), FAULTS[0]).by == ""
    assert hazard_row(BOOK, replace(FAULTS[0], state="new")).state == "! New"


def test_equal_rows_are_one() -> None:
    """Rows are numbered as they first come."""
    rows: Distinct[str] = Distinct()
    assert [rows.place(name) for name in "abac"] == [0, 1, 0, 2]
