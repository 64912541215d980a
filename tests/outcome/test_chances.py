"""Chances of whole plans: by hand where a triangle tells them, and against a direct count by a second coding."""

from __future__ import annotations

import math
import os
import subprocess
import sys
from pathlib import Path
from unittest.mock import patch

import pytest

from budgetfix.framing.frame import Framed
from budgetfix.outcome.book import PlanBook, Task
from budgetfix.outcome.chances import spread
from budgetfix.outcome.draws import SEED_MINUTES, drawn
from budgetfix.outcome.odds import DRAWS, NEARLY, Chances, InTime, Spread
from budgetfix.outcome.playing import played
from budgetfix.pipeline.candidates import offered
from tests import scenarios
from tests.laws.source import REPO
from tests.outcome.replayed import Counted, Household, Piece, counted, one_draw
from tests.outcome.small_worlds import World
from tests.pipeline.listed_job import proven_plan, write_job

UNSURE = {"low": 0.5, "likely": 0.75, "high": 1.25}
"""30, 45 and 75 minutes, planned at 50."""
TELLING = """
import sys
from pathlib import Path
from tests.pipeline.listed_job import proven_plan
print(proven_plan(Path(sys.argv[1])).chances)
"""


def near(times: int, other: int, draws: int = DRAWS) -> bool:
    """Whether two counts may be of one chance: within four standard errors of their difference."""
    share = (times + other) / (2 * draws)
    return abs(times - other) <= 4 * math.sqrt(2 * draws * share * (1 - share)) + 4


def told(folder: Path, remedies: list[dict[str, object]], **brief: object) -> Chances:
    """The chances of a plan for listed faults of 100, 200, ... points."""
    write_job(folder, [100 * (at + 1) for at in range(len(remedies))], remedies, brief)
    found = proven_plan(folder).chances
    assert found is not None
    return found


def remedy(number: int, hours: object, **more: object) -> dict[str, object]:
    """A remedy that answers the fault of its number whole."""
    return {"remedy": f"m{number}", "name": f"Remedy {number}", "answers": {f"f{number}": 1}, "hours": hours, **more}


def test_one_step_in_one_session(tmp_path: Path) -> None:
    """30, 45 or 75 minutes in 60: by the triangle it fits with 1 - (75-60)^2 / (45 x 30) = 5/6."""
    found = told(tmp_path, [remedy(1, UNSURE)], hours=[1])
    exact = 1 - 15**2 / (45 * 30)
    assert found.fits is not None
    assert found.fits == pytest.approx(exact * DRAWS, abs=4 * math.sqrt(DRAWS * exact * (1 - exact)))
    assert [(one.id, one.times, one.worth) for one in found.falls] == [("m1", DRAWS - found.fits, 100)]
    assert found.sessions == (InTime(1, found.fits, "Remedy 1", 100, 50),)
    assert found.reached == math.floor(100 * found.fits / DRAWS)
    assert found.reached_worst == 0


def fetched_rug(folder: Path, **money: object) -> Chances:
    """A step of 30, 60 or 180 minutes before the round of shops that fetches the rug for the last session."""
    write_job(
        folder,
        [100, 90],
        [remedy(1, {"low": 0.5, "likely": 1, "high": 3}), remedy(2, 1, uses={"rug": 1})],
        {
            **money,
            "hours": [{"date": f"2026-06-{day}", "hours": there} for day, there in (("06", 1.6), (13, 2), (20, 1))],
            "errands": [{"errand": "shops", "name": "To the mill", "shops": ["mill"], "hours": 1.1}],
        },
        {"products": [{"product": "rug", "name": "Rug", "shop": "mill", "price": 50}], "shops": [{"shop": "mill"}]},
    )
    found = proven_plan(folder).chances
    assert found is not None
    return found


def test_what_nobody_fetched_cannot_be_laid(tmp_path: Path) -> None:
    """Money that comes in two parts, all of it before anything is done, leaves the chances as they are.

    By hand: it fits where the first step takes 96 minutes at most, else it stands in the second session in place of
    the round, or nowhere: 1 - (180-96)^2 / (150 x 120) = 0.608.
    """
    (tmp_path / "whole").mkdir()
    (tmp_path / "parts").mkdir()
    whole = fetched_rug(tmp_path / "whole", budget=51)
    parts = [{"date": "2026-06-01", "amount": 50}, {"date": "2026-06-02", "amount": 1}]
    assert fetched_rug(tmp_path / "parts", money=parts) == whole
    exact = 1 - 84**2 / (150 * 120)
    assert whole.fits == pytest.approx(exact * DRAWS, abs=4 * math.sqrt(DRAWS * exact * (1 - exact)))


