"""The search, the sharing of pieces and the placing of a set: single rules, each at its boundary."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

import pytest

from budgetfix.optimize import search as searching
from budgetfix.optimize import sharing, solver
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.linear import SAFE, Relaxed
from budgetfix.optimize.packing import Work as Steps
from budgetfix.optimize.packing import _Filling
from budgetfix.optimize.placing import Placer, Placing, _tools, _within
from budgetfix.optimize.problem import Extra, Limit, Option, Placed, Problem, Product, Session, Shop, Step, Tool
from budgetfix.optimize.program import Program, Solved, Terms, Variable
from budgetfix.optimize.recount import bill, delivery_and_tax
from budgetfix.optimize.relax import _Wishes
from budgetfix.optimize.search import Search
from budgetfix.optimize.sharing import Answered, Memory, Shared, _Search, share
from budgetfix.optimize.stock import Conflict, Packs, Stock
from budgetfix.optimize.wishes import held
from tests.optimize.many_houses import Jobs, Offer, best
from tests.optimize.worlds import points_problem, still

HOURS = tuple(Session(1440 * day, 1440 * day + 60, (60,)) for day in range(3))
ALONE = ("me",)


def hunting(problem: Problem) -> Search:
    """A search on which no time passes."""
    return Search(Facts.of(problem), Growth(problem), Extra(), still, None, 60.0)


def one_job(**more: Any) -> Problem:
    """One option of half an hour that takes away five points."""
    return points_problem((Option("a", steps=(Step(30),), **more),), {"a": 5}, sessions=HOURS, people=ALONE)


def stopped_at(bound: float) -> Any:
    """A solver that finds the best of a program and is stopped before it proves more than a bound."""

    def told(program: Program, objective: Terms, *more: Any, **named: Any) -> Solved:
        found = solver.run(program, objective, *more, **named)
        return Solved("stopped", found.values, found.objective, bound)

    return told


def test_a_stopped_solver_may_have_proven_enough(monkeypatch: pytest.MonkeyPatch) -> None:
    """What it found comes down to the bound it leaves: proven. Above the bound it stays open."""
    problem = points_problem((Option("a"),), {"a": 5}, must=(("a",),))
    monkeypatch.setattr(Search, "_look_ahead", lambda *_: None)
    monkeypatch.setattr(searching, "run", stopped_at(0.0))
    assert hunting(problem).reach("points") == "proven"
    dear = points_problem((Option("a", cost_minor=5),), {"a": 5}, must=(("a",),))
    monkeypatch.setattr(searching, "run", stopped_at(2.0))
    open_one = hunting(dear)
    assert open_one.reach("spend") == "stopped"
    assert (open_one.best is not None, open_one.floors) == (True, {"spend": 2})


def test_a_bound_of_another_objective_proves_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where another objective was asked for, the bound that a stopped solver leaves is not one of the wish."""
    monkeypatch.setattr(searching, "run", stopped_at(0.0))
    one = hunting(points_problem((Option("a"),), {"a": 5}, must=(("a",),)))
    assert one.reach("points", lambda _: ()) == "stopped"
    assert (one.best is not None, one.floors) == (True, {})


def test_what_could_not_be_placed_for_want_of_time_stops_the_search(monkeypatch: pytest.MonkeyPatch) -> None:
    """The choosing is done, the placing is not: stopped, and not asked for the same set again and again."""
    asked = list[int]()

    def counted(*given: Any, **named: Any) -> Solved:
        asked.append(1)
        assert len(asked) < 9
        return solver.run(*given, **named)

    monkeypatch.setattr(searching, "run", counted)
    one = hunting(one_job())
    monkeypatch.setattr(one.placer, "place", lambda *_: "unknown")
    monkeypatch.setattr(one.placer, "quick", lambda *_: None)
    monkeypatch.setattr(one, "_repair", lambda _: None)
    assert one.reach("points") == "stopped"


def test_half_of_the_time_is_half_of_what_is_left() -> None:
    """From ten seconds on of sixty, half of the rest ends at thirty-five."""
    now = [10.0]
    problem = one_job()
    gone = Search(Facts.of(problem), Growth(problem), Extra(), lambda: now[0], None, 60.0).half_time()
    for now[0], over in ((10.0, False), (35.0, False), (36.0, True)):
        assert gone() == over


def test_floors_are_whole_and_not_below_nothing() -> None:
    """A bound of 3, a hair more or less, is a floor of 3; what is below nothing is a floor of 0."""
    for bound, floor in ((3.0, 3), (3.0 + 5e-7, 3), (2.5, 3), (-2.0, 0)):
        one = hunting(one_job())
        one._noted("points", bound)
        assert one.floors == {"points": floor}
    one._noted("points", -math.inf)
    assert one.floors == {"points": 0}


