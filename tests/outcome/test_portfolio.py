"""Several jobs as one record."""

from __future__ import annotations

from dataclasses import replace

import pytest

from budgetfix.outcome.portfolio import house_name, house_names
from tests.exports.sample_book import NO_LIMIT
from tests.exports.sample_portfolio import HOUSES, PORTFOLIO


@pytest.mark.parametrize(
    ("folder", "name"),
    [
        ("elm-street", "Elm Street"),
        ("12_elm_street", "12 Elm Street"),
        ("McAdam", "McAdam"),
        ("étage-2", "Étage 2"),
        ("---", "---"),
    ],
)
def test_a_folder_as_people_say_it(folder: str, name: str) -> None:
    """Signs between words become spaces, each word begins with a large letter, and nothing else changes."""
    assert house_name(folder) == name


def test_houses_that_would_be_said_alike() -> None:
    """They keep their folders' own names, so that a note on where a piece stands means one house."""
    assert house_names(["a b", "a-b", "oak-lane", "a_b"]) == ["a b", "a-b", "Oak Lane", "a_b"]
    assert house_names(["Elm", "elm"]) == ["Elm", "elm"]


def test_money_in_all() -> None:
    """Added up; open where one budget is."""
    assert (PORTFOLIO.budget_minor, PORTFOLIO.spent_minor, PORTFOLIO.improvement) == (48000, 39844, 1906)
    assert replace(PORTFOLIO, houses=(replace(HOUSES[0], book=NO_LIMIT), *HOUSES[1:])).budget_minor is None
