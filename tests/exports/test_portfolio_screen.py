"""Several jobs on a terminal: one line each, the sums, and who goes without which piece."""

from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.exports.narrow import narrow
from budgetfix.exports.portfolio_screen import Looked, inspections_text, portfolio_text
from budgetfix.outcome.portfolio import Portfolio
from tests.exports.sample_portfolio import EMPTY, HOUSES, NO_STOCK, PIECES, PORTFOLIO, STOPPED

TEXT = """\
Summer: 3 jobs, Thu 4 Jun to Fri 31 Jul. Money in EUR.

  job                           spent     budget  before   after  hazards
  Elm Street                   216.72     160.00   1,553     600   1 to 0
  Oak Lane                     181.72     160.00   1,553     600   1 to 0
  Pine                           0.00     160.00   1,553   1,553   1 to 1
  together                     398.44     480.00   4,659   2,753   3 to 1
  before and after: points of what is off

STOCK 2 of 3 pieces stand in houses.
      Ivory rug: Elm Street until Sat 4 Jul; Oak Lane goes without.

BUY   Harrow Tools 131.64, Mill Lane Home 123.80, hire 28.00, our stock 100.00,
      pay 15.00: 398.44 in all

PROOF no other way to share the stock, and no other plans, take away more in
      all.
NOTE  Pine has no `stay` in its brief, so it keeps its pieces from the other
      houses all the time.

Wrote summer/portfolio.xlsx, summer/portfolio.csv
  and in each of elm-street, oak-lane, pine: buy.csv, do.csv, plan.html,
    plan.ics, plan.xlsx"""


def test_word_for_word() -> None:
    """What a stager with three houses reads."""
    assert portfolio_text(PORTFOLIO) == TEXT


@pytest.mark.parametrize("portfolio", [PORTFOLIO, STOPPED, NO_STOCK, EMPTY])
def test_it_fits_79_columns(portfolio: Portfolio) -> None:
    """Also with long names, long notes and in ASCII; and a narrower terminal breaks nothing off."""
    long = replace(portfolio, houses=tuple(replace(house, name="Ä" * 60) for house in portfolio.houses))
    for unicode in (True, False):
        text = portfolio_text(long, ("a note " * 40,), unicode=unicode)
        assert max(len(line) for line in text.split("\n")) <= 79
        assert unicode or text.isascii()
    assert max(len(line) for line in narrow(portfolio_text(long), 50).split("\n")) <= 50


def test_stopped_by_the_clock() -> None:
    """It says what may be missing, not that it is best."""
    assert "STOPPED after 60 s a job: at most 94 points more exist." in portfolio_text(STOPPED)
    assert "PROOF" not in portfolio_text(STOPPED)


def test_jobs_that_share_nothing() -> None:
    """No stock is told of, and no sharing."""
    text = portfolio_text(NO_STOCK)
    assert "STOCK" not in text
    assert "PROOF no other plans take away more." in text
    assert "BUY   nothing: everything in these plans is free." in portfolio_text(EMPTY)


def test_many_scarce_pieces_are_not_all_told() -> None:
    """Eight on the screen, the rest in the workbook."""
    many = tuple(replace(PIECES[0], piece=f"s{number}") for number in range(11))
    assert "and 3 pieces more, see the sheet Stock" in portfolio_text(replace(PORTFOLIO, pieces=many))


def test_inspections_in_one_table() -> None:
    """Sums by job and in all, then the worst one to look at, and what to type next."""
    looked = [Looked("elm-street", "Elm Street", 14, 1553, 1), Looked("oak-lane", "Oak Lane", 9, 1800, 0)]
    assert inspections_text("summer/", looked, ("one note",)) == (
        "2 jobs in summer/\n"
        "\n"
        "  job                                         faults      points     hazards\n"
        "  Elm Street                                      14       1,553           1\n"
        "  Oak Lane                                         9       1,800           0\n"
        "  together                                        23       3,353           1\n"
        "NOTE  one note\n"
        "\n"
        "See one of them in full?       budgetfix inspect summer/elm-street\n"
        "Plan them all together?        budgetfix plan summer/"
    )
    assert HOUSES[0].folder == "elm-street"
