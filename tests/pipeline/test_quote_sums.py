"""Quotes and costings of small listed jobs whose names repeat: sums go by ids, never by what things are called."""

from __future__ import annotations

from pathlib import Path

from budgetfix.exports.quote_words import groups
from tests.pipeline.listed_job import proven_plan, write_job

TOOLS = {"tools": [{"tool": "saw", "buy": 30.0}]}
ONE: dict[str, object] = {"remedy": "i1", "name": "Paint", "answers": {"f1": 1}, "hours": 1}
TWO: dict[str, object] = {"remedy": "i2", "name": "Paint", "answers": {"f2": 1}, "hours": 3, "tools": ["saw"]}


def test_two_fixed_costs_of_one_name_are_one_line(tmp_path: Path) -> None:
    """Without a name both are a fixed cost: the page shows their sum, and its lines add up to what is paid."""
    brief = {"labour": 10, "fixed": [{"cost": 10}, {"cost": 20}], "hours": None}
    write_job(tmp_path, [100], [ONE], brief)
    quote = proven_plan(tmp_path).quote
    assert quote is not None
    total = quote.options[-1].total_minor
    assert total == 4000
    assert sum(row.prices[-1] or 0 for group in groups(quote) for row in group.rows) == total


def test_two_remedies_of_one_name_keep_their_minutes_and_tools_apart(tmp_path: Path) -> None:
    """An hour is an hour and three are three, and who needs no saw pays for none."""
    write_job(tmp_path, [100, 100], [ONE, TWO], {"labour": 20, "hours": None}, TOOLS)
    book = proven_plan(tmp_path)
    assert book.costing is not None
    assert [(row.minutes, row.client_minor) for row in book.costing.rows if row.sort == "work"] == [
        (60, 2000),
        (180, 6000),
    ]
    assert book.quote is not None
    prices = sorted(line.price_minor for room in book.quote.options[-1].rooms for line in room.lines)
    assert prices == [2000, 9000]
