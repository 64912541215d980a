"""The jobs as a table for other programs."""

from __future__ import annotations

import csv
import io
from dataclasses import replace

from budgetfix.exports.portfolio_csv import HEADS, minutes_used, portfolio_csv
from tests.exports.sample_book import NO_LIMIT
from tests.exports.sample_portfolio import HOUSES, PORTFOLIO


def rows(data: bytes) -> list[list[str]]:
    """The cells as text."""
    return list(csv.reader(io.StringIO(data.decode(), newline="")))


def test_a_row_a_job_and_one_for_all() -> None:
    """Dates as ISO 8601 has them, money as plain numbers."""
    found = rows(portfolio_csv(PORTFOLIO))
    assert found[0] == list(HEADS)
    assert found[1][:6] == ["elm-street", "Elm Street", "2026-06-04", "2026-07-04", "160.00", "216.72"]
    assert found[3][:6] == ["pine", "Pine", "", "", "160.00", "0.00"]
    assert found[4][:6] == ["", "together", "", "", "480.00", "398.44"]
    assert [row[-1] for row in found[1:]] == ["yes"] * 4
    assert int(found[4][10]) == sum(map(minutes_used, HOUSES))


def test_no_limit_is_empty_and_a_formula_is_harmless() -> None:
    """A job without a limit leaves budget and sum empty; a name that a spreadsheet would run is quoted."""
    first = replace(HOUSES[0], book=NO_LIMIT, name="=1+1")
    found = rows(portfolio_csv(replace(PORTFOLIO, houses=(first, *HOUSES[1:]))))
    assert (found[1][1], found[1][4], found[4][4]) == ("'=1+1", "", "")
