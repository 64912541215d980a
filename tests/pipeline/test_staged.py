"""The stager's bedroom in several houses at once, measured rooms and all, from files to files."""

from __future__ import annotations

import shutil
from collections.abc import Mapping
from itertools import product
from pathlib import Path

import pytest

from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.portfolio import Together
from budgetfix.pipeline.portfolio_writing import put_together, write_portfolio
from tests.optimize.many_houses import too_many
from tests.pipeline.listed_job import ids
from tests.pipeline.staged import REMEDIES, dumped, stage
from tests.pipeline.street import only_plans, plan_street, read_street
from tests.proof.job_files import load_yaml
from tests.scenarios import DEMO

pytestmark = pytest.mark.xdist_group("staged")
NEXT_DAY, NEXT_MONTH = 1, 40
SCARCE = ("s06", "s07")
"""The headboard and the nightstands: one of each; of all else there is enough for two houses."""


def planned(folder: Path, lanes: int = 1) -> Together:
    """Every house has a plan."""
    with only_plans():
        found = plan_street(folder, lanes)
    assert isinstance(found, Together)
    return found


def alone(folder: Path, name: str, stock: Mapping[str, int]) -> PlanBook:
    """One house planned on its own, from a catalogue with so many packs."""
    copy = folder.parent / "alone"
    shutil.rmtree(copy, ignore_errors=True)
    shutil.copytree(folder, copy, ignore=lambda _, names: [one for one in names if one.endswith(("xlsx", "csv"))])
    whole = load_yaml(copy / "catalog.yaml")
    whole["products"] = [{**one, "stock": stock.get(one["product"], one["stock"])} if "stock" in one else one
                         for one in whole["products"]]  # fmt: skip
    (copy / "catalog.yaml").write_text(dumped(whole), encoding="utf-8")
    for other in [one for one in copy.iterdir() if one.is_dir() and one.name != name]:
        shutil.rmtree(other)
    return planned(copy).made[0].book


def test_houses_that_do_not_meet_have_everything(tmp_path: Path) -> None:
    """A month apart both get headboard and nightstands."""
    stage(tmp_path / "street", {"elm-street": 0, "quay-side": NEXT_MONTH})
    found = planned(tmp_path / "street")
    assert [ids(made.book) for made in found.made] == [list(REMEDIES)] * 2
    assert [shared.nodes for _, shared in found.groups] == [1, 1]


@pytest.mark.slow
def test_two_houses_in_one_week(tmp_path: Path) -> None:
    """Headboard and nightstands stand in one house each at a time: the sum is that of the best way to deal them out.

    Each house is then what it would be on its own with the pieces that are left to it.
    """
    folder = tmp_path / "street"
    stage(folder, {"elm-street": 0, "oak-lane": NEXT_DAY})
    found = planned(folder)
    best = min(
        sum(alone(folder, name, dict(zip(SCARCE, mine, strict=True))).points_after for name, mine in ways)
        for ways in dealt()
    )
    books = [made.book for made in found.made]
    assert sum(book.points_after for book in books) == best
    for name, book, one in zip(("elm-street", "oak-lane"), books, found.chosen, strict=True):
        mine = alone(folder, name, dict(one.ceilings))
        assert (book.chosen, book.money, book.tasks, book.faults) == (mine.chosen, mine.money, mine.tasks, mine.faults)


def dealt() -> list[list[tuple[str, tuple[int, int]]]]:
    """Every way to deal headboard and nightstands out to the two houses."""
    return [
        [("elm-street", (a, b)), ("oak-lane", (1 - a, 1 - b))]
        for a, b in product((0, 1), repeat=2)
    ]  # fmt: skip


def test_the_week_in_words_and_files(tmp_path: Path) -> None:
    """Where things stand is told in the houses that miss them, and the van's runs carry what the houses hold."""
    folder = tmp_path / "street"
    stage(folder, {"elm-street": 0, "oak-lane": NEXT_DAY, "quay-side": NEXT_MONTH})
    found = planned(folder)
    portfolio = put_together(folder, read_street(folder), found, 60.0)
    missed = {house for piece in portfolio.pieces for house in piece.missed}
    assert missed
    assert missed <= {"Elm Street", "Oak Lane"}
    for house in portfolio.houses:
        told = any("this plan does without" in note for note in house.book.notes)
        assert told == (house.name in missed)
    assert [(run.house, run.way) for run in portfolio.runs][:2] == [("Elm Street", "brings"), ("Oak Lane", "brings")]
    for group, shared in found.groups:
        assert not too_many(group.stock, [one.held for one in shared.answers], range(739000, 740500))
    write_portfolio(folder, portfolio, found)
    assert (folder / "portfolio.xlsx").is_file()


def best_plan(book: PlanBook) -> tuple[object, ...]:
    """The plan itself, without what stands beside it: a busy machine gets less of that done in its time."""
    lines = [(line.kind, line.product, line.packs, line.line_minor) for line in book.money]
    return book.chosen, lines, book.tasks, book.faults


@pytest.mark.slow
def test_the_same_on_two_processes(tmp_path: Path) -> None:
    """The plans, their order, and how the pieces were shared are the same."""
    stage(tmp_path / "street", {"elm-street": 0, "oak-lane": NEXT_DAY})
    here, there = plan_street(tmp_path / "street"), plan_street(tmp_path / "street", lanes=2)
    assert isinstance(here, Together)
    assert isinstance(there, Together)
    assert [best_plan(made.book) for made in here.made] == [best_plan(made.book) for made in there.made]
    assert [shared.ceilings for _, shared in here.groups] == [shared.ceilings for _, shared in there.groups]


@pytest.mark.slow
def test_the_whole_demo_in_two_houses(tmp_path: Path) -> None:
    """Both rooms, the whole catalogue, two houses in one week: no piece twice, and no more left than each with all."""
    for name in ("elm-street", "oak-lane"):
        shutil.copytree(DEMO / "stager", tmp_path / name)
        (tmp_path / name / "catalog.yaml").rename(tmp_path / "catalog.yaml")
        brief = (tmp_path / name / "brief.yaml").read_text(encoding="utf-8") + "catalog: ../catalog.yaml\n"
        if name == "oak-lane":
            brief = brief.replace("2026-06-04, from: '09:00', to: '11:00'", "2026-06-04, from: '11:00', to: '13:00'")
            brief = brief.replace("2026-07-04, from: '09:00', to: '11:00'", "2026-07-04, from: '11:00', to: '13:00'")
        (tmp_path / name / "brief.yaml").write_text(brief, encoding="utf-8")
    with only_plans():
        found = plan_street(tmp_path, seconds=30.0)
    assert isinstance(found, Together)
    (group, shared), = found.groups  # fmt: skip
    assert not too_many(group.stock, [one.held for one in shared.answers], range(739000, 740500))
    assert shared.floor <= shared.left
    portfolio = put_together(tmp_path, read_street(tmp_path), found, 30.0)
    assert portfolio.bound >= portfolio.improvement
