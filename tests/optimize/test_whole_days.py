"""What is begun on a day is finished on that day: windows, rules, counting again, and the reason where it cannot be."""

from __future__ import annotations

from budgetfix.optimize import impossible, solve
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.listing import listed
from budgetfix.optimize.problem import Answer, Option, Placed, Problem, Session, Step
from budgetfix.optimize.recount import broken
from budgetfix.optimize.windows import windows
from tests.optimize.worlds import points_problem, still


def two_days(*options: Option, minutes: int = 60) -> Problem:
    """Friday evening, Saturday morning, Saturday afternoon: one person."""
    hours = tuple(Session(start, start + 60, (minutes,)) for start in (1080, 1440 + 540, 1440 + 840))
    return points_problem(options, dict.fromkeys((one.id for one in options), 10), sessions=hours)


def test_fill_in_the_morning_sand_in_the_afternoon() -> None:
    """Filler dries two hours: Friday evening would leave it overnight, Saturday holds both."""
    fill = Option("fill", steps=(Step(20), Step(20, wait_minutes=120)), one_day=True)
    problem = two_days(fill)
    assert windows(Facts.of(problem)) == {("fill", 0): (1, 1), ("fill", 1): (2, 2)}
    answer = solve(problem, clock=still)
    assert isinstance(answer, Answer)
    assert [one.session for one in answer.plan.placed] == [1, 2]
    placed = listed(Facts.of(problem))
    assert placed is not None
    assert [one.session for one in placed] == [1, 2]


def test_a_night_between_the_coats_is_never_chosen() -> None:
    """A wait of ten hours can stand on no one day: it is left out and says why; so is what needs it."""
    paint = Option("paint", steps=(Step(20), Step(20, wait_minutes=600)), one_day=True)
    after = Option("hang", steps=(Step(10),), needs=("paint",))
    long = Option("long", steps=(Step(50), Step(50)), one_day=True)
    problem = two_days(paint, after, long)
    assert impossible(problem) == {"paint": "half-done", "hang": "half-done"}
    answer = solve(problem, clock=still)
    assert isinstance(answer, Answer)
    assert answer.plan.chosen == ("long",)
    assert [one.session for one in answer.plan.placed] == [1, 2]


def test_counted_again() -> None:
    """A placing that leaves something overnight is found out."""
    problem = two_days(Option("fill", steps=(Step(20), Step(20)), one_day=True))
    facts = Facts.of(problem)
    over = tuple(Placed("fill", step, step, ("1",)) for step in (0, 1))
    assert broken(facts, ("fill",), over) == ("fill is left half done overnight",)
    good = tuple(Placed("fill", step, step + 1, ("1",)) for step in (0, 1))
    assert broken(facts, ("fill",), good) == ()
