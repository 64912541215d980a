"""What is said of each remedy that is not in the plan: small jobs of listed faults, planned through the whole walk."""

from __future__ import annotations

from pathlib import Path

import pytest

from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline import around
from tests.pipeline.listed_job import Remedy, chosen_plan, proven_plan, write_job


def rows(folder: Path, points: list[int], remedies: list[Remedy], **brief: object) -> tuple[PlanBook, dict[str, str]]:
    """The plan, and why by remedy."""
    write_job(folder, points, remedies, brief)
    book = proven_plan(folder)
    return book, {row.id: row.why for row in book.left_out}


def fixes(id: str, fault: int, cost: float = 0, relief: float = 1.0, **more: object) -> Remedy:
    """A remedy for one fault."""
    return {"remedy": id, "name": id.title(), "answers": {f"f{fault}": relief}, "cost": cost, **more}


def test_another_does_as_much_for_less(tmp_path: Path) -> None:
    """Two of one group that answer the fault whole: the cheaper one is in, and the dearer one says so."""
    _, why = rows(tmp_path, [100], [fixes("dear", 1, 30, pick_one="g"), fixes("cheap", 1, 20, pick_one="g")], budget=50)
    assert why == {"dear": "as much is done for 10.00 less by Cheap"}


def test_what_there_was_no_time_to_weigh_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Two are left out. With time both say what they would add; without, neither does, and a note tells so."""
    remedies = [fixes(id, 1, cost, pick_one="g") for id, cost in (("a", 5), ("b", 10), ("c", 15))]
    note = "What 2 of 2 remedies left out would add was not worked out: there was no time."
    book, _ = rows(tmp_path, [100], remedies, budget=50)
    assert ([row.would_add for row in book.left_out], note in book.notes) == ([0, 0], False)
    monkeypatch.setattr(around, "_weighing", lambda _: -1.0)
    book, _ = rows(tmp_path, [100], remedies, budget=50)
    assert ([row.would_add for row in book.left_out], note in book.notes) == ([None, None], True)


def test_so_much_more_is_needed(tmp_path: Path) -> None:
    """A must leaves 30.00 of the budget: what costs 45.80 beside it needs 15.80 more."""
    remedies = [fixes("rod", 1, 70), fixes("lamp", 2, 45.80)]
    _, why = rows(tmp_path, [300, 50], remedies, budget=100, must=["rod"])
    assert why == {"lamp": "15.80 more is needed"}


def test_so_many_points_elsewhere(tmp_path: Path) -> None:
    """The lamp would push the rod out, 250 points; with 15.80 more both fit."""
    _, why = rows(tmp_path, [300, 50], [fixes("rod", 1, 70), fixes("lamp", 2, 45.80)], budget=100)
    assert why == {"lamp": "would cost 250 points elsewhere (Rod would go); with 15.80 more it would not"}


def test_it_adds_nothing(tmp_path: Path) -> None:
    """The fault is gone already: more of the same takes nothing away, for money or for none."""
    remedies = [fixes("a", 1, 5), fixes("b", 1, 10, relief=0.5), fixes("c", 1, 0, relief=0.5, hours=1)]
    book, why = rows(tmp_path, [100], remedies, budget=50)
    assert [row.id for row in book.chosen] == ["a"]
    assert why["b"] == "adds nothing beside what is chosen, for 10.00 more"
    assert why["c"] == "adds nothing beside what is chosen"


def test_as_good_and_no_dearer(tmp_path: Path) -> None:
    """Equal in points and money: the plan holds the one whose name comes first, and says that the other is as good."""
    _, why = rows(tmp_path, [100], [fixes("a", 1, 5, pick_one="g"), fixes("b", 1, 5, pick_one="g")], budget=50)
    assert why == {"b": "no better than A: as many points for as much money"}


def test_hazards_come_first(tmp_path: Path) -> None:
    """What would leave a hazard standing says so before it speaks of points."""
    write_job(tmp_path, [10, 500], [fixes("strap", 1, 10), fixes("rug", 2, 10)], {"budget": 10})
    text = (tmp_path / "faults.csv").read_text().replace("fault,points", "fault,points,safety")
    (tmp_path / "faults.csv").write_text(text.replace("f1,10", "f1,10,yes").replace("f2,500", "f2,500,no"))
    book = proven_plan(tmp_path)
    assert [row.id for row in book.chosen] == ["strap"]
    (row,) = book.left_out
    assert row.why == "would leave 10 more hazard points (Strap would go); with 10.00 more it would not"


def test_no_room_in_the_hours(tmp_path: Path) -> None:
    """What must be done fills the only session."""
    remedies = [fixes("a", 1, hours=1), fixes("b", 2, hours=1)]
    _, why = rows(tmp_path, [10, 500], remedies, hours=[1], must=["a"])
    assert why == {"b": "no plan with it fits the hours and the limits"}


def test_what_never_fits_and_what_may_not_be(tmp_path: Path) -> None:
    """A step longer than every session, a remedy that the brief forbids: no solve is needed to say so."""
    remedies = [fixes("a", 1, hours=3), fixes("b", 2), fixes("c", 2)]
    _, why = rows(tmp_path, [10, 20], remedies, hours=[2, 2], never=["b"])
    assert why == {"a": "a step is longer than every session", "b": "the brief says never"}


def test_do_everything_names_what_stands_instead(tmp_path: Path) -> None:
    """With `must: all` one of each group is done: the others say which."""
    remedies = [fixes("a", 1, 5, pick_one="g"), fixes("b", 1, 9, pick_one="g")]
    _, why = rows(tmp_path, [100], remedies, must="all")
    assert why == {"b": "instead of it: A"}


def test_without_time_nothing_is_claimed(tmp_path: Path) -> None:
    """A plan that the clock stopped at once knows no reason, and says that."""
    points = [7 + number * 13 % 29 for number in range(40)]
    write_job(tmp_path, points, [fixes(f"r{n}", n, 3 + n * 11 % 17) for n in range(1, 41)], {"budget": 60})
    book = chosen_plan(tmp_path, 0.0)
    assert isinstance(book, PlanBook)
    assert not book.proven
    assert {row.why for row in book.left_out} == {"why not was not worked out in the time"}
