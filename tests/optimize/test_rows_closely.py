"""Rules of the chooser that whole jobs rarely feel: each by itself, at its boundary."""

from __future__ import annotations

from dataclasses import replace

from budgetfix.optimize.answering import solve
from budgetfix.optimize.cuts import _dominating
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.flow import fewest
from budgetfix.optimize.model import sure
from budgetfix.optimize.phase_count import can_be_bought, counted, spent_in
from budgetfix.optimize.place_rows import _crew_matters
from budgetfix.optimize.problem import Answer, Extra, Instalment, Option, Placed, Problem, Session, Step, Tool
from budgetfix.optimize.wishes import wishes
from tests.optimize.worlds import points_problem, still

HOURS = tuple(Session(1440 * day, 1440 * day + 60, (60,)) for day in range(3))
DRILL = Tool("drill", False, 900, 400)
ALONE = ("ann",)


def facts_of(*options: Option, **more: object) -> Facts:
    """A problem of one person with three sessions of an hour on three days, and a drill to buy or hire."""
    given: dict[str, object] = {"tools": (DRILL,), "people": ALONE, "sessions": HOURS, **more}
    return Facts.of(Problem(options, **given))  # type: ignore[arg-type]


def test_what_is_no_easier_to_place_stands_for_another_of_its_group() -> None:
    """The same steps and needs will do; what lacks a tool that is paid for does not, but tools at hand do not count."""
    steps = (Step(30, no_help=("ben",)),)
    rod = Option("rod", "window", steps, tools=("drill", "own hammer"))
    bare = Option("bare", "window", steps, tools=())
    same = Option("same", "window", steps, tools=("drill",))
    facts = facts_of(rod, bare, same)
    assert _dominating(facts, rod, frozenset({"rod"}), True) == ["same"]
    assert _dominating(facts, rod, frozenset({"rod"}), False) == ["bare", "same"]
    assert _dominating(facts, replace(rod, group=None), frozenset({"rod"}), True) == []
    easier = facts_of(rod, replace(same, steps=(Step(29, no_help=("ben",)),)))
    assert _dominating(easier, rod, frozenset({"rod"}), True) == []
    needy = replace(rod, needs=("same",))
    assert _dominating(facts_of(needy, bare, same), needy, frozenset({"rod"}), False) == []


def test_only_a_must_of_one_member_is_sure() -> None:
    """Of two that would do, neither is."""
    facts = facts_of(Option("a"), Option("b"), Option("c"), Option("d"), must=(("a", "b"), ("c",)))
    assert sure(facts, Extra()) == {"c"}
    assert sure(facts, Extra(chosen=("d",))) == {"c", "d"}


def test_a_bought_tool_is_not_hired_as_well() -> None:
    """Bought, it is on the bill once; hired, for each day on which it is used."""
    one = Option("a", steps=(Step(30), Step(30)), tools=("drill",))
    facts = facts_of(one, phases=(Instalment(None, 0), Instalment(None, 1)))
    placed = (Placed("a", 0, 0, ALONE), Placed("a", 1, 1, ALONE))
    bill = counted(facts, ["a"], placed, {"a": 0}, ["drill"])
    assert (bill.bought, bill.hired, bill.spent_minor) == (("drill",), (), 900)
    bill = counted(facts, ["a"], placed, {"a": 0}, [])
    assert (bill.bought, bill.hired, bill.spent_minor) == ((), (("drill", 2),), 800)


def test_what_has_no_phase_of_its_own_is_paid_in_the_first() -> None:
    """A tool for work without goods: its money is spent at the start, not at the end."""
    one = Option("a", steps=(Step(30),), tools=("drill",))
    facts = facts_of(one, phases=(Instalment(None, 0), Instalment(None, 1)))
    assert spent_in(facts, ["a"], (Placed("a", 0, 2, ALONE),), {}, ["drill"]) == (900, 0)


def test_a_later_purchase_needs_a_later_round() -> None:
    """Goods of the second phase come with the second round to the shops; the first round was too early for them."""
    one = Option("a", steps=(Step(10),), arrivals=(0, 1), rounds=(("first", "second"),))
    rounds = (Option("first", steps=(Step(10),)), Option("second", steps=(Step(10),)))
    facts = facts_of(one, *rounds, phases=(Instalment(None, 0), Instalment(None, 1)))
    where = {(id, 0): Placed(id, 0, session, ALONE) for id, session in (("first", 0), ("second", 1), ("a", 2))}
    early, both = frozenset({"a", "first"}), frozenset({"a", "first", "second"})
    assert can_be_bought(facts, early, where, "a", 0)
    assert not can_be_bought(facts, early, where, "a", 1)
    assert can_be_bought(facts, both, where, "a", 1)


def test_of_two_people_it_matters_who_does_what() -> None:
    """Two steps that may share a session: with two who could do them chains are not mixed, with one they may be."""
    steps = (Step(10), Step(10))
    two = tuple(replace(session, minutes=(60, 60)) for session in HOURS)
    assert _crew_matters(facts_of(people=("ann", "ben"), sessions=two), steps)
    assert not _crew_matters(facts_of(), steps)
    assert not _crew_matters(facts_of(people=("ann", "ben"), sessions=two), (Step(10), Step(10, wait_sessions=1)))


def test_hazards_come_before_what_voices_want() -> None:
    """Two people's own points follow the hazards, unless hazards are counted as points."""
    problem, two = Problem(()), Extra(voices=(0, 1))
    assert wishes(problem, two)[0] == "hazards"
    assert "hazards" not in wishes(replace(problem, hazards_first=False), two)
    assert wishes(replace(problem, hazards_first=False), Extra())[0] == "both"


def test_steps_of_no_time_have_a_session_too() -> None:
    """Nothing but steps of 0 minutes, all of which must be done: they stand in the first session."""
    assert fewest((0, 0), 10, 30.0) == [[0, 1]]
    assert fewest((5, 0), 10, 30.0) == [[0, 1]]
    assert fewest((), 10, 30.0) == []
    option = Option("a", steps=(Step(0),))
    more = {"sessions": (Session(0, 60, (60,)),), "people": ALONE, "must": (("a",),), "must_all": True}
    answer = solve(points_problem((option,), {"a": 5}, **more), clock=still)
    assert isinstance(answer, Answer)
    assert answer.plan.placed == (Placed("a", 0, 0, ALONE),)
