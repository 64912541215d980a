"""One chosen set in its sessions: by rule, by the solver, in order."""

from __future__ import annotations

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.finish import least_last
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.hire_counts import least_sessions
from budgetfix.optimize.listing import listed
from budgetfix.optimize.order import ordered, worth
from budgetfix.optimize.placing import Placer, Placing
from budgetfix.optimize.problem import Extra, Option, Problem, Session, Step, Tool
from budgetfix.optimize.recount import broken
from budgetfix.optimize.search import Search
from budgetfix.optimize.windows import windows
from budgetfix.optimize.wishes import held, wishes
from tests.optimize.worlds import points_problem, still


def two_evenings(*options: Option, people: int = 1, minutes: int = 90) -> Problem:
    """Two evenings in a row, everybody with the same minutes; each option takes away ten points."""
    hours = tuple(Session(day * 1440 + 1080, day * 1440 + 1200, (minutes,) * people) for day in (0, 1))
    gains = {one.id: 10 for one in options}
    return points_problem(options, gains, people=("ann", "ben")[:people], sessions=hours)


def test_a_wait_of_some_hours_takes_the_next_evening() -> None:
    """Two hours from the end of the first evening are over by the second, not within the first."""
    paint = Option("paint", steps=(Step(10), Step(10, wait_minutes=120)))
    facts = Facts.of(two_evenings(paint))
    assert windows(facts) == {("paint", 0): (0, 0), ("paint", 1): (1, 1)}
    assert least_sessions(facts, paint) == 2


def test_a_wait_of_two_days_does_not_fit() -> None:
    """Nothing stands where its wait ends after the last evening."""
    facts = Facts.of(two_evenings(Option("paint", steps=(Step(10), Step(10, wait_minutes=2880)))))
    assert windows(facts)["paint", 1][0] == facts.horizon
    assert listed(facts) is None


def test_alone_then_together_takes_two_sessions() -> None:
    """Who comes along for a joint step may not have been busy elsewhere: solo before joint goes to another session."""
    facts = Facts.of(two_evenings(Option("shelf", steps=(Step(10), Step(10, 2))), people=2))
    placed = listed(facts)
    assert placed is not None
    assert [one.session for one in placed] == [0, 1]
    assert broken(facts, ("shelf",), placed) == ()


def test_rules_and_solver_place_alike() -> None:
    """What the rules place keeps every promise, and what they miss the solver finds or refutes."""
    options = tuple(Option(name, steps=(Step(long),)) for name, long in zip("abcde", (50, 40, 45, 25, 20), strict=True))
    facts = Facts.of(two_evenings(*options))
    placer = Placer(facts, lambda: 30.0)
    found = placer.place(frozenset("abcde"), 2, None)
    assert isinstance(found, Placing)
    assert broken(facts, "abcde", found.placed) == ()
    assert placer.place(frozenset("abcde"), 1, None) == "no"


def test_a_tool_is_hired_for_one_evening_where_money_asks_for_it() -> None:
    """Two jobs with one saw: in one session where only one can be paid."""
    options = tuple(Option(name, steps=(Step(40),), tools=("saw",)) for name in "ab")
    problem = Problem(options, tools=(Tool("saw", hire_minor=300),), sessions=two_evenings().sessions)
    placer = Placer(Facts.of(problem), lambda: 30.0)
    found = placer.place(frozenset("ab"), 2, 300)
    assert isinstance(found, Placing)
    assert found.bill.hired == (("saw", 1),)
    assert placer.place(frozenset("ab"), 2, 299) == "no"


def test_worth_is_what_would_come_back() -> None:
    """Each option is worth its own ten points; a dropped one brings back no less than nothing."""
    problem = two_evenings(Option("a", steps=(Step(60),)), Option("b", steps=(Step(60),)))
    growth = Growth(problem)
    assert worth(Facts.of(problem), growth, frozenset("ab")) == {"a": (0, 10), "b": (0, 10)}


def test_order_goes_by_id_where_worth_is_equal() -> None:
    """Two options worth the same: the smaller id stands first, whatever the first placing was."""
    problem = two_evenings(Option("a", steps=(Step(60),)), Option("b", steps=(Step(60),)))
    facts = Facts.of(problem)
    found = Placer(facts, lambda: 30.0).place(frozenset("ab"), 2, None)
    assert isinstance(found, Placing)
    one = held(facts, frozenset("ab"), found, (0, 0))
    placing, done = ordered(facts, Growth(problem), one, lambda: 30.0, "highs")
    assert done
    assert [(step.option, step.session) for step in placing.placed] == [("a", 0), ("b", 1)]


def test_the_order_of_wishes() -> None:
    """Hazards, points, spend, minutes, last session; other orders as the job or the extra asks."""
    from dataclasses import replace

    plain = two_evenings()
    assert wishes(plain, Extra()) == ("hazards", "points", "spend", "minutes", "last")
    assert wishes(replace(plain, must_all=True), Extra()) == ("last", "spend", "hazards", "points", "minutes")
    assert wishes(replace(plain, hazards_first=False), Extra()) == ("both", "spend", "minutes", "last")
    assert wishes(replace(plain, sessions=None), Extra(spend_first=True)) == ("spend", "hazards", "points", "minutes")


def test_so_many_minutes_need_so_many_sessions() -> None:
    """91 minutes of work do not end in the first of two evenings of 90."""
    problem = two_evenings()
    search = Search(Facts.of(problem), Growth(problem), Extra(), still, None, 60.0)
    assert [least_last(search, minutes) for minutes in (0, 90, 91)] == [-1, 0, 1]
