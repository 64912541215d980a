"""What was bought and done before a plan stands first in its workbook, as it was typed, and counts in every sum."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from budgetfix.exports.carried import PAST, Carried, carried, in_session, whole_budget
from budgetfix.exports.plan_book import plan_book
from budgetfix.exports.plan_csv import buy_csv, do_csv
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.so_far import SoFar
from tests.exports.plan_sheets import HEAD, beside, opened, right_of, rows, sheet, sheet_of, under
from tests.exports.remembered_book import KEPT, rest_of
from tests.exports.sample_book import BOOK
from tests.intake.ticked import Desk, said

SAID = {
    "product:rod@harrow": ("✓", 43.5), "product:bulb@harrow": ("sold out", None),
    "product:panels@mill": ("returned", 2), "tax:Tax, Harrow Tools@harrow": ("✓", None),
}  # fmt: skip
DONE = {"lower-tv#1": ("✓", 75), "rod#1": ("✓", None), "bulbs#1": (None, 12)}


def back() -> SoFar:
    """The sample's workbook with four lines and three steps told of."""
    desk = Desk()
    for id, (bought, paid) in SAID.items():
        desk.type("Buy", id, "Bought", bought)
        desk.type("Buy", id, "Paid in all", paid)
    for id, (done, minutes) in DONE.items():
        desk.type("Do", id, "Done", done)
        desk.type("Do", id, "Real minutes", minutes)
    return desk.back()


@pytest.fixture(scope="module")
def rest() -> PlanBook:
    """The book of what is left after that."""
    return rest_of(back())


def test_what_is_settled_stands_first_as_it_was_typed(rest: PlanBook) -> None:
    """Ticks, words and sums on Buy, goods first; ticks and minutes on Do; below a heading, with their old ids."""
    buy, do = rows(sheet_of(rest, "Buy")), rows(sheet_of(rest, "Do"))
    assert [(row["id"], (row["Bought"], row["Paid in all"])) for row in buy[:4]] == [
        *list(SAID.items())[:3], ("tax:Tax, Harrow Tools@harrow", ("✓", 5.02)),
    ]  # fmt: skip
    assert [(row["id"], row["Done"], row["Real minutes"]) for row in do if row["Done"] or row["Real minutes"]] == [
        ("lower-tv#1", "✓", 75), ("rod#1", "✓", None), ("bulbs#1", None, 12),
    ]  # fmt: skip
    assert [row["No."] for row in do] == [PAST, PAST, 1, 2, 3, 4, 5]
    for name, words in (("Buy", ("So far", "Still to buy")), ("Do", ("So far", "Still to do"))):
        page = sheet_of(rest, name)
        column = next(cell.column for cell in page[HEAD] if cell.value in ("Product", "Step"))
        heads = [line[column - 1].value for line in page.iter_rows(min_row=HEAD + 1) if line[0].value is None]
        assert tuple(heads[:2]) == words


def test_advice_for_the_shop_is_over_for_what_is_bought(rest: PlanBook) -> None:
    """No most to pay, no second choice, no bag; the day to give it back stays, unless it went back already."""
    rod, bulb = rows(sheet_of(rest, "Buy"))[:2]
    assert (rod["Return by"], rod.get("Bag"), rod.get("Most to pay"), rod.get("Second choice")) == (
        "Sat 4 Jul",
        *[None] * 3,
    )
    assert bulb["Return by"] is None


def test_the_money_adds_up(rest: PlanBook) -> None:
    """Budget less held back less what counts is what is left: paid sums, nothing for what was not to be had."""
    page = sheet_of(rest, "Buy")
    assert [row["Counts as"] for row in rows(page)[:4]] == [43.5, 0, 2, 5.02]
    left = 9.8 + 14 + 5.9
    total = round(43.5 + 2 + 5.02 + left, 2)
    for heading in ("Line", "Counts as"):
        assert beside(page, "Total", heading) == total
        assert beside(page, "Budget", heading) == 160
        assert beside(page, "Left", heading) == round(160 - 10 - total, 2)
    summary = sheet_of(rest, "Summary")
    assert under(summary, "Money left") == round(150 - total, 2)
    assert right_of(summary, "Paid before this plan") == 50.52
    assert right_of(summary, "Planned to spend, with that") == total


def test_tiles_count_what_is_settled(rest: PlanBook) -> None:
    """Bought: one of three that are still wanted, for one went back and one is sold out. Done: two of seven."""
    page = sheet_of(rest, "Summary")
    assert under(page, "Bought") == "1 of 3"
    assert under(page, "Done") == "2 of 7"
    assert right_of(page, "Real work so far") == 75 * 2 + 12


