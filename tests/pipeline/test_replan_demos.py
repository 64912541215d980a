"""The three demo jobs after their plans: nothing ticked, everything done, one afternoon of it."""

from __future__ import annotations

import time
from functools import cache
from typing import Any
from unittest.mock import patch

from budgetfix.exports.plan_json import plan_object
from budgetfix.outcome.book import PlanBook
from budgetfix.pipeline.planning import Wish
from budgetfix.pipeline.replanning import Replanned, replanned
from budgetfix.pipeline.writing import plan_files
from tests.pipeline.ticked import TICKABLE, back, everything
from tests.scenarios import EACH, TODAY, job, run

BESIDE = ("rounds", "files", "plans")
"""How often the chooser looked, and what depends on the time that was left beside the plan."""


SAID: dict[str, list[object]] = {}
"""What was told meanwhile, by job."""


@cache
def again(name: str, how: str) -> Replanned:
    """A demo job replanned on the day of its order: with nothing ticked, everything done, or its first session done."""
    book = run(name).book
    told = {"nothing": back(book), "all": everything(book), "first": first_session(book)}[how]
    with patch("budgetfix.pipeline.around.BESIDE", 0.03), patch("budgetfix.pipeline.around.GOODS", 0.006):
        found = replanned(job(name), told, TODAY, Wish(200.0, time.monotonic, report=SAID.setdefault(name, []).append))
    assert isinstance(found, Replanned)
    return found


def first_session(book: PlanBook) -> Any:
    """All goods are bought, and the first session that has work in it is done."""
    assert book.remembered is not None
    first = min(task.session for task in book.tasks if task.session is not None)
    bought = {one.id: "bought" for one in book.remembered.lines if one.line.kind in TICKABLE}
    steps = tuple(one.id for one in book.remembered.steps if one.task.session == first)
    return back(book, bought, done=steps)  # type: ignore[arg-type]


def figures(book: PlanBook) -> dict[str, object]:
    """The plan as its JSON object, without what time decides."""
    return {key: value for key, value in plan_object(book, ()).items() if key not in BESIDE}


@EACH
def test_nothing_ticked_is_the_same_plan(name: str) -> None:
    """The same figures, sessions, purchases and faults."""
    assert figures(again(name, "nothing").book) == figures(run(name).book)


def test_a_house_is_told_room_by_room() -> None:
    """Fitting remedies to the rooms as they were takes a while in a house: the line names the room, as with a plan."""
    again("stager", "nothing")
    assert "Fitting remedies: room 2 of 2" in SAID["stager"]


@EACH
def test_everything_done_is_an_empty_plan(name: str) -> None:
    """Nothing chosen, nothing bought, nothing to gain, proven; the room is as the plan left it."""
    book, found = run(name).book, again(name, "all").book
    assert (found.chosen, found.money, found.improvement, found.proven) == ((), (), 0, True)
    assert (found.points_before, found.hazard_points_before) == (book.points_after, book.hazard_points_after)
    assert (found.points_after, found.hazards_after) == (book.points_after, book.hazards_after)


@EACH
def test_a_session_as_planned_changes_nothing_but_what_is_left(name: str) -> None:
    """What was done went as planned: what remains is the rest of the same plan, and it ends where the plan ended."""
    book, found = run(name).book, again(name, "first")
    done = found.left.done.ids
    assert done
    assert {row.id for row in found.book.chosen} == {row.id for row in book.chosen} - done
    assert (found.book.points_after, found.book.hazard_points_after) == (book.points_after, book.hazard_points_after)
    assert (found.since.off, found.since.on) == ((), ())
    spent = found.left.paid.spent_minor + found.book.spent_minor
    assert spent <= (book.budget_minor or spent) - book.held_back_minor


@EACH
def test_what_is_carried_on_is_written(name: str) -> None:
    """Every file of the rest of a plan is made, and the client's quote is not among them."""
    files = plan_files(again(name, "first").book)
    assert {"plan.xlsx", "plan.html", "plan.ics", "buy.csv", "do.csv"} <= set(files)
    assert "quote.html" not in files