def test_hours_count_as_typed(tmp_path: Path) -> None:
    """Of 90 minutes two thirds may be planned; the rest is there when it takes longer, so it always fits."""
    found = told(tmp_path, [remedy(1, UNSURE)], hours=[1.5], load=0.67)
    assert (found.fits, found.falls, found.reached, found.reached_worst) == (DRAWS, (), 100, 100)
    assert found.sessions == (InTime(1, DRAWS),)


def test_what_to_leave_first(tmp_path: Path) -> None:
    """The least points a minute: m1 with 100 for 50; but not what another needs, and not a must."""
    two = [remedy(1, UNSURE), remedy(2, UNSURE)]
    assert told(tmp_path, two, hours=[1.75]).sessions[0].leave == "Remedy 1"
    needed = [remedy(1, UNSURE), remedy(2, UNSURE, needs=["m1"])]
    assert told(tmp_path, needed, hours=[1.75]).sessions[0].leave == "Remedy 2"
    assert told(tmp_path, two, hours=[1.75], must=["m1"]).sessions[0].leave == "Remedy 2"
    assert told(tmp_path, [two[0]], hours=[1], must=["m1"]).sessions[0].leave == ""


def test_what_a_fallen_remedy_takes_with_it(tmp_path: Path) -> None:
    """Where m1 falls off, so does m2, which needs it; its own worth is counted with it in what is reached."""
    found = told(tmp_path, [remedy(1, UNSURE), remedy(2, 0, needs=["m1"])], hours=[1])
    assert {one.id: one.times for one in found.falls} == dict.fromkeys(("m1", "m2"), DRAWS - (found.fits or 0))
    assert found.reached == math.floor(100 * (found.fits or 0) / DRAWS)


def test_sure_steps_tell_no_chance(tmp_path: Path) -> None:
    """Where every step has one figure there is nothing to tell, and how many there are is said."""
    found = told(tmp_path, [remedy(1, 1), remedy(2, 0.5)], hours=[2])
    assert found == Chances(steps=2, sure=2)
    assert not found.said


def test_without_hours_there_is_no_chance_of_fitting(tmp_path: Path) -> None:
    """No sessions: only what all work takes. 30, 45, 75 by the three-point rule: 47.5, and 7.5 to either side."""
    found = told(tmp_path, [remedy(1, UNSURE), remedy(2, 1)])
    assert found == Chances(steps=2, sure=1, work=Spread(110, 100, 115))


def test_all_work_together_in_person_minutes() -> None:
    """Two people at 30, 45, 75 and a helper for 10 of 50: 47.5 x (2 + 1.2), 7.5 x 3.2 shared by half or by square."""
    one = Task("a", "a", 1, 1, 1, "", 50, 30, 45, 75, 2)
    helped = Task("b", "b", 1, 1, 1, "", 50, 30, 45, 75, 1, help_minutes=10)
    sd = math.sqrt(0.5 * (15**2 + 9**2) + 0.5 * 24**2)
    assert spread((one, helped)) == Spread(160, round(152 - sd), round(152 + sd))


def test_no_time_at_all(tmp_path: Path) -> None:
    """An empty list of hours holds no step, so there is nothing to tell of any."""
    assert told(tmp_path, [remedy(1, UNSURE)], hours=[]) == Chances(steps=0, sure=0)


def pieces_of(book: PlanBook) -> tuple[Piece, ...]:
    """The steps of a book's task list, as the second coding takes them."""
    return tuple(
        Piece(
            task.candidate, task.step - 1, (task.session or 0) - 1, task.who,
            (task.low, task.likely, task.high), task.minutes, task.help_minutes,
        )
        for task in book.tasks
        if task.step
    )  # fmt: skip


def home_of(framed: Framed, book: PlanBook) -> Household:
    """The chosen options and the sessions of a demo, which plans its whole hours."""
    problem = framed.problem
    mine = {task.candidate for task in book.tasks}
    options = {one.id: one for one in problem.options if one.id in mine}
    return Household(problem.people, problem.sessions or (), options, problem.setup_minutes, problem.last_session)


