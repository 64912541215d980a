"""Two jobs planned at once and set side by side."""

from __future__ import annotations

import time
from pathlib import Path

import pytest

from budgetfix.base.problems import FilesRefused
from budgetfix.optimize.problem import NoPlan
from budgetfix.outcome.beside import Beside, Deed, Ending, Good
from budgetfix.pipeline.alone import Alone, planned_alone
from budgetfix.pipeline.comparing import Named, Without, compared
from budgetfix.pipeline.planning import Wish, planned
from budgetfix.pipeline.reading import JobOptions, read
from tests.pipeline.listed_job import TODAY, Remedy, one_each, with_hours, write_job

WISH = Wish(20, time.monotonic)
SHELF: dict[str, object] = {
    "products": [
        {"product": "pine", "name": "Pine shelf", "price": 20},
        {"product": "oak", "name": "Oak shelf", "price": 60},
    ]
}
SHELVES: list[Remedy] = [
    {
        "remedy": "a1",
        "name": "Put up pine",
        "answers": {"f1": 0.5},
        "uses": {"pine": 1},
        "pick_one": "shelf",
        "hours": 1,
    },
    {"remedy": "a2", "name": "Put up oak", "answers": {"f1": 1}, "uses": {"oak": 1}, "pick_one": "shelf", "hours": 2},
    {"remedy": "b", "name": "Sweep", "answers": {"f2": 1}, "hours": 1},
]


def both(folder: Path, second: JobOptions, brief: dict[str, object]) -> Beside | Without:
    """The shelves under this brief, and the same under other options."""
    write_job(folder, [100, 30], SHELVES, brief, SHELF)
    jobs = [Named("one", read(folder, JobOptions(), TODAY)), Named("other", read(folder, second, TODAY))]
    return compared(jobs, WISH)


def test_forty_more(tmp_path: Path) -> None:
    """20.00 buys the pine shelf; 40.00 more buys oak instead: the same thing in another way, 50 points more."""
    found = both(tmp_path, JobOptions(budget="+40"), {"budget": 20, "hours": [4]})
    assert isinstance(found, Beside)
    assert not found.only_first
    assert not found.only_second
    assert [(pair.first, pair.second) for pair in found.otherwise] == [
        (Deed("a1", "Put up pine", 60, 2000), Deed("a2", "Put up oak", 120, 6000))
    ]
    assert found.both == ("Sweep",)
    assert found.goods == (
        Good("oak", "Oak shelf", 0, 0, 1, 6000), Good("pine", "Pine shelf", 1, 2000, 0, 0),
    )  # fmt: skip
    assert found.faults == (Ending("f1", "f1", "", False, 50, 0),)


def test_an_hour_less(tmp_path: Path) -> None:
    """With three hours less, the sweeping falls off and nothing takes its place."""
    found = both(tmp_path, JobOptions(hours="2"), {"budget": 60, "hours": [4]})
    assert isinstance(found, Beside)
    assert found.only_first == (Deed("b", "Sweep", 60, 0),)
    assert not found.only_second
    assert not found.alike


def test_nothing_differs(tmp_path: Path) -> None:
    """Money that buys nothing more changes nothing."""
    found = both(tmp_path, JobOptions(budget="+500"), {"budget": 60, "hours": [4]})
    assert isinstance(found, Beside)
    assert found.alike
    assert not found.faults


def test_a_job_without_a_plan(tmp_path: Path) -> None:
    """The second must buy what it has no money for: it is the second that has no plan, and the budget says why."""
    found = both(tmp_path, JobOptions(budget="10"), {"budget": 60, "hours": [4], "must": ["shelf"]})
    assert isinstance(found, Without)
    assert found.at == 1
    assert "budget" in found.why.clash


def test_a_must_that_means_nothing(tmp_path: Path) -> None:
    """It is a problem of the brief, whichever process found it."""
    with pytest.raises(FilesRefused):
        both(tmp_path, JobOptions(), {"must": ["shelves"]})


def test_alone_is_the_plan(tmp_path: Path) -> None:
    """The plan with nothing beside it is the same plan, with the same lists, as `plan` makes."""
    points, costs = [70, 60, 50, 40], [9.0, 8, 5, 4]
    write_job(tmp_path, points, with_hours(one_each(points, costs), [1, 1, 2, 1]), {"budget": 18, "hours": [2, 2]})
    job = read(tmp_path, JobOptions(), TODAY)
    whole, bare = planned(job, WISH), planned_alone(job, WISH)
    assert not isinstance(whole, NoPlan)
    assert isinstance(bare, Alone)
    assert (bare.book.best, bare.book.tasks, bare.book.money) == (whole.best, whole.tasks, whole.money)
    assert [one.id for one in bare.chosen] == list(whole.best.chosen)
