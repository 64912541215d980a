"""The names by which ticks of the purchase list are told apart."""

from __future__ import annotations

from dataclasses import replace

from budgetfix.exports.page.page import plan_page
from budgetfix.exports.page.rows import buy_ticks
from budgetfix.outcome.money_lines import ON_TOP, line_ids
from tests.exports.plan_sheets import rows, sheet_of
from tests.exports.remembered_book import rest_of
from tests.exports.sample_book import BOOK, MONEY
from tests.intake.ticked import Desk


def test_lines_alike_are_numbered_and_others_keep_their_names() -> None:
    """Goods by product and shop, other lines by their words; the second of two alike is #2."""
    assert line_ids((MONEY[0], MONEY[1], MONEY[0])) == [
        "product:rod@harrow", "product:anchor@harrow", "product:rod@harrow#2",
    ]  # fmt: skip
    assert line_ids(MONEY[4:5]) == ["hire:Hire: cordless drill"]


def test_page_and_workbook_tick_the_same_lines() -> None:
    """What is ticked on the page has the id of its row in the workbook."""
    ticks = [tick.removeprefix("buy ") for tick in buy_ticks(BOOK.money)]
    assert sorted(ticks) == sorted(str(row["id"]) for row in rows(sheet_of(BOOK, "Buy")))
    assert [line.kind for line in MONEY if line.kind in ON_TOP] == ["delivery", "tax"]


def test_a_second_order_has_a_box_of_its_own_on_the_page() -> None:
    """A browser remembers what was ticked by its name: one rod more to buy is not the rod that was bought."""
    assert line_ids(MONEY[:1], ("product:rod@harrow", "product:rod@harrow#2")) == ["product:rod@harrow#3"]
    assert buy_ticks(MONEY[:1], ("product:rod@harrow",)) == ["buy product:rod@harrow#2"]
    desk = Desk()
    desk.type("Buy", "product:rod@harrow", "Bought", "✓")
    book = rest_of(desk.back())
    page = plan_page(replace(book, money=(MONEY[0], *book.money), spent_minor=book.spent_minor + 3900)).decode()
    assert 'data-tick="buy product:rod@harrow#2"' in page
    assert 'data-tick="buy product:rod@harrow"' not in page
