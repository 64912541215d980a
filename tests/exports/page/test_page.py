from __future__ import annotations

from budgetfix.exports.page.page import plan_page
from tests.exports.sample_book import BOOK


def test_the_same_book_gives_the_same_bytes() -> None:
    """Nothing in the page depends on the clock or on chance."""
    assert plan_page(BOOK) == plan_page(BOOK)