def test_a_set_that_is_looked_at_again_is_kept_in_hand_meanwhile() -> None:
    """While its worth is still being learned, a set that the rules can place is a plan to stop with."""
    problem = one_job()
    one = Search(Facts.of(problem), Growth(problem, asks=0, asks_a_tree=0), Extra(), still, None, 60.0)
    assert one._settle(frozenset("a"), {}, None) == "again"
    assert one.best is not None
    assert one.best.chosen == {"a"}


@pytest.mark.parametrize(
    ("horizon", "session", "kept"), [(1, 0, True), (1, 1, False), (2, 1, True), (2, 2, False), (0, 1, True)]
)
def test_what_ends_after_the_horizon_is_not_kept(horizon: int, session: int, kept: bool) -> None:
    """Of a horizon of one session only the first is within; a horizon of 0 stands for no list of hours, and no end."""
    one = hunting(one_job())
    one.horizon = horizon
    placed = (Placed("a", 0, session, ALONE),)
    assert one.consider(frozenset("a"), Placing(placed, bill(one.facts, "a", placed))) == kept


LAMP: Packs = (("lamp", 1),)
TWO: Packs = (("arc", 1), ("lamp", 1))
WANTS = (Offer((0, 0), TWO), Offer((0, 2), LAMP), Offer((0, 50), (("arc", 1),)), Offer((0, 60), ()))
"""Without the arc 2 points are left, without the lamp 50."""


def never() -> bool:
    """A clock that never ends."""
    return False


def recorded(jobs: Jobs, asked: list[tuple[int, Packs]]) -> Memory:
    """A memory that writes down what it has to ask."""

    def ask(wanted: Sequence[tuple[int, Packs]]) -> list[Answered | None]:
        asked.extend(wanted)
        return best(jobs, wanted)

    return Memory(ask)


def test_a_ceiling_that_an_answer_keeps_is_not_asked_about() -> None:
    """The best plan of all holds one lamp: with at most one it is the best as well; with none it is not."""
    asked: list[tuple[int, Packs]] = []
    memory = recorded(((Offer((0, 1), LAMP), Offer((0, 9), ())),), asked)
    (free,) = memory.of([(0, ())])
    assert memory.of([(0, LAMP)]) == [free]
    assert asked == [(0, ())]
    (without,) = memory.of([(0, (("lamp", 0),))])
    assert without is not None
    assert (without.left, len(asked)) == ((0, 9), 2)


def two_houses() -> tuple[_Search, sharing._Node, list[tuple[int, Packs]]]:
    """Two houses that both want one arc and one lamp on the same days; the lamp matters more."""
    asked: list[tuple[int, Packs]] = []
    memory = recorded((WANTS, WANTS), asked)
    search = _Search(Stock({"arc": 1, "lamp": 1}, (None, None)), memory)
    answers = [one for one in memory.of([(0, ()), (1, ())]) if one is not None]
    return search, search.node(((), ()), answers), asked


def test_a_node_is_queued_once() -> None:
    """The same ceilings come by two ways: they are looked at once."""
    search, root, _ = two_houses()
    search.push(root)
    search.push(root)
    assert search.open == [root]


def test_what_matters_most_is_decided_first(monkeypatch: pytest.MonkeyPatch) -> None:
    """Ranks go by what is lost without a pack, not by name; the first piece dealt out is that of the first rank."""
    search, root, _ = two_houses()
    search.rank(root)
    assert search.ranks == {"lamp": 0, "arc": 1}
    dealt: list[str] = []
    branch = _Search.branch

    def told(self: _Search, node: sharing._Node, clash: Conflict) -> list[sharing._Node]:
        dealt.append(clash.piece)
        return branch(self, node, clash)

    monkeypatch.setattr(_Search, "branch", told)
    found = share(search.stock, recorded((WANTS, WANTS), []), never)
    assert isinstance(found, Shared)
    assert dealt[0] == "lamp"


def sawing() -> Facts:
    """One option with a saw that is only for hire, in three sessions."""
    option = Option("a", steps=(Step(40), Step(40)), tools=("saw",))
    return Facts.of(Problem((option,), tools=(Tool("saw", hire_minor=300),), sessions=HOURS, people=ALONE))


def test_with_no_session_of_hire_paid_nothing_is_sawn() -> None:
    """Two sessions of hire are enough for two steps of forty minutes; one is not, and none is not."""
    placer = Placer(sawing(), lambda: 30.0)
    assert [placer.can(frozenset("a"), 3, {"saw": count}) for count in (0, 1, 2)] == [False, False, True]
    short = Option("a", steps=(Step(40),), tools=("saw",))
    facts = Facts.of(Problem((short,), tools=(Tool("saw", hire_minor=300),), sessions=HOURS, people=ALONE))
    assert [Placer(facts, lambda: 30.0).can(frozenset("a"), 3, {"saw": count}) for count in (0, 1)] == [False, True]


