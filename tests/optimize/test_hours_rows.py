"""Rows about hours that need no placing: none where there are no hours, and none that every choice keeps."""

from __future__ import annotations

from dataclasses import replace

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.hours_rows import enough_minutes, enough_places, joint_minutes, somewhere
from budgetfix.optimize.problem import Option, Problem, Session, Step
from budgetfix.optimize.solver import Row
from budgetfix.optimize.windows import windows

PAIR = Problem(
    (Option("a", steps=(Step(40, 2),)), Option("b", steps=(Step(30, 2),)), Option("c", steps=(Step(50),))),
    people=("ann", "ben"),
    sessions=(Session(540, 600, (60, 60)),),
)


def rows(problem: Problem) -> list[Row]:
    """Every row about hours of a problem."""
    facts = Facts.of(problem)
    found = windows(facts)
    makers = (somewhere, enough_minutes, joint_minutes, enough_places)
    return [row for make in makers for row in make(facts, found)]


def test_without_hours_nothing_is_forbidden() -> None:
    """No list of hours, or none in it: minutes do not bind. Hours of which none may be used hold no work at all."""
    assert rows(replace(PAIR, sessions=None)) == rows(replace(PAIR, sessions=())) == []
    assert [(row.terms, row.sense, row.right) for row in rows(replace(PAIR, last_session=-1))] == [
        (((1, f"x[{id}]"),), "=", 0) for id in "abc"
    ]


def test_joint_work_in_an_hour_for_two() -> None:
    """40 and 30 minutes for both do not fit into one hour of both; with everything, 190 person-minutes not into 120."""
    (joint,) = joint_minutes(Facts.of(PAIR), windows(Facts.of(PAIR)))
    assert (joint.terms, joint.sense, joint.right) == (((40, "x[a]"), (30, "x[b]")), "<=", 60)
    everybody = next(row for row in rows(PAIR) if row.name == "minutes_0_0_0_1")
    assert (everybody.terms, everybody.right) == (((80, "x[a]"), (60, "x[b]"), (50, "x[c]")), 120)


def test_what_all_choices_keep_is_no_row() -> None:
    """Exactly as many minutes as there are bind nobody, nor do two options of which one at most is chosen."""
    fits = replace(PAIR, options=(Option("a", steps=(Step(30, 2),)), Option("b", steps=(Step(30, 2),))))
    assert list(joint_minutes(Facts.of(fits), windows(Facts.of(fits)))) == []
    either = replace(PAIR, options=tuple(replace(one, group="g") for one in PAIR.options[:2]))
    assert list(joint_minutes(Facts.of(either), windows(Facts.of(either)))) == []
