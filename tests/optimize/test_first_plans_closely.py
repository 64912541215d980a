"""First plans and timetables by rule, and the growth of trees: their rules at the boundary, each by itself."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.greedy import Greedy
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.listing import _Day, _filled, listed
from budgetfix.optimize.problem import Extra, Option, Problem, Session, Step
from budgetfix.optimize.search import Search
from budgetfix.optimize.start import _add, begin
from tests.optimize.worlds import points_problem, still, table_tree

PAIR = (Option("a", cost_minor=100), Option("b", cost_minor=100))
GAINS = {"a": 50, "b": 40}


def search_of(problem: Problem, until: float = 60.0) -> Search:
    """A search of which nothing is known yet."""
    return Search(Facts.of(problem), Growth(problem, asks=0), Extra(), still, None, until)


def greedy_of(problem: Problem, until: Callable[[], bool] = lambda: False) -> Greedy:
    """The rule at work on a problem, until it is told to end."""
    search = search_of(problem)
    return Greedy(search, until)


def test_the_greedy_rule_takes_nothing_more_once_it_is_told_to_end() -> None:
    """Ended between weighing the options and taking them, it leaves the set as it was given."""
    left = [2]

    def ended() -> bool:
        left[0] -= 1
        return left[0] < 0

    problem = points_problem(PAIR, GAINS)
    assert greedy_of(problem).add(frozenset()) == {"a", "b"}
    assert greedy_of(problem, ended).add(frozenset()) == frozenset()


def test_what_does_nothing_goes_again() -> None:
    """An option that no tree asks about is dropped from the set, one that takes points away stays."""
    rule = greedy_of(points_problem((*PAIR, Option("idle")), GAINS))
    now = rule.add(frozenset())
    assert rule._without_idle(rule._taken(now, now | {"idle"})) == now == {"a", "b"}


def test_the_greedy_rule_weighs_hazards_and_points_each_by_itself() -> None:
    """What goes of each; where hazards count as points, both together."""
    option = (Option("a"),)
    tree = table_tree("t", option, {frozenset(): (9, 20), frozenset({"a"}): (2, 5)}, ("a",))
    for first, less in ((True, (7, 15)), (False, (0, 22))):
        rule = greedy_of(Problem(option, (tree,), hazards_first=first))
        rule._known = [rule._answer(0, frozenset())]
        rule._concern = [frozenset({"a"})]
        assert rule._less(frozenset(), frozenset({"a"})) == less


def test_trees_that_are_whole_are_told_so_again() -> None:
    """Grown once, they are whole for every later solve as well."""
    problem = points_problem(PAIR, GAINS)
    growth = Growth(problem)
    assert growth.grow_up_front(frozenset(GAINS))
    assert growth.grow_up_front(frozenset(GAINS))
    assert not Growth(problem, asks=0).grow_up_front(frozenset(GAINS))


def test_joint_work_of_three_people_fits_a_session_to_the_minute() -> None:
    """Two steps for two of three people: an hour of each in an hour, and never more than the session has."""
    for minutes, sessions in (((60, 60), [0, 1]), ((30, 30), [0, 0]), ((40, 30), [0, 1])):
        options = tuple(Option(id, steps=(Step(long, 2),)) for id, long in zip("ab", minutes, strict=True))
        hours = tuple(Session(1440 * day, 1440 * day + 60, (60, 60, 60)) for day in range(2))
        placed = listed(Facts.of(Problem(options, people=("ann", "ben", "cem"), sessions=hours)))
        assert placed is not None
        assert [one.session for one in placed] == sessions


def test_what_is_done_within_a_day_stays_on_the_day_on_which_it_began() -> None:
    """Its second step stands on the day of the first, whatever its window says."""
    option = Option("rod", steps=(Step(30), Step(30)), one_day=True)
    hours = tuple(Session(720 * half, 720 * half + 60, (60,)) for half in range(4))
    facts = Facts.of(Problem((option,), people=("ann",), sessions=hours))
    day = _Day(facts, lambda _: (), {("rod", 0): (0, 3), ("rod", 1): (0, 3)})
    day._put(("rod", 0), 0, (0,))
    assert [day._on_its_day(("rod", 1), session) for session in range(4)] == [True, True, False, False]


def test_sessions_are_filled_only_where_nothing_ties_a_step_to_some_of_them() -> None:
    """Free steps are packed; goods that come later, or one loud step beside a quiet session, are not for packing."""
    options = (Option("a", steps=(Step(40),)), Option("b", steps=(Step(20),)))
    hours = (Session(0, 60, (60,)), Session(1440, 1500, (60,), quiet=True))
    problem = Problem(options, people=("ann",), sessions=hours)
    placed = _filled(Facts.of(problem))
    assert placed is not None
    assert [one.session for one in placed] == [0, 0]
    late = (options[0], replace(options[1], first_session=1))
    loud = (options[0], replace(options[1], steps=(Step(20, loud=True),)))
    assert _filled(Facts.of(replace(problem, options=late))) is None
    assert _filled(Facts.of(replace(problem, options=loud))) is None


def held_by(search: Search) -> str | None:
    """The ids of the set in hand, put together."""
    return None if search.best is None else "".join(sorted(search.best.chosen))


def test_a_large_house_gets_a_greedy_plan_and_a_small_one_does_not() -> None:
    """Trees that cost an inspection are not asked one option at a time; the greedy rule asks along its own set."""
    problem = points_problem(PAIR, GAINS)
    for large, chosen in ((True, "ab"), (False, "")):
        search = search_of(problem)
        begin(search, large=large)
        assert held_by(search) == chosen


def test_a_large_house_whose_must_finds_no_money_begins_with_no_plan() -> None:
    """There is nothing to add to: no plan is in hand, and that is no error."""
    search = search_of(points_problem(PAIR, GAINS, must=(("a",),), budget_minor=99))
    begin(search, large=True)
    assert held_by(search) is None


def test_no_option_is_tried_when_no_second_is_left() -> None:
    """At the very end of the seconds the plan stays as it is; a second earlier all that helps goes in."""
    plain = points_problem(PAIR, GAINS)
    problem = replace(plain, trees=tuple(replace(tree, cheap=True) for tree in plain.trees))
    for until, chosen in ((0.0, ""), (1.0, "ab")):
        search = search_of(problem, until)
        search.try_set(frozenset())
        _add(search)
        assert held_by(search) == chosen
