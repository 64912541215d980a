"""What an option is worth when it alone is dropped from a set, and the order of steps that comes of it."""

from __future__ import annotations

from collections.abc import Collection

import pytest

from budgetfix.optimize import order
from budgetfix.optimize.answering import solve
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.order import Worths, worth
from budgetfix.optimize.problem import Answer, Option, Placed, Problem, Session, Step
from budgetfix.optimize.program import Terms
from budgetfix.optimize.timetable import Timetable
from tests.optimize.worlds import Table, still, table_tree

OPTIONS = (Option("alarm"), Option("rug"), Option("lamp"))
LEFT: Table = {
    frozenset(): (10, 60),
    frozenset({"alarm"}): (0, 60),
    frozenset({"rug"}): (10, 25),
    frozenset({"lamp"}): (10, 40),
    frozenset({"alarm", "rug"}): (0, 25),
    frozenset({"alarm", "lamp"}): (0, 40),
    frozenset({"rug", "lamp"}): (14, 20),
    frozenset({"alarm", "rug", "lamp"}): (4, 20),
}
"""(hazard points, points) left: the lamp beside the rug brings a cable to trip over, 4 points of hazard."""


def found(*, hazards_first: bool) -> Worths:
    """What each of all three is worth."""
    tree = table_tree("t", OPTIONS, LEFT, ("alarm", "lamp", "rug"))
    problem = Problem(OPTIONS, (tree,), hazards_first=hazards_first)
    return worth(Facts.of(problem), Growth(problem), frozenset({"alarm", "rug", "lamp"}))


@pytest.mark.parametrize(
    ("hazards_first", "worths"),
    [
        (True, {"alarm": (10, 0), "lamp": (0, 5), "rug": (0, 20)}),
        (False, {"alarm": (0, 10), "lamp": (0, 1), "rug": (0, 16)}),
    ],
)
def test_what_would_come_back(hazards_first: bool, worths: Worths) -> None:
    """Without the rug 20 points come back and 4 of hazard go: 20 where hazards come first, 16 where all is one sum."""
    assert found(hazards_first=hazards_first) == worths


MORNINGS = tuple(Session(day * 1440, day * 1440 + 60, (60,)) for day in range(3))


def mornings(**left: tuple[int, int]) -> dict[str, int]:
    """In which of three mornings each hour of work stands, by what (hazard points, points) each takes away."""
    options = tuple(Option(id, steps=(Step(60),)) for id in sorted(left))
    tables: dict[str, Table] = {id: {frozenset(): back, frozenset({id}): (0, 0)} for id, back in left.items()}
    trees = tuple(table_tree(id, options, tables[id], (id,)) for id in sorted(left))
    answer = solve(Problem(options, trees, sessions=MORNINGS), clock=still)
    assert isinstance(answer, Answer)
    return {one.option: one.session for one in answer.plan.placed if one.session is not None}


def test_hazards_go_first_then_what_is_worth_most() -> None:
    """A morning each: the trip hazard on the first day, then 90 points, then 20; the names would say otherwise."""
    assert mornings(lamp=(0, 20), rug=(0, 90), wire=(5, 5)) == {"wire": 0, "rug": 1, "lamp": 2}
    assert mornings(lamp=(0, 20), rug=(0, 30), shelf=(0, 90)) == {"shelf": 0, "rug": 1, "lamp": 2}
    assert mornings(lamp=(1, 1), rug=(2, 2), shelf=(3, 3)) == {"shelf": 0, "rug": 1, "lamp": 2}


class Noting(Timetable):
    """A timetable that notes the largest weight of each wish."""

    def least(self, objective: Terms, now: Collection[str]) -> bool:
        """As it is, with a note."""
        self.heaviest = max(getattr(self, "heaviest", 0), *(abs(by) for by, _ in objective))
        return super().least(objective, now)


@pytest.mark.parametrize(("heaviest", "used"), [(9, 6), (26, 6), (27, 18), (2, 2)])
def test_no_wish_weighs_more_than_a_solver_takes(heaviest: int, used: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """Three mornings are digits of 0, 1 and 2: up to 9 hold two of them, up to 27 three; less than 9 take one alone."""
    monkeypatch.setattr(order, "HEAVIEST", heaviest)
    options = tuple(Option(f"m{number}", steps=(Step(10),)) for number in range(5))
    late = tuple(Placed(one.id, 0, 2, ("1",)) for one in options)
    timetable = Noting(Facts.of(Problem(options, sessions=MORNINGS)), 0, late, lambda: 60.0)
    assert order._in_order(timetable, 3, lambda session, _: session)
    assert timetable.heaviest == used
    assert [one.session for one in timetable.placed] == [0] * 5
