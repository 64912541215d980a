"""From plans to the portfolio, counted again, and written all or nothing."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from budgetfix.optimize.sharing import Shared
from budgetfix.pipeline.portfolio import Together
from budgetfix.pipeline.portfolio_writing import StandsTwice, put_together, write_portfolio
from tests.pipeline.street import only_plans, plan_street, read_street, write_street


def planned(folder: Path) -> Together:
    """The street's plans, without files."""
    write_street(folder)
    with only_plans():
        found = plan_street(folder)
    assert isinstance(found, Together)
    return found


def with_shared(found: Together, **more: object) -> Together:
    """The same plans, shared out with other figures."""
    group, shared = found.groups[0]
    return replace(found, groups=((group, replace(shared, **more)),))  # type: ignore[arg-type]


def test_the_portfolio_of_a_street(tmp_path: Path) -> None:
    """Names, days, files, proof, and where the pieces stand."""
    found = planned(tmp_path)
    portfolio = put_together(tmp_path, read_street(tmp_path), found, 60.0)
    assert [house.name for house in portfolio.houses] == ["Elm Street", "Oak Lane", "Pine"]
    assert (portfolio.proven, portfolio.bound, portfolio.currency) == (True, portfolio.improvement, "USD")
    assert [(piece.piece, [one.house for one in piece.stands]) for piece in portfolio.pieces] == [
        ("lamp", ["Elm Street", "Pine"]),
        ("rug", ["Oak Lane"]),
    ]
    assert [piece.missed for piece in portfolio.pieces] == [("Oak Lane",), ("Elm Street", "Pine")]


def test_a_piece_in_two_houses_is_our_fault(tmp_path: Path) -> None:
    """Counted again from the lists themselves, whatever the search says."""
    found = planned(tmp_path)
    elm, oak, pine = found.made
    twice = replace(found, made=(replace(elm, book=replace(elm.book, money=oak.book.money)), oak, pine))
    with pytest.raises(StandsTwice, match="rug: Elm Street, Oak Lane"):
        put_together(tmp_path, read_street(tmp_path), twice, 60.0)


def test_the_bound_where_the_clock_ended_the_proof(tmp_path: Path) -> None:
    """125 points before; 30 are left, at least 20 stay: at most 105 go. With hazards still open nothing is known."""
    found, jobs = planned(tmp_path), read_street(tmp_path)
    shared: Shared = found.groups[0][1]
    assert shared.left == (0, 0, 30, 0, 15000)
    stopped = put_together(tmp_path, jobs, with_shared(found, floor=(0, 0, 20, 0, 0)), 60.0)
    assert (stopped.proven, stopped.bound, stopped.improvement) == (False, 105, 95)
    open_ended = with_shared(found, left=(0, 5, 30, 0, 15000), floor=(0, 0, 20, 0, 0))
    assert put_together(tmp_path, jobs, open_ended, 60.0).bound == 125


def test_all_or_nothing(tmp_path: Path) -> None:
    """Where one file cannot be written, all the others are as they were."""
    found = planned(tmp_path)
    found = replace(found, made=tuple(replace(one, files={"plan.xlsx": b"plan"}) for one in found.made))
    portfolio = put_together(tmp_path, read_street(tmp_path), found, 60.0)
    (tmp_path / "portfolio.csv").mkdir()
    with pytest.raises(IsADirectoryError):
        write_portfolio(tmp_path, portfolio, found)
    assert list(tmp_path.rglob("plan.xlsx")) == []
    (tmp_path / "portfolio.csv").rmdir()
    write_portfolio(tmp_path, portfolio, found)
    assert len(list(tmp_path.rglob("plan.xlsx"))) == 3
