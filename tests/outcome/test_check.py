"""Claim and check agree, or the run fails; worth, tasks, left out, and the book."""

from __future__ import annotations

import time
from dataclasses import replace
from itertools import combinations, product

import pytest

from budgetfix.framing.frame import frame
from budgetfix.optimize import Growth, impossible, solve
from budgetfix.optimize.problem import Answer
from budgetfix.optimize.why_not import why_not
from budgetfix.outcome.book import LeftOutRow, NextStep, PlanBook
from budgetfix.outcome.check import ClaimFails, checked, uses_of
from budgetfix.outcome.left_out import Chosen, left_out
from budgetfix.outcome.make import Around, before, make_book
from budgetfix.outcome.tasks import alone_minor, session_rows, tasks
from budgetfix.outcome.worth import Worth
from budgetfix.remedies.fit import candidates
from tests.framing.small_jobs import listed_ground

BASE = listed_ground()
FRAMED = frame(BASE, candidates(None, BASE.catalog, BASE.brief, ()), ())


def answered() -> Answer:
    """The best plan of the small job."""
    answer = solve(FRAMED.problem, seconds=30, clock=time.monotonic, growth=Growth(FRAMED.problem))
    assert isinstance(answer, Answer)
    return answer


ANSWER = answered()
FOUND = checked(BASE, FRAMED, ANSWER.plan)


def test_the_small_job_by_hand() -> None:
    """Paint (27.00 with delivery) and sort or shelf: with 60.00 the shelf's 20.00 and its saw's 15.00 are too much."""
    assert set(ANSWER.plan.chosen) == {"paint", "sort", "errand:mill"}
    assert (ANSWER.plan.spent_minor, ANSWER.plan.points) == (2700, 100)
    assert FOUND.used == (105, 0)
    assert FOUND.listed_after == {"mess": 100, "wall": 0}


@pytest.mark.parametrize("field", ["points", "hazards", "spent_minor"])
def test_a_claim_that_the_check_does_not_find_fails_the_run(field: str) -> None:
    """One point, one hazard point or one cent off is our bug, and is not let through."""
    lie = replace(ANSWER.plan, **{field: getattr(ANSWER.plan, field) + 1})
    with pytest.raises(ClaimFails, match="promised"):
        checked(BASE, FRAMED, lie)


def test_a_step_without_its_minutes_fails_the_run() -> None:
    """All steps moved into a session that is too short."""
    crowded = replace(ANSWER.plan, placed=tuple(replace(one, session=1) for one in ANSWER.plan.placed))
    with pytest.raises(ClaimFails, match="minutes"):
        checked(BASE, FRAMED, crowded)


def test_worth_is_what_would_come_back() -> None:
    """Without the paint its 300 points are back; sorting answers half of 200."""
    worth = Worth(BASE, FRAMED)
    assert worth.left(ANSWER.plan.chosen) == (0, 100)
    assert worth.of("paint", ANSWER.plan.chosen) == 300
    assert worth.of("sort", ANSWER.plan.chosen) == 100
    assert worth.worsens(ANSWER.plan.chosen) == ()
    everything = [frozenset(some) for size in range(4) for some in combinations(sorted(FRAMED.candidates), size)]
    for one, other in product(everything, repeat=2):
        assert worth.gain(one, other) == sum(worth.left(one)) - sum(worth.left(other))


def test_tasks_stand_in_working_order_with_their_errand_first() -> None:
    """To the mill comes before the paint; money stands on the first step, worth on the last."""
    rows = tasks(BASE.brief, BASE.catalog, FRAMED, ANSWER.plan, {"paint": 300, "sort": 100})
    names = [row.candidate for row in rows]
    assert names.index("errand:mill") < names.index("paint")
    paint = rows[names.index("paint")]
    assert (paint.cost_minor, paint.worth, paint.who) == (2200, 300, ("ann",))
    shelf = FRAMED.candidates["shelf"]
    assert alone_minor(shelf, BASE.catalog, BASE.brief) == 2000
    paid = BASE.brief.model_copy(update={"labour_minor_hour": 6000})
    minutes = sum(work.minutes * work.people for work in shelf.work)
    assert alone_minor(shelf, BASE.catalog, paid) == 2000 + 100 * minutes > 2000
    sessions = session_rows(BASE.brief, FRAMED, ANSWER.plan, FOUND.used)
    assert sessions is not None
    assert [(row.minutes_available, row.minutes_used) for row in sessions] == [(120, 105), (90, 0)]


def test_what_is_left_out_says_why() -> None:
    """The wash gives way to the paint; what the clock left no time for claims nothing."""
    ids = [one.id for one in FRAMED.problem.options]
    why = why_not(FRAMED.problem, ANSWER.plan, ids, seconds=30, clock=time.monotonic)
    chosen = Chosen(BASE.brief, BASE.catalog, FRAMED, ANSWER.plan, Worth(BASE, FRAMED))
    by_id: dict[str, LeftOutRow] = {row.id: row for row in left_out(chosen, why, impossible(FRAMED.problem), ())}
    assert by_id["wash"].why.startswith("would cost")
    assert "paint" in by_id["wash"].why
    assert by_id["shelf"].would_add == 80
    nothing = {row.why for row in left_out(chosen, {}, {}, ())}
    assert nothing == {"why not was not worked out in the time"}
    assert uses_of(FOUND.chosen) == {"tin": FRAMED.candidates["paint"].uses[0][1]}


def test_the_book_adds_up() -> None:
    """Lines of money sum to what is spent; points before less points after is the improvement."""
    around = Around("Small job", "", 30.0, None, None, (), NextStep(), (), ())
    book: PlanBook = make_book(BASE, FRAMED, ANSWER, FOUND, around)
    assert sum(line.line_minor for line in book.money) == book.spent_minor == 2700
    assert before(BASE) == (0, 0, 500)
    assert book.improvement == 400
    assert [row.answers for row in book.chosen] == [("wall",), ("mess",)]


def test_a_remedy_that_takes_no_time_is_still_on_the_list() -> None:
    """It stands last, in no session, as step 0 of 0, with its worth and its cost."""
    plan = replace(ANSWER.plan, placed=tuple(one for one in ANSWER.plan.placed if one.option != "sort"))
    rows = tasks(BASE.brief, BASE.catalog, FRAMED, plan, {"sort": 100})
    assert (rows[-1].candidate, rows[-1].session, rows[-1].step, rows[-1].steps) == ("sort", None, 0, 0)
    assert (rows[-1].minutes, rows[-1].worth) == (0, 100)
