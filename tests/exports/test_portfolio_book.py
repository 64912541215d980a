"""The workbook of several jobs, read back."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from budgetfix.exports.portfolio_book import portfolio_book
from budgetfix.exports.portfolio_stock import MOST_WEEKS
from budgetfix.intake.plan_ticks import altered
from budgetfix.outcome.portfolio import House, Portfolio, Standing
from tests.exports.plan_sheets import HEAD, headings, opened, sheet
from tests.exports.sample_book import FORMULA, NO_LIMIT
from tests.exports.sample_portfolio import ELM, EMPTY, HOUSES, NO_STOCK, OAK, PIECES, PINE, PORTFOLIO, RUNS


def read(portfolio: Portfolio, name: str) -> list[dict[str, object]]:
    """The rows of one sheet by heading, sums and sentences among them."""
    page = sheet(opened(portfolio_book(portfolio)), name)
    heads = headings(page)
    return [
        {head: page.cell(row, place).value for place, head in enumerate(heads, start=2)}
        for row in range(HEAD + 1, page.max_row + 1)
    ]


def test_the_sheets() -> None:
    """Stock and vans only where there are any; the same bytes each time."""
    assert opened(portfolio_book(PORTFOLIO)).sheetnames == ["Jobs", "Stock", "Buy", "Vans"]
    assert opened(portfolio_book(NO_STOCK)).sheetnames == ["Jobs", "Buy"]
    assert portfolio_book(PORTFOLIO) == portfolio_book(PORTFOLIO)


def test_a_row_a_job_then_the_sums() -> None:
    """Days, money, points, hazards and hours; each name leads to its own plan."""
    found = read(PORTFOLIO, "Jobs")
    assert [row["Job"] for row in found[:4]] == [ELM, OAK, PINE, "Together"]
    first, last = found[0], found[3]
    assert (first["From"], first["Until"], first["Budget"], first["Spent"]) == ("Thu 4 Jun", "Sat 4 Jul", 160, 216.72)
    assert (last["Spent"], last["Points before"], last["Hazards after"]) == (398.44, 4659, 1)
    assert first["Its lists"] == "elm-street: plan.xlsx, plan.html, plan.ics, buy.csv, do.csv"
    link = sheet(opened(portfolio_book(PORTFOLIO), values=False), "Jobs")["B5"].value
    assert link == '=HYPERLINK("elm-street/plan.xlsx","Elm Street")'


def test_the_sums_are_live() -> None:
    """What stands below is added up by the workbook itself."""
    page = sheet(opened(portfolio_book(PORTFOLIO), values=False), "Jobs")
    assert str(page.cell(8, headings(page).index("Spent") + 2).value).startswith("=SUM(")


def test_no_sum_of_budgets_where_one_is_open() -> None:
    """A job without a limit says so, and the sum stays empty."""
    open_ended = replace(HOUSES[0], book=NO_LIMIT)
    found = read(replace(PORTFOLIO, houses=(open_ended, *HOUSES[1:])), "Jobs")
    assert (found[0]["Budget"], found[3]["Budget"]) == ("no limit", None)


def test_where_a_piece_stands_when() -> None:
    """Place, weight, packs, houses with days; a week's cell says how many packs are out on its fullest day."""
    rug, lamp, table = read(PORTFOLIO, "Stock")[:3]
    assert (rug["Piece"], rug["Kept at"], rug["kg a pack"], rug["Packs"]) == ("Ivory rug", "bay 1", 14.5, 1)
    assert rug["Stands in"] == "Elm Street: Thu 4 Jun to Sat 4 Jul\nwanted as well: Oak Lane"
    assert lamp["Stands in"] == "Pine, 1 of 3: all the time (no dates)\nOak Lane, 2 of 3: Mon 6 Jul to Fri 31 Jul"
    assert table["Stands in"] == "in the store"
    weeks = ["1 Jun", "8 Jun", "15 Jun", "22 Jun", "29 Jun", "6 Jul", "13 Jul", "20 Jul", "27 Jul"]
    assert [rug[week] for week in weeks] == [1, 1, 1, 1, 1, None, None, None, None]
    assert [lamp[week] for week in weeks] == [1, 1, 1, 1, 1, 3, 3, 3, 3]


