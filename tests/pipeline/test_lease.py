"""A job under a lease, through the whole walk: what is ruled out stands under left out, and as a must it is told."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.brief.lease import Lease
from budgetfix.cli.no_plan import no_plan
from budgetfix.optimize.problem import NoPlan
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.lease_notes import OWNED
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


GOODS = {
    "shops": [{"shop": "diy", "name": "DIY store"}],
    "products": [
        {"product": "tub", "name": "Filler", "what": "filler", "shop": "diy", "price": 6, "lead_days": 9},
        {"product": "tin", "name": "Touch-up paint", "what": "paint", "shop": "diy", "price": 14},
    ],
}


def counted(folder: Path, **brief: object) -> PlanBook:
    """The plan of the three remedies where filler and paint are sold."""
    write_job(folder, POINTS, THREE, {"hours": [4], "lease": {"undo": "counted", **brief}}, GOODS)
    return proven_plan(folder)


def test_filler_and_paint_are_shared_and_paid(tmp_path: Path) -> None:
    """Six holes of two remedies take one tub and one tin together, within the bill; no step waits for them."""
    book = counted(tmp_path)
    lines = {line.product: line for line in book.money if line.kind == "product"}
    assert {id: (line.packs, line.tasks) for id, line in lines.items()} == dict.fromkeys(
        ("tub", "tin"), (1, ("keep for moving out",))
    )
    assert {line.second_choice for line in lines.values()} == {"any like it; it may wait until you move out"}
    assert book.spent_minor == 500 + 400 + 300 + 600 + 1400
    assert {task.session for task in book.tasks} == {1}


def test_money_for_undoing_is_money(tmp_path: Path) -> None:
    """With 10.00 the holes' filler and paint no longer fit beside them: the basket alone is bought."""
    write_job(tmp_path, POINTS, THREE, {"budget": 10, "lease": {"undo": "counted"}}, GOODS)
    assert ids(proven_plan(tmp_path)) == ["basket"]
    write_job(tmp_path, POINTS, THREE, {"budget": 10, "lease": {}}, GOODS)
    assert ids(proven_plan(tmp_path)) == ["hooks", "rail"]


def test_hours_for_undoing_are_a_limit(tmp_path: Path) -> None:
    """Four plugs take 63 minutes to undo, two take 39: an hour and a quarter holds one of them, two hours both."""
    assert ids(counted(tmp_path, undo_hours=1.25)) == ["basket", "rail"]
    assert ids(counted(tmp_path, undo_hours=2)) == ["basket", "hooks", "rail"]
    assert ids(counted(tmp_path, undo_hours=0.5)) == ["basket"]


def test_reversible_first(tmp_path: Path) -> None:
    """Of two shelves that do as much the dearer one, on strips, is taken; the cheaper one says what it would leave."""
    shelves: list[dict[str, object]] = [
        {"remedy": "plugs", "answers": {"f1": 1}, "cost": 2, "spends": {"holes": 2}, "pick_one": "g"},
        {"remedy": "strips", "answers": {"f1": 1}, "cost": 9, "pick_one": "g"},
    ]
    write_job(tmp_path, (50,), shelves, {"budget": 10, "lease": {"reversible_first": True}})
    book = proven_plan(tmp_path)
    assert ids(book) == ["strips"]
    (row,) = book.left_out
    assert (row.id, row.why) == ("plugs", "as much is done with less left in the walls by strips")
    write_job(tmp_path, (50,), shelves, {"budget": 10, "lease": {}})
    assert ids(proven_plan(tmp_path)) == ["plugs"]


def test_notes(tmp_path: Path) -> None:
    """Beside the plan: what is ruled out, what waits for leave, how long undoing takes and what is paid for it."""
    lease = {"leave": {"rail": "refused", "hooks": "asked"}, "undo": "counted", "undo_hours": 1,
             "reversible_first": True}  # fmt: skip
    write_job(tmp_path, POINTS, THREE, {"lease": lease}, GOODS)
    assert proven_plan(tmp_path).notes == (
        "Reversible first: of plans that do as much, the one that leaves least in the walls, even if it costs more.",
        "Ruled out by your lease or landlord: Put up a rail. Left out says why.",
        "Only with the landlord's leave, which is not there yet: Hang hooks.",
        "Undoing it all when you move out: about 39 min of 1 h, filler and paint for it are in the money.",
    )
    assert lease_notes_of(planned(tmp_path)) == ()


def lease_notes_of(book: PlanBook) -> tuple[str, ...]:
    """The notes of a plan that speak of a lease."""
    return tuple(note for note in book.notes if "lease" in note or "landlord" in note or "move out" in note)


def test_a_lease_in_an_owned_home_is_told(tmp_path: Path) -> None:
    """The lease counts, but nobody writes to a landlord: the reader is told to say that they rent."""
    (tmp_path / "survey.yaml").write_text("unit: mm\nwalls: [{wall: A, length: 3000}, {wall: B, length: 3000}]\n")
    write_job(tmp_path, POINTS, THREE, {"lease": {"forbids": ["plugs"]}})
    book = proven_plan(tmp_path)
    assert OWNED in book.notes
    assert book.landlord is None
