"""A job under a lease, through the whole walk: what is ruled out stands under left out, and as a must it is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.brief.lease import Lease
from budgetfix.cli.no_plan import no_plan
from budgetfix.optimize.problem import NoPlan
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.reading import JobOptions, read
from tests.pipeline.listed_job import TODAY, chosen_plan, ids, proven_plan, write_job

POINTS = (100, 80, 60)
THREE: list[dict[str, object]] = [
    {"remedy": "rail", "name": "Put up a rail", "answers": {"f1": 1}, "cost": 5, "spends": {"holes": 4}, "hours": 1},
    {"remedy": "hooks", "name": "Hang hooks", "answers": {"f2": 1}, "cost": 4, "spends": {"holes": 2}, "hours": 1},
    {"remedy": "basket", "name": "A basket", "answers": {"f3": 1}, "cost": 3, "hours": 1},
]


def planned(folder: Path, **brief: object) -> PlanBook:
    """The plan of the three remedies under a brief."""
    write_job(folder, POINTS, THREE, {"budget": 20, **brief})
    return proven_plan(folder)


def test_ruled_out_is_left_out(tmp_path: Path) -> None:
    """What the landlord refused is not chosen, and its row says who said so; the rest is planned as before."""
    book = planned(tmp_path, lease={"leave": {"rail": "refused"}})
    assert ids(book) == ["basket", "hooks"]
    (row,) = book.left_out
    assert (row.id, row.why, row.would_add) == ("rail", "the landlord said no", None)


def test_forbidden_by_class(tmp_path: Path) -> None:
    """A lease without plugs leaves the basket; both others say which sentence of the lease forbids them."""
    book = planned(tmp_path, lease={"forbids": ["plugs"]})
    assert ids(book) == ["basket"]
    assert {row.id: row.why for row in book.left_out} == dict.fromkeys(
        ("rail", "hooks"), "your lease forbids holes for plugs"
    )


def test_holes_by_class(tmp_path: Path) -> None:
    """Five holes for plugs are enough for the rail alone, as if `limits` had said so."""
    assert ids(planned(tmp_path, lease={"holes": {"plugs": 5}})) == ["basket", "rail"]


def test_leave_not_given_yet(tmp_path: Path) -> None:
    """The rail is planned, and its task and its row say that the landlord was asked and has not answered."""
    book = planned(tmp_path, lease={"leave": {"rail": "asked", "plugs": "given"}})
    assert ids(book) == ["basket", "hooks", "rail"]
    cares = {row.id: row.cares for row in book.chosen}
    assert cares["rail"][-1] == "Only with the landlord's leave: asked, no answer yet."
    assert cares["hooks"][-1] == "The landlord has given leave for this: keep it, in writing."
    assert cares["basket"] == ()
    assert {task.candidate: task.cares for task in book.tasks} == cares


@pytest.mark.parametrize(
    ("lease", "why"),
    [
        ({"forbids": ["plugs"]}, "your lease forbids holes for plugs"),
        ({"leave": {"rail": "refused"}}, "the landlord said no"),
    ],
)
def test_a_must_that_the_lease_rules_out(tmp_path: Path, lease: dict[str, object], why: str) -> None:
    """There is no plan, and it is said which must could never be done and why."""
    write_job(tmp_path, POINTS, THREE, {"budget": 20, "must": ["rail"], "lease": lease})
    found = chosen_plan(tmp_path)
    assert isinstance(found, NoPlan)
    assert found.clash == ("must:rail",)
    assert found.hopeless == (("rail", why),)
    told = no_plan(found, read(tmp_path, JobOptions(), TODAY))
    assert f"Put up a rail (rail) could never be done: {why}." in told


def test_an_empty_lease_changes_nothing(tmp_path: Path) -> None:
    """With a lease that says nothing the same is chosen for the same money."""
    one, other = planned(tmp_path), planned(tmp_path, lease={})
    assert (ids(one), one.spent_minor, one.left_out) == (ids(other), other.spent_minor, other.left_out)
    assert read(tmp_path, JobOptions(), TODAY).brief.lease == Lease()