def test_long_stays_take_no_more_columns() -> None:
    """Two years are shown in columns of several weeks."""
    years = replace(PIECES[0], stands=(Standing(ELM, 1, date(2026, 1, 1), date(2027, 12, 31)),))
    page = sheet(opened(portfolio_book(replace(PORTFOLIO, pieces=(years,)))), "Stock")
    assert len(headings(page)) <= 5 + MOST_WEEKS


def test_one_list_to_buy_from() -> None:
    """Packs by house, a line's sum over all of them, and the sum of all."""
    found = read(PORTFOLIO, "Buy")
    rod = next(row for row in found if row["What"] == "Extending rod 66-120 in")
    assert (rod[ELM], rod[OAK], rod[PINE], rod["Packs in all"], rod["In all"]) == (1, 1, None, 2, 78)
    assert (found[-1]["Shop"], found[-1]["In all"]) == ("Together", 398.44)


def test_many_houses_stand_in_one_cell() -> None:
    """Thirteen houses would not fit beside each other."""
    many = tuple(replace(HOUSES[0], folder=f"h{number}", name=f"House {number}") for number in range(13))
    found = read(replace(PORTFOLIO, houses=many), "Buy")
    assert str(found[0]["Packs by job"]).startswith("House 0 ")


def test_two_houses_of_one_name_are_told_apart() -> None:
    """Their folders differ, so their columns do."""
    twins = (HOUSES[0], replace(HOUSES[0], folder="elm_street"))
    page = sheet(opened(portfolio_book(replace(PORTFOLIO, houses=twins))), "Buy")
    assert [name for name in headings(page) if "lm" in str(name)] == ["elm-street", "elm_street"]


def test_what_the_van_carries_where() -> None:
    """Day, window, house, way, and a list to load by, with the place in the store."""
    elm, oak = read(PORTFOLIO, "Vans")[:2]
    assert [elm[key] for key in ("Day", "From", "To", "House", "Way")] == ["Thu 4 Jun", "09:00", "11:00", ELM, "brings"]
    assert (elm["Pieces"], elm["Load kg"], elm["May carry kg"]) == ("1 × Ivory rug (bay 1)", 14.5, 400)
    assert oak["Pieces"] == "2 × Table lamp (shelf 3)\nthe weight of 2 packs is not known"
    named = replace(PORTFOLIO, runs=(replace(RUNS[0], van="white van"), RUNS[1]))
    assert read(named, "Vans")[0]["Van"] == "white van"


def test_nothing_to_buy() -> None:
    """A sentence instead of a table."""
    assert read(EMPTY, "Buy")[0]["Shop"] == "Nothing to buy: everything in these plans is free."


@pytest.mark.parametrize("text", [FORMULA, "'quoted", "007", "https://example.org"])
def test_texts_stay_texts(text: str) -> None:
    """Names that a program would run, quote or turn into numbers or links stand as typed."""
    odd = replace(HOUSES[0], name=text)
    found = read(replace(PORTFOLIO, houses=(odd, *HOUSES[1:]), pieces=(replace(PIECES[0], name=text),)), "Stock")
    assert found[0]["Piece"] == text


def test_a_book_that_somebody_typed_into_is_known(tmp_path: Path) -> None:
    """As written it may be written over; with one cell more it may not."""
    path = tmp_path / "portfolio.xlsx"
    path.write_bytes(portfolio_book(PORTFOLIO))
    assert not altered(path)
    book = opened(path.read_bytes(), values=False)
    sheet(book, "Jobs")["M5"] = "call the client"
    book.save(path)
    assert altered(path)


def test_houses_have_no_days_of_their_own() -> None:
    """Without a stay both days are empty."""
    house: House = HOUSES[2]
    assert (house.first, house.until) == (None, None)
    assert read(PORTFOLIO, "Jobs")[2]["From"] is None
