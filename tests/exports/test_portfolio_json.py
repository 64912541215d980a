"""The object of several jobs: the keys of one, each put together by its rule."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from budgetfix.exports.plan_json import plan_object
from budgetfix.exports.portfolio_json import inspections_object, portfolio_object
from tests.exports.sample_book import BOOK, NO_LIMIT
from tests.exports.sample_portfolio import HOUSES, PORTFOLIO, STOPPED

OBJECT: dict[str, Any] = portfolio_object(PORTFOLIO)
EACH: dict[str, Any] = {house.folder: plan_object(house.book, house.files) for house in HOUSES}


def test_the_keys_of_one_job_in_their_order_and_jobs() -> None:
    """Who reads one job's object reads this one."""
    assert list(OBJECT) == [*plan_object(BOOK, ()), "jobs"]
    assert OBJECT["jobs"] == EACH


def test_counts_and_money_are_added() -> None:
    """Budget, spend, points, hazards, candidates and sessions."""
    for key in ("budget_minor", "spent_minor", "hazards_before", "hazards_after", "points_before", "points_after",
                "improvement", "candidates", "sessions_used"):  # fmt: skip
        assert OBJECT[key] == sum(one[key] for one in EACH.values()), key
    assert OBJECT["rounds"] == {"inspections": 9, "placings": 6}


def test_lists_stand_one_after_the_other() -> None:
    """Lines of money add up to the sum; minutes are those of every session of every job."""
    for key in ("minutes_available", "minutes_used", "chosen", "purchases", "left", "new"):
        assert OBJECT[key] == [item for one in EACH.values() for item in one[key]], key
    assert sum(line["line_minor"] for line in OBJECT["purchases"]) == OBJECT["spent_minor"]


def test_three_plans_are_summed_and_one_missing_leaves_none() -> None:
    """The third house has no recommended and no free plan, so there is none for all."""
    best = OBJECT["plans"]["best"]
    assert best["spent_minor"] == sum(house.book.best.spent_minor for house in HOUSES)
    assert best["chosen"] == [*BOOK.best.chosen] * 2
    assert OBJECT["plans"]["recommended"] is None
    two = portfolio_object(replace(PORTFOLIO, houses=HOUSES[:2]))["plans"]
    assert isinstance(two, dict)
    assert two["free"] == {
        "spent_minor": 0, "improvement": 700, "hazards_after": 2, "minutes": 180, "chosen": ["lower-tv"] * 2,
    }  # fmt: skip


def test_proof_and_bound_are_those_of_all_together() -> None:
    """Proven only where sharing the stock is; then the bound is the improvement."""
    assert (OBJECT["proven"], OBJECT["bound"]) == (True, OBJECT["improvement"])
    stopped = portfolio_object(STOPPED)
    assert (stopped["proven"], stopped["bound"]) == (False, 2000)


def test_files_of_the_jobs_then_those_of_all() -> None:
    """As typed, joined with the names."""
    assert OBJECT["files"][0] == "summer/elm-street/plan.xlsx"
    assert OBJECT["files"][-2:] == ["summer/portfolio.xlsx", "summer/portfolio.csv"]
    assert len(OBJECT["files"]) == 17


def test_one_job_without_a_limit_leaves_no_limit() -> None:
    """A sum of budgets of which one is open is open."""
    open_ended = replace(HOUSES[0], book=NO_LIMIT)
    assert portfolio_object(replace(PORTFOLIO, houses=(open_ended, *HOUSES[1:])))["budget_minor"] is None


def test_inspections_say_which_job_each_finding_is_of() -> None:
    """Points and hazards added, findings one after the other."""
    one = {"schema": 1, "points": 5, "hazards": 1, "findings": [{"rule": "a"}]}
    two = {"schema": 1, "points": 7, "hazards": 0, "findings": [{"rule": "b"}]}
    assert inspections_object({"elm": one, "oak": two}) == {
        "schema": 1,
        "points": 12,
        "hazards": 1,
        "findings": [{"job": "elm", "rule": "a"}, {"job": "oak", "rule": "b"}],
        "jobs": {"elm": one, "oak": two},
    }