def test_what_failed_for_some_money_fails_for_as_much() -> None:
    """As much or less needs no second look; more does, and so does money without end."""
    assert [_within(ceiling, 300) for ceiling in (299, 300, 301, None)] == [True, True, False, False]
    assert _within(None, None)


def test_a_tool_that_cannot_be_had_costs_nothing() -> None:
    """It has no price; what it keeps from being done is said elsewhere."""
    option = Option("a", tools=("saw", "drill"))
    facts = Facts.of(Problem((option,), tools=(Tool("saw"), Tool("drill", False, 900, 400))))
    assert _tools(facts, ["a"]) == 400


def test_a_shop_delivers_for_nothing_unless_it_is_said() -> None:
    """No delivery and no tax of its own."""
    assert delivery_and_tax(Shop("mill"), 500) == 0


def wishing() -> _Wishes:
    """Two options against a budget, a limit and a product of which there is one pack."""
    options = (
        Option("a", cost_minor=9, uses=(("paint", 1),), spends=(("holes", 2),)),
        Option("b", cost_minor=1, uses=(("paint", 1),), spends=(("holes", 1),)),
    )
    problem = points_problem(
        options,
        {"a": 5, "b": 5},
        budget_minor=50,
        products=(Product("paint", 3, 1, 0, None, most=1),),
        limits=(Limit("holes", 2),),
        must=(("a",), ("b",)),
    )
    return _Wishes(problem, still, 60.0, "highs")


def test_what_a_plan_keeps_is_told_wish_by_wish() -> None:
    """One option keeps the limit and the stock; both together break the two, and keep the budget."""
    wishes = wishing()
    facts = Facts.of(wishes.with_only(set()))
    kept = {}
    for some in ("a", "ab"):
        chosen = frozenset(some)
        plan = held(facts, chosen, Placing((), bill(facts, chosen, ())), (0, 0))
        kept[some] = wishes.kept_by(plan, set())
    assert kept["a"] == {"must:a", "budget", "limit:holes", "most:paint"}
    assert kept["ab"] == {"must:a", "must:b", "budget"}


def test_a_price_must_reach_further_than_the_margin() -> None:
    """At the margin itself nothing is said; a little above it is."""
    one = Relaxed(0.0, {"at": SAFE, "above": 2 * SAFE, "down": -SAFE, "below": -2 * SAFE}, {})
    assert [one.dearer(name, 0) for name in one.prices] == [None, "up", None, "down"]


def test_only_what_can_be_nothing_but_0_is_left_out() -> None:
    """A column fixed at 0 is not handed over; one that ends at 0 and begins below is, and goes there."""
    import pulp

    program = Program()
    program.variables["fixed"] = Variable(0, 0, True)
    program.variables["below"] = Variable(-1, 0, True)
    program.variables["one"] = Variable(0, 1, True)
    built = solver._built(pulp, program, ((1, "below"),))
    assert built is not None
    assert list(built[1]) == ["below", "one"]
    assert round(solver.run(program, ((1, "below"),), 10.0).objective) == -1


def filling(minutes: tuple[int, ...], before: tuple[tuple[int, ...], ...], there: int) -> _Filling:
    """One session to fill, by minutes alone."""
    return _Filling(Steps(minutes, before), list(minutes), [-1] * len(minutes), there, False)


def test_of_sets_that_weigh_the_same_the_first_is_kept() -> None:
    """Two pairs fill nine minutes alike: the one that was met first stays."""
    assert filling((6, 5, 4, 3), ((), (), (), ()), 9).best() == (0, 3)


def test_a_step_with_followers_stands_for_itself() -> None:
    """As long as the one before it, but more follows: the set without the other is looked at as well."""
    assert filling((4, 4, 6), ((), (), (1,)), 10).best() == (1, 2)


def test_steps_that_are_alike_are_taken_in_one_order_only() -> None:
    """Of three alike, sets of none, one, two and three are looked at, and no other."""
    one = filling((5, 5, 5), ((), (), ()), 20)
    assert one.best() == (0, 1, 2)
    assert one.nodes == 4


def test_the_looking_ends_after_so_many_sets(monkeypatch: pytest.MonkeyPatch) -> None:
    """No set fills the session whole: it stops at the number, all the same."""
    monkeypatch.setattr("budgetfix.optimize.packing.NODES", 5)
    one = filling((9, 8, 7, 6, 5, 4, 3), ((),) * 7, 100)
    one.best()
    assert one.nodes <= 9
