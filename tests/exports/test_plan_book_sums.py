"""What stands below the lists of Buy and Do."""

from __future__ import annotations

from dataclasses import replace

from budgetfix.exports.plan_book_buy_sums import goods_first
from budgetfix.exports.plan_book_do_sums import session_when, worked_minutes
from tests.exports.remembered_book import KEPT, rest_of
from tests.exports.sample_book import BOOK, MONEY, SESSIONS
from tests.intake.ticked import Desk


def test_goods_come_first_and_what_is_on_top_of_them_last() -> None:
    """Whatever order the lines have: goods and hire, then delivery and tax, shop by shop as they were."""
    kinds = [line.kind for line in goods_first(tuple(reversed(MONEY)))]
    assert kinds == ["hire", "product", "product", "product", "product", "tax", "delivery"]
    assert [line.name for line in goods_first(MONEY)] == [line.name for line in MONEY]


def test_a_session_is_told_by_its_day() -> None:
    """The day with its hour; nothing for a session without a date."""
    assert session_when(SESSIONS[0]) == "Sat 6 Jun, 09:00"
    assert session_when(replace(SESSIONS[0], on=None)) == ""
    assert session_when(None) == ""


def test_minutes_really_worked() -> None:
    """Two people at the TV for 50 minutes, one at the bulbs for 12 that are not done yet: 112, 100 on Saturday."""
    desk = Desk()
    desk.type("Do", "lower-tv#1", "Done", "✓")
    desk.type("Do", "lower-tv#1", "Real minutes", 50)
    desk.type("Do", "bulbs#1", "Real minutes", 12)
    rest = rest_of(desk.back())
    assert worked_minutes(rest) == 112
    assert [worked_minutes(rest, session) for session in (1, 2)] == [100, 12]
    assert worked_minutes(KEPT) == worked_minutes(BOOK) == 0
