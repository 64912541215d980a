"""The page that is sent to the client: complete, closed to the network, without script, and nothing from inside."""

from __future__ import annotations

import re

from budgetfix.exports.page.quote import quote_page
from tests.exports.sample_quote import COSTING, QUOTE

PAGE = quote_page(QUOTE).decode("utf-8")


def test_all_of_it_is_there() -> None:
    """Options with their totals, every line, every sentence; text of the files is never read as markup."""
    for text in ("$100.00", "$145.50", "Two bedside lamps", "Bedroom", "In all", "not included", "Your answer"):
        assert text in PAGE
    assert "A large rug &lt;under&gt; the sofa" in PAGE
    assert "The keys stay with us." in PAGE


def test_nothing_from_inside() -> None:
    """No shop, no product, no place, no shelf price, no mark-up, no rate, no minutes, no ids, no points."""
    inside = {row.id for row in COSTING.rows} | {"q77", "Harrow", "bay 2", "20.00 an hour", "45.00", "15 %", "fixed:"}
    body = PAGE.split("</style>")[1]
    for text in (*sorted(inside), "mark-up", "margin", "minutes", "points"):
        assert text not in body, text


def test_the_policy_names_its_own_style_and_nothing_else() -> None:
    """One hashed style; no script, no other address, and no style on an element."""
    policy = re.search(r'Content-Security-Policy" content="([^"]+)"', PAGE)
    assert policy is not None
    assert re.fullmatch(
        r"default-src 'none'; style-src 'sha256-[A-Za-z0-9+/=]+'; base-uri 'none'; form-action 'none'", policy[1]
    )
    assert "<script" not in PAGE
    assert "style=" not in PAGE
    assert not re.search(r"(?:src|href)=", PAGE)


def test_same_quote_same_bytes() -> None:
    """Two pages are equal to the last byte."""
    assert quote_page(QUOTE) == quote_page(QUOTE)
