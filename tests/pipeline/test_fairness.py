"""Two people's priorities from their files to a fair plan, held against every set that the money allows."""

from __future__ import annotations

import json
from itertools import combinations
from pathlib import Path

import pytest
from typer.testing import CliRunner

from budgetfix.cli.app import app
from budgetfix.optimize.fair import fairness
from budgetfix.pipeline.fairness import MARKS
from tests.pipeline.listed_job import ids, one_each, proven_plan, write_job

POINTS = (100, 90, 80, 70, 60, 50)
COSTS = (3.0, 2.0, 2.0, 1.0, 2.0, 1.0)
ANN = {"f1": 3, "f3": 0.5}
BEN = {"f2": 2, "f4": 3, "f1": 0}
PEOPLE = {"ann": {"priorities": ANN}, "ben": {"priorities": BEN}}


def gains(some: tuple[int, ...]) -> tuple[int, int]:
    """Points that a set of remedies takes away in the eyes of each."""
    ann = sum(int(POINTS[at] * ANN.get(f"f{at + 1}", 1)) for at in some)
    return ann, sum(int(POINTS[at] * BEN.get(f"f{at + 1}", 1)) for at in some)


def sets(budget: float) -> list[tuple[int, ...]]:
    """Every set of remedies for at most so much."""
    every = range(len(POINTS))
    return [
        some
        for size in range(len(POINTS) + 1)
        for some in combinations(every, size)
        if sum(COSTS[at] for at in some) <= budget
    ]


@pytest.mark.parametrize("budget", [0, 1, 2, 3, 4, 5, 6, 8, 11])
def test_the_plan_is_the_fairest_of_all_sets(tmp_path: Path, budget: int) -> None:
    """For every sum of money: the same shares as trying all sets, and what each would have alone."""
    write_job(tmp_path, POINTS, one_each(POINTS, COSTS), {"budget": budget, "hours": None, "people": PEOPLE})
    book = proven_plan(tmp_path)
    tried = [gains(some) for some in sets(budget)]
    ideals = (max(one[0] for one in tried), max(one[1] for one in tried))
    mine = gains(tuple(int(id[1:]) - 1 for id in ids(book)))
    best = max(fairness(one, ideals) for one in tried)
    assert fairness(mine, ideals) == best
    assert tuple(side.alone for side in book.sides) == ideals
    assert tuple(side.gets for side in book.sides) == mine
    halves = [gains(some) for some in sets(budget / 2)]
    assert [side.half for side in book.sides] == [max(one[voice] for one in halves) for voice in (0, 1)]


def test_every_stop_of_the_slider_is_fair_for_its_money(tmp_path: Path) -> None:
    """Plans for other sums are fair choices too, each between what both could have alone for that sum."""
    write_job(tmp_path, POINTS, one_each(POINTS, COSTS), {"budget": 6, "hours": None, "people": PEOPLE})
    book = proven_plan(tmp_path)
    assert len(book.stops) > 2
    for stop in book.stops:
        mine = gains(tuple(int(id[1:]) - 1 for id in stop.sums.chosen))
        assert any(
            fairness(mine, ideals) == max(fairness(gains(some), ideals) for some in sets(money))
            for money in range(12)
            for ideals in [(max(gains(some)[0] for some in sets(money)), max(gains(some)[1] for some in sets(money)))]
        )


def test_what_is_left_out_says_who_would_lose(tmp_path: Path) -> None:
    """No remedy is left out without a word about either of the two, and the points are those of all sets."""
    write_job(tmp_path, POINTS, one_each(POINTS, COSTS), {"budget": 5, "hours": None, "people": PEOPLE})
    book = proven_plan(tmp_path)
    mine = gains(tuple(int(id[1:]) - 1 for id in ids(book)))
    rows = {row.id: row.why for row in book.left_out}
    assert rows
    for id, why in rows.items():
        at = int(id[1:]) - 1
        fit = [gains(some) for some in sets(5) if at in some]
        ann = [mine[0] - one[0] for one in fit if one[1] >= mine[1]]
        ben = [mine[1] - one[1] for one in fit if one[0] >= mine[0]]
        parts = [f"{name} {min(losses)} points" for name, losses in (("ann", ann), ("ben", ben)) if losses]
        assert why == (f"would cost {' or '.join(parts)}" if parts else "would cost both ann and ben points")


def test_counting_everything_twice_changes_nothing(tmp_path: Path) -> None:
    """Shares cannot be gamed: a person who doubles all own priorities gets the same plan."""
    quiet = {"f1": 0, "f2": 1, "f3": 0.5, "f4": 1.5, "f5": 0.5, "f6": 0.5}
    chosen = []
    for ben in (quiet, {name: 2 * value for name, value in quiet.items()}):
        people = {"ann": {"priorities": ANN}, "ben": {"priorities": ben}}
        write_job(tmp_path, POINTS, one_each(POINTS, COSTS), {"budget": 5, "hours": None, "people": people})
        book = proven_plan(tmp_path)
        chosen.append((ids(book), book.sides[0], book.sides[1].gets / book.sides[1].alone))
    assert chosen[0] == chosen[1]


def test_one_household_speaks_as_before(tmp_path: Path) -> None:
    """Without priorities of their own two people share one plan by points, and nothing is said of shares."""
    write_job(tmp_path, POINTS, one_each(POINTS, COSTS), {"budget": 5, "hours": None, "people": {"ann": {}, "ben": {}}})
    book = proven_plan(tmp_path)
    assert not book.sides
    most = max(sum(POINTS[at] for at in some) for some in sets(5))
    assert book.improvement == most


def test_everything_asked_for_leaves_nothing_to_share(tmp_path: Path) -> None:
    """With `must: all` both get all; no fair choice is looked for, and none is claimed."""
    brief = {"budget": 11, "hours": None, "people": PEOPLE, "must": "all"}
    write_job(tmp_path, POINTS, one_each(POINTS, COSTS), brief)
    book = proven_plan(tmp_path)
    assert len(ids(book)) == len(POINTS)
    assert not book.sides
    assert MARKS[0] == 0


def test_the_json_object_is_of_the_fair_plan(tmp_path: Path) -> None:
    """Its points are the household's, its plan the fair one, and the exit code says that it is proven."""
    write_job(tmp_path, POINTS, one_each(POINTS, COSTS), {"budget": 5, "hours": None, "people": PEOPLE})
    run = CliRunner().invoke(app, ["plan", str(tmp_path), "--json"])
    assert run.exit_code == 0
    said = json.loads(run.stdout)
    assert said["proven"] is True
    assert said["improvement"] == sum(POINTS[int(one["id"][1:]) - 1] for one in said["chosen"]) == said["bound"]
