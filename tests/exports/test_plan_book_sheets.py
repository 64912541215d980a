from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.exports.plan_book_buy import COLUMNS as BUY
from budgetfix.exports.plan_book_do import COLUMNS as DO
from budgetfix.exports.plan_book_faults import NAME, state_words
from budgetfix.exports.plan_book_more import THIS
from budgetfix.outcome.book import MoneyLine
from tests.exports.plan_sheets import HEAD, beside, column_of, headings, rows, sheet_of, under, values
from tests.exports.sample_book import BOOK, MONEY, NO_HOURS, NOTHING, TASKS, many


def test_the_shopping_list_line_by_line() -> None:
    """Bag, product, size, range, second choice, what to take along, shop, last day, task, packs and money."""
    page = sheet_of(BOOK, "Buy")
    assert headings(page) == [column.heading for column in BUY if column.heading != "Buy from"]
    first, third = rows(page)[0], rows(page)[2]
    assert first == {
        "id": "product:rod@harrow",
        "Bought": None,
        "Bag": "B",
        "Product": "Extending rod 66-120 in",
        "Label size": '66" to 120"',
        "Accepted range": "100 to 124 in",
        "Second choice": "Two rods and a joint",
        "Take along": "window: frame 72 in wide, rod 90 in up",
        "Shop": "Harrow Tools",
        "Return by": "Sat 4 Jul",
        "For": "Hang a longer rod, higher",
        "Packs": 1,
        "Price each": 39,
        "Line": 39,
        "Most to pay": 47.28,
        "Paid in all": None,
        "Counts as": 39,
    }
    assert [row["Most to pay"] for row in rows(page)][1:4] == ["any price", 15, None]
    assert third["Return by"] == "no returns"
    assert str(third["For"]).endswith("; ▲ it cannot be given back: look it over before you pay")
    assert third["Product"] == "LED bulb 1100 lm (example price)"
    assert sum(float(str(row["Counts as"])) for row in rows(page)) == pytest.approx(BOOK.spent_minor / 100)


def test_pay_and_fixed_costs_are_not_counted_as_bought() -> None:
    """Between the goods and delivery, without a box; a day is a day."""
    pay = MoneyLine("labour", None, "Labour: rod", None, "", None, None, 900)
    van = MoneyLine("fixed", None, "Van", None, "", None, None, 2000)
    soon = replace(BOOK.money[3], lead_days=1)
    plan = replace(BOOK, money=(pay, van, *BOOK.money[:3], soon, *BOOK.money[4:]))
    page = sheet_of(plan, "Buy")
    assert [row["Product"] for row in rows(page)][5:9] == ["Labour: rod", "Van", *(one.name for one in MONEY[5:])]
    assert rows(page)[3]["For"] == "Hang two pairs of longer panels; comes 1 day after the order"
    assert under(sheet_of(plan, "Summary"), "Bought") == "0 of 5"


def test_sums_by_shop_and_what_is_left() -> None:
    """Each shop's sum, then the total against the budget with what is held back."""
    page = sheet_of(BOOK, "Buy")
    labels = ("Harrow Tools", "Mill Lane Home", "No shop", "Total", "Budget", "Held back", "Left")
    found = {label: beside(page, label, "Counts as") for label in labels}
    assert found == pytest.approx(dict(zip(labels, (65.82, 61.9, 14, 141.72, 160, 10, 8.28), strict=True)))


def test_a_shop_named_like_a_condition_is_summed_exactly() -> None:
    """A shop called `>5` or `a*` is a name, not a condition: no SUMIF stands behind."""
    money = (replace(MONEY[0], shop_name=">5"), replace(MONEY[1], shop_name="a*"))
    behind = values(sheet_of(replace(BOOK, money=money), "Buy", values=False))
    sums = [str(value) for value in behind.values() if "SUM" in str(value)]
    assert len([text for text in sums if "EXACT" in text]) == 4
    assert [text for text in sums if "SUMIF" in text] == []


def test_columns_that_hold_nothing_are_left_out() -> None:
    """A list without second choices and ranges is not padded with empty columns; the user's are always there."""
    assert headings(sheet_of(many(3), "Buy")) == [
        "Bought", "Product", "Shop", "For", "Packs", "Price each", "Line", "Paid in all", "Counts as",
    ]  # fmt: skip
    assert {"Bought", "Paid in all"} <= set(headings(sheet_of(NOTHING, "Buy")))
    assert {"Done", "Real minutes"} <= set(headings(sheet_of(NOTHING, "Do")))