def test_minutes_of_a_session_hold_what_is_done_in_it(rest: PlanBook) -> None:
    """The TV took two people 45 minutes, the brackets one of them 10, with 85 still to do that day."""
    page = sheet_of(rest, "Do")
    assert beside(page, "Sat 6 Jun, 09:00", "Minutes") == 100 + 85
    assert beside(page, "Sat 6 Jun, 09:00", "Real minutes") == 150
    assert str(beside(page, "Sat 6 Jun, 09:00", "What to do")).startswith("1 h 40 min done; ")


def test_people_see_what_they_did(rest: PlanBook) -> None:
    """On Ann's sheet her two steps are ticked and come first; the time of work is what is left."""
    page = sheet_of(rest, "Ann")
    assert [(row["No."], row["Done"]) for row in rows(page)] == [
        (PAST, "✓"), (PAST, "✓"), (1, "☐"), (4, "☐"), (5, "☐"),
    ]  # fmt: skip
    assert str(page["B2"].value).startswith("1 h 25 min of work.")


def test_the_lists_as_csv_say_the_same(rest: PlanBook) -> None:
    """Twins of the sheets: what is settled first, with what was typed, and the total with what was paid."""
    buy, do = buy_csv(rest).decode().split("\r\n"), do_csv(rest).decode().split("\r\n")
    assert buy[1].endswith(",39.00,39.00,,0,2026-07-04,,✓,43.50")
    assert buy[2].endswith(",sold out,")
    assert buy[3].endswith(",returned,2.00")
    assert "total" in buy[-2]
    assert "80.22" in buy[-2]
    assert do[1].startswith("1,2026-06-06,,,Lower the TV by 12 in,1 of 1,")
    assert do[1].endswith(",✓,75,")
    assert do[3].startswith("1,2026-06-06,1,,One round of shops,")


def test_reading_it_back_says_the_same_and_writing_it_again_gives_the_same_bytes(rest: PlanBook) -> None:
    """The new book is all that the next time needs: nothing is lost, and a second time changes nothing."""
    data = plan_book(rest)
    again = Desk(rest, data).back()
    assert said(again) == said(back())
    assert again.remembered == rest.remembered
    assert plan_book(rest_of(again)) == data


def test_the_second_order_of_a_thing_has_a_row_of_its_own() -> None:
    """One rod bought, one more to buy: two rows, two ids, and a tick on either is read as that."""
    first = back()
    book = rest_of(first)
    assert book.remembered is not None
    more = replace(book, money=(KEPT.money[0], *book.money), spent_minor=book.spent_minor + 3900)
    ids = [row["id"] for row in rows(sheet_of(more, "Buy"))]
    assert ids.count("product:rod@harrow") == ids.count("product:rod@harrow#2") == 1
    assert ids.index("product:rod@harrow") < ids.index("product:rod@harrow#2")


def test_everything_bought_and_done_leaves_a_book_with_its_history() -> None:
    """Nothing more to buy or to do: the lists hold what was, and say so."""
    desk = Desk()
    for line in KEPT.remembered.lines if KEPT.remembered else ():
        desk.type("Buy", line.id, "Bought", "✓")
    for step in KEPT.remembered.steps if KEPT.remembered else ():
        desk.type("Do", step.id, "Done", "✓")
    book = rest_of(desk.back())
    opened_book = opened(plan_book(book))
    assert under(sheet(opened_book, "Summary"), "Bought") == "5 of 5"
    assert under(sheet(opened_book, "Summary"), "Done") == "7 of 7"
    texts = [
        str(cell.value) for name in ("Buy", "Do") for line in sheet(opened_book, name).iter_rows() for cell in line
    ]
    assert "Nothing more to buy." in texts
    assert "Nothing more to do." in texts
    assert said(Desk(book).back()) == said(desk.back())


def test_a_rest_of_which_nothing_was_told_is_the_same_book() -> None:
    """Read back without a tick and planned again: the same bytes, so that no second book need be kept."""
    assert plan_book(rest_of(Desk().back())) == plan_book(KEPT)
    assert not carried(rest_of(Desk().back()))


def test_the_whole_budget_is_known_or_put_together() -> None:
    """As the book says, else what is left with what was paid; none without a limit; nothing without a past."""
    book = rest_of(back())
    assert whole_budget(book) == 16000
    assert whole_budget(replace(book, whole_budget_minor=None)) == 16000
    assert whole_budget(replace(book, whole_budget_minor=None, budget_minor=None)) is None
    assert carried(BOOK) == Carried()
    assert whole_budget(BOOK) == BOOK.budget_minor


def test_a_session_is_found_by_its_day() -> None:
    """A step keeps its session where the day is still in the list, whatever its number is now; else it has none."""
    assert KEPT.remembered is not None
    step = replace(KEPT.remembered.steps[0], on=date(2026, 6, 7), start_minute=540)
    assert in_session(step, BOOK.sessions).session == 2
    assert in_session(replace(step, start_minute=600), BOOK.sessions).session is None
    assert in_session(replace(step, on=None), BOOK.sessions).session == 1