@pytest.mark.parametrize(
    "name", [pytest.param(name, marks=pytest.mark.xdist_group(name)) for name in ("renter", "couple")]
)
def test_a_demo_against_a_direct_count(name: str) -> None:
    """20,000 draws of the second coding: all fits, each that falls off, each session in time, within four errors."""
    run = scenarios.run(name)
    book, chances = run.book, run.book.chances
    assert chances is not None
    assert run.job.brief.load == 1
    framed = offered(run.before.base).framed
    home, pieces = home_of(framed, book), pieces_of(book)
    direct = counted(home, pieces, DRAWS, seed=7)
    assert near(chances.fits or 0, direct.fits)
    falls = {one.id: one.times for one in chances.falls}
    remedies = sorted({*falls, *(id for id in direct.gone if not id.startswith("errand:"))})
    assert remedies
    assert [id for id in remedies if not near(falls.get(id, 0), direct.gone[id])] == []
    assert [one for one in chances.sessions if not near(one.times, DRAWS - direct.over[one.session - 1])] == []
    planned = one_draw(home, pieces, {piece.key: float(piece.minutes) for piece in pieces})
    assert planned.where == {piece.key: piece.session for piece in pieces}
    _worth_is_the_lists(book, chances)


def _worth_is_the_lists(book: PlanBook, chances: Chances) -> None:
    """What a fallen remedy costs is what the task list says that it is worth; and what is reached lies in between."""
    worth = {task.candidate: task.worth for task in book.tasks if task.worth}
    assert [one.worth for one in chances.falls] == [worth[one.id] for one in chances.falls]
    assert 0 <= (chances.reached_worst or 0) <= (chances.reached or 0) <= 100
    leave = [one for one in chances.sessions if one.leave]
    assert all(one.times <= NEARLY for one in leave)


@pytest.mark.xdist_group("stager")
def test_a_demo_of_single_figures() -> None:
    """The stagers give one figure for each step: no chance can be told."""
    book = scenarios.run("stager").book
    assert book.chances is not None
    assert book.chances.fits is None
    assert book.chances.sure == book.chances.steps == len([task for task in book.tasks if task.step])


@pytest.mark.parametrize("seed", [3, 14, 15, 92, 65, 35, 89])
def test_small_plans_against_a_direct_count(seed: int) -> None:
    """Random plans with waits, needs, two people and helpers: every count within four standard errors."""
    world = World(seed)
    found = played(world.facts, world.turns, drawn([piece.figures for piece in world.pieces], SEED_MINUTES))
    direct: Counted = counted(world.home, world.pieces, DRAWS, seed)
    assert near(int((found.stands != found.never).all(axis=0).sum()), direct.all_placed)
    for id in sorted({piece.option for piece in world.pieces}):
        rows = [at for at, piece in enumerate(world.pieces) if piece.option == id]
        times = int((found.stands[rows] == found.never).any(axis=0).sum())
        assert near(times, direct.unplaced[id]), id
    late = [int(row.sum()) for row in found.over]
    assert all(near(one, direct.over[at]) for at, one in enumerate(late))


def test_the_same_bytes_under_every_hash_seed(tmp_path: Path) -> None:
    """What is told of a plan does not depend on the order of Python's sets."""
    three = [remedy(at, UNSURE) for at in (1, 2, 3)]
    write_job(tmp_path, [100, 200, 300], three, {"hours": [1.5, 1]})
    said = {_said(tmp_path, seed) for seed in ("0", "1", "2")}
    assert len(said) == 1
    assert b"falls=(FallsOff(" in said.pop()


def _said(folder: Path, seed: str) -> bytes:
    surroundings = os.environ | {"PYTHONHASHSEED": seed, "PYTHONPATH": str(REPO)}
    words = [sys.executable, "-c", TELLING, str(folder)]
    done = subprocess.run(words, cwd=REPO, env=surroundings, capture_output=True, timeout=300)
    assert done.returncode == 0, done.stderr.decode()
    return done.stdout


def test_rare_sets_are_added_up(tmp_path: Path) -> None:
    """Where remedies answer faults of their own, single worths add up to the worth of a set: nothing changes."""
    three = [remedy(at, UNSURE) for at in (1, 2, 3)]
    whole = told(tmp_path, three, hours=[1.5, 1])
    with patch("budgetfix.outcome.chances.EXACT_SETS", 0):
        assert told(tmp_path, three, hours=[1.5, 1]) == whole
    assert whole.reached is not None
    assert 0 < whole.reached < 100