def test_a_hundred_products_have_a_hundred_ids() -> None:
    """Two lines of the same thing still have an id each, so that ticks find their way back."""
    ids = [row["id"] for row in rows(sheet_of(many(100), "Buy"))]
    assert len(set(ids)) == len(ids) == 100
    twice = replace(BOOK, money=(MONEY[0], MONEY[0]))
    assert [row["id"] for row in rows(sheet_of(twice, "Buy"))] == ["product:rod@harrow", "product:rod@harrow#2"]


TIMED = ("Time", "Helper's minutes")
"""Columns that stand only where minutes are laid out, or somebody helps."""


def test_the_task_list_line_by_line() -> None:
    """Session with its date, step, what, people, minutes likely and at worst, tools, when it is done, what to mind."""
    page = sheet_of(BOOK, "Do")
    assert headings(page) == [column.heading for column in DO if column.heading not in TIMED]
    second = rows(page)[1]
    assert (second["Session"], second["When"], second["People"], second["Who"]) == (
        1,
        "Sat 6 Jun, 09:00",
        2,
        "Ann, Ben",
    )
    assert (second["Minutes"], second["If it goes badly"], second["Real minutes"]) == (45, 75, None)
    assert second["Done when"] == "the middle of the glass is 42 1/2 in up"
    assert second["Mind"] == "Mind wires and pipes before you drill. Two people lift."
    assert [row["Bag"] for row in rows(page)] == [None, None, "A", "B", None, "C", "D"]
    assert [row["Leaves in the wall"] for row in rows(page)[1:4]] == [None, "plugs", None]
    assert [row["id"] for row in rows(page)][3:5] == ["rod#1", "rod#2"]
    assert beside(page, "All of it", "Minutes") == 260


def test_without_hours_no_session_is_named() -> None:
    """No list of hours: no columns for sessions and dates, and one sum."""
    page = sheet_of(NO_HOURS, "Do")
    assert not {"Session", "When"} & set(headings(page))
    assert len(rows(page)) == len(TASKS)
    assert not any("Session" in str(value) for value in values(page).values())


def test_each_fault_has_a_sign_and_two_sums() -> None:
    """Safety first with its own sum; a sign beside each word, so that colour is never alone."""
    page = sheet_of(BOOK, NAME)
    table = rows(page)
    assert [row["Now"] for row in table] == [state_words(row.state) for row in BOOK.faults]
    assert [state_words(state) for state in ("fixed", "better", "still there", "worse", "new")] == [
        "✓ fixed",
        "◐ better",
        "○ still there",
        "▼ worse",
        "▲ new",
    ]
    assert (table[0]["Sort"], table[-1]["Sort"]) == ("! safety", "listed")
    assert table[5]["Before"] == "2.6 diagonals ~"
    assert [beside(page, "Safety", heading) for heading in ("Points before", "Points after")] == [500, 0]
    assert [beside(page, "All else", heading) for heading in ("Points before", "Points after")] == [1553, 600]


def test_points_that_rise_while_a_fault_shrinks_are_explained() -> None:
    """When the worst of a family is gone, the next one counts whole: the sheet says so, and only then."""
    risen = replace(BOOK, faults=(replace(BOOK.faults[4], points_before=33, points_after=78),))
    assert "Points can rise" in str(sheet_of(risen, NAME)["B2"].value)
    assert "Points can rise" not in str(sheet_of(BOOK, NAME)["B2"].value)


def test_what_was_left_out_says_why() -> None:
    """Costs, minutes, what it would add, and the reason."""
    assert rows(sheet_of(BOOK, "Left out"))[1] == {
        "id": "basket",
        "Remedy": "Stand a basket beside the console",
        "Costs": 28,
        "Minutes": 5,
        "Would add": 267,
        "Why not now": "15.80 more is needed",
    }


def test_what_more_money_buys() -> None:
    """Every sum against this plan, by a live difference; this plan's row is named, and the chart stands below."""
    page = sheet_of(BOOK, "What more buys")
    table = rows(page)
    assert [row["Against this plan"] for row in table] == [-603, -603, 0, 267]
    assert [row["What changes"] for row in table][2:] == [THIS, "with Stand a basket beside the console"]
    behind = sheet_of(BOOK, "What more buys", values=False)
    assert behind.cell(HEAD + 4, column_of(page, "Against this plan")).value == "=C8-$C$7"


def test_empty_sheets_say_so() -> None:
    """Nothing to buy, to do, left out or compared: a sentence instead of an empty table."""
    for name, words in (
        ("Buy", "Nothing to buy: everything in this plan is free."),
        ("Do", "Nothing to do."),
        ("Left out", "Nothing was left out."),
        ("What more buys", "No other sums of money were tried."),
    ):
        assert words in values(sheet_of(NOTHING, name)).values()
        assert rows(sheet_of(NOTHING, name)) == []
