"""Answers, further questions, the curve and the fair choice: rules that whole jobs rarely feel, each by itself."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import pytest

from budgetfix.optimize import answering, finish
from budgetfix.optimize.answering import _floors, solve
from budgetfix.optimize.asking import Asking, doing
from budgetfix.optimize.ceilings import Ceiling, _rivals
from budgetfix.optimize.curve import Curve, Gap, _Curving, _ends, _marks, next_hour
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.fair import Fair, missed
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.problem import Answer, Asked, Extra, NoPlan, Option, Plan, Problem, Round, Session, Step, Tree
from budgetfix.optimize.search import Search
from budgetfix.optimize.why_not import _screened, why_not
from tests.optimize.worlds import points_problem, still

PAIR = (Option("a", cost_minor=100), Option("b", cost_minor=100))
PRICED = points_problem(PAIR, {"a": 50, "b": 40}, budget_minor=100)
"""Two things for 1.00 each and money for one of them."""


def plan_of(spent_minor: int, points: int, *, hazards: int = 0, chosen: tuple[str, ...] = ()) -> Plan:
    """A plan in figures alone."""
    return Plan(chosen, (), hazards, points, spent_minor, 0)


def search_of(problem: Problem, clock: Callable[[], float] = still) -> Search:
    """A search of which nothing is known yet, with a minute left."""
    return Search(Facts.of(problem), Growth(problem, asks=0, asks_a_tree=0), Extra(), clock, None, 60.0)


def solved(problem: Problem) -> Plan:
    """The proven best plan."""
    answer = solve(problem, clock=still)
    assert isinstance(answer, Answer)
    assert answer.proven
    return answer.plan


def test_a_plan_in_hand_is_not_looked_for_beyond_the_seconds(monkeypatch: pytest.MonkeyPatch) -> None:
    """Stopped with a plan in hand: the seconds for a first plan are for musts that forbid the empty one, and unused."""

    def never(*_: object) -> str:
        raise AssertionError("asked beyond the seconds")

    monkeypatch.setattr(answering, "_proven_wishes", lambda *_: "stopped")
    monkeypatch.setattr(Search, "reach", never)
    answer = solve(PRICED, clock=still, depth="figures")
    assert isinstance(answer, Answer)
    assert not answer.proven


@pytest.mark.parametrize(("seconds", "until"), [(4.0, 5.0), (60.0, 15.0)])
def test_ties_get_five_seconds_or_a_quarter_of_what_was_given(
    monkeypatch: pytest.MonkeyPatch, seconds: float, until: float
) -> None:
    """Whichever is more, from the moment at which the rest is proven."""
    told: list[float] = []
    monkeypatch.setattr(finish, "first_ids", lambda search: told.append(search.until))
    solve(PRICED, clock=still, seconds=seconds)
    assert told == [until]


def test_what_is_proven_of_an_order_of_wishes_is_told_for_its_own_wishes() -> None:
    """Where hazards count as points, a floor of both less the most hazards is one of points; else each by itself."""
    one = search_of(replace(PRICED, hazards_first=False))
    assert _floors(one) == (0, 0)
    one.floors = {"both": 7, "hazards": 3}
    assert _floors(one) == (0, 7)
    other = search_of(PRICED)
    other.floors = {"both": 7, "hazards": 3, "points": 4}
    assert _floors(other) == (3, 0)
    other.ceilings["hazards"] = 3
    assert _floors(other) == (3, 4)


def test_a_solve_starts_from_plans_within_its_money() -> None:
    """What costs more than is asked for is no start; what costs just as much is."""
    cheap, dear = plan_of(100, 50), plan_of(101, 40)
    asking = Asking(PRICED, Growth(PRICED), still, 60.0, seen=[cheap, dear])
    assert asking._near(Extra(spend_at_most=100)) == [cheap]
    assert asking._near(Extra()) == [dear, cheap]


def test_no_question_is_asked_for_less_than_nothing() -> None:
    """Fewer points than none, or fewer hazards than none, cannot remain: these questions are left out."""
    problem = points_problem(PAIR, {"a": 50, "b": 40})
    one = doing(problem, plan_of(0, 5, hazards=2), more=5)
    assert [(extra.hazards_at_most, extra.points_at_most) for extra in one] == [(2, 0), (1, None)]
    assert [extra.hazards_at_most for extra in doing(problem, plan_of(0, 5, hazards=2), more=6)] == [1]
    assert [extra.points_at_most for extra in doing(problem, plan_of(0, 5), more=1)] == [4]
    assert doing(problem, plan_of(0, 0), more=1) == ()


@dataclass
class _Counting(Asking):
    """Answers each question with a plan that buys as many tins as it may; notes how many that were."""

    def __post_init__(self) -> None:
        self.told: list[int] = []

    def ask(self, extra: Extra) -> Plan | NoPlan | None:
        """The plan with as many packs as are asked for."""
        self.told.append(extra.packs_at_most[0][1])
        return replace(plan_of(200, 0), packs=extra.packs_at_most)


@pytest.mark.parametrize(("points", "told"), [(0, [3, 2, 1, 0]), (1, [3, 2, 1])])
def test_rivals_are_asked_for_at_every_count_of_packs(points: int, told: list[int]) -> None:
    """From one less than planned down to one; to none where what buys none does as much. No count is jumped over."""
    asking = _Counting(PRICED, Growth(PRICED), still, 60.0)
    best, known = replace(plan_of(100, 0), packs=(("tin", 4),)), Ceiling("tin", without=plan_of(100, points))
    assert len(list(_rivals(asking, best, 4, known, None))) == len(told)
    assert asking.told == told


def test_nothing_is_said_to_be_without_a_plan_unless_that_is_known() -> None:
    """A ceiling of which only the product is known claims nothing; a curve puts hazards first by itself."""
    assert Ceiling("tin") == Ceiling("tin", more_minor=None, any_price=False, without=None, nothing=False)
    here, there = plan_of(100, 4, hazards=1), plan_of(300, 5)
    assert Curve((here, there), (), topped=True).after(100) == there
    assert Curve((here, there), (), topped=True, hazards_first=False).after(100) == NoPlan()


def test_less_left_behind_for_more_money_is_not_a_point_more() -> None:
    """The plan that comes after another one does more than that one, not more than those before it."""
    least, here, same = plan_of(0, 9), plan_of(100, 5), plan_of(300, 5)
    assert Curve((here, same), (), topped=True).after(100) == NoPlan()
    assert Curve((least, here, same), (), topped=True).after(100) == NoPlan()
    assert Curve((least, here), (), topped=True).after(0) == here


def curving(*plans: Plan, budget_minor: int | None = None) -> _Curving:
    """A curve with these plans, each proven for its own spend alone."""
    problem = replace(PRICED, budget_minor=budget_minor)
    asking = _Curving(problem, Growth(problem), still, 60.0, depth="set")
    for plan in plans:
        asking.keep(plan, plan.spent_minor)
    return asking


def test_a_gap_is_as_wide_as_its_money_times_the_points_of_its_neighbors() -> None:
    """Not those of plans further down."""
    asking = curving(plan_of(0, 90), plan_of(100, 50, hazards=2), plan_of(300, 40, hazards=1))
    assert asking.gaps() == (Gap(0, 100), Gap(100, 300))
    assert asking.room(Gap(100, 300)) == 200 * 11
    assert asking.room(Gap(0, 100)) == 100 * 38


def test_even_steps_of_money_are_tried_below_the_plan_and_above_its_budget() -> None:
    """Sixths of what the plan spends, dear ones first; then quarters of what is above."""
    best, top = plan_of(600, 20), plan_of(1000, 10)
    assert _marks(curving(best), best) == [500, 400, 300, 200, 100]
    assert _marks(curving(best, top), best) == [500, 400, 300, 200, 100, 700, 800, 900]


def test_without_a_budget_the_plan_in_hand_is_what_any_money_buys() -> None:
    """It is not asked for again; with a budget it is."""
    best = solved(replace(PRICED, budget_minor=None))
    for budget, solves in ((None, 1), (200, 2)):
        asking = curving(best)
        assert _ends(asking, best, budget)
        assert asking.solves == solves


def test_one_hour_more_grows_the_trees_that_are_handed_in() -> None:
    """What was asked of the job before is not asked again."""
    problem = replace(PRICED, sessions=(Session(0, 60, (60,)),))
    growth = Growth(problem)
    best = solved(problem)
    assert growth.asks == 0
    assert next_hour(problem, best, seconds=60, clock=still, growth=growth) is not None
    assert growth.asks > 0


def eyes(id: str, first: int, second: int, foes: frozenset[str] = frozenset()) -> Tree:
    """A tree of one option that takes away so many points in the eyes of each of two people, and 100 of everybody's."""

    def ask(chosen: frozenset[str], refused: frozenset[str]) -> Asked:
        if id in chosen:
            return Asked(0, 0, voices=(0, 0))
        return Asked(0, 100, voices=(first, second)) if id in refused or chosen & foes else Asked(0, 0, (id,))

    return Tree(id, ask, lambda *_: (0, 0, 0, 0))


def test_what_a_person_misses_is_what_that_person_would_gain_by() -> None:
    """Of the own plan's options those that the other one has not, each in the place of what it excludes."""
    options = (Option("art", "wall"), Option("bed"), Option("cot"), Option("rod", "wall"))
    trees = (eyes("art", 9, 1), eyes("bed", 1, 5), eyes("cot", 0, 3), eyes("rod", 4, 4))
    problem = Problem(options, trees)
    ours = Plan(("rod",), (), 0, 300, 0, 0, voices=(10, 9))
    alone = (replace(ours, chosen=("art", "bed", "cot")), replace(ours, chosen=("art", "bed", "rod")))
    fair = Fair(ours, alone, (10, 9), (4, 4), True, 3)
    assert missed(problem, Growth(problem), fair, ours, 0) == ("art", "bed")
    assert missed(problem, Growth(problem), fair, ours, 1) == ("bed",)


def test_why_not_asks_nothing_when_no_second_is_left() -> None:
    """At the very end of its seconds it neither asks nor tells that it does; what the screen says stays."""
    heard: list[Round] = []
    found = why_not(PRICED, solved(PRICED), "b", seconds=0.0, clock=still, report=heard.append)
    assert heard == []
    assert found["b"].held is None


def test_the_screen_tells_how_much_worse_an_option_is_at_least() -> None:
    """Money for one thing: with the second instead of the first 10 points more remain, with what is free as many.

    Where nothing was looked at yet, nothing can be said.
    """
    problem = points_problem((*PAIR, Option("c")), {"a": 50, "b": 40, "c": 1}, budget_minor=100)
    best, growth = solved(problem), Growth(problem)
    assert best.chosen == ("a", "c")
    asking = Asking(problem, growth, still, 60.0)
    assert _screened(asking, best, "bc") == {"b": 0, "c": 0}
    growth.grow_up_front(frozenset("abc"))
    assert _screened(asking, best, "bc") == {"b": 10, "c": 0}


def test_enough_money_is_what_costs_no_point_at_all() -> None:
    """One point less than the plan in hand is not as good: where no money helps, none is named."""
    options = (Option("a", "wall", cost_minor=100), Option("b", "wall", cost_minor=100))
    problem = points_problem(options, {"a": 50, "b": 49}, budget_minor=100)
    why = why_not(problem, solved(problem), "b", seconds=60, clock=still)["b"]
    assert why.held is not None
    assert (why.worse, why.enough, why.open) == (1, None, False)


def spread(*options: Option, people: tuple[str, ...] = ("ann",), quiet: bool = False, until: float = 60.0) -> Search:
    """A job of doing everything in four hours, the last of them maybe quiet, with each option in an hour of its own."""
    hours = tuple(
        Session(1440 * day, 1440 * day + 60, (60,) * len(people), quiet=quiet and day == 3) for day in range(4)
    )
    gains = {one.id: 5 for one in options}
    must = tuple((one.id,) for one in options)
    search = search_of(points_problem(options, gains, sessions=hours, must_all=True, must=must, people=people))
    search.try_set(frozenset(gains))
    best = search.best
    assert best is not None
    day = {one.id: place for place, one in enumerate(options)}
    apart = tuple(replace(one, session=day[one.option]) for one in best.placing.placed)
    search.best, search.until = replace(best, placing=replace(best.placing, placed=apart)), until
    return search


def hour_filling(**minutes: int) -> tuple[Option, ...]:
    """Options of one step each."""
    return tuple(Option(id, steps=(Step(long),)) for id, long in minutes.items())


def test_steps_that_nothing_ties_together_flow_into_the_fewest_sessions() -> None:
    """Every step stands there once, by its number, in two hours instead of four."""
    search = spread(*hour_filling(a=40, b=30, c=30, d=20))
    assert finish._flowing(search)
    best = search.best
    assert best is not None
    assert [(one.option, one.step, one.people) for one in best.placing.placed] == [(id, 0, ("ann",)) for id in "abcd"]
    assert best.placing.last == 1


def test_what_is_tied_is_no_flow() -> None:
    """Two people, a need, a second step, a loud step beside a quiet session, or no second left: others work it out."""
    one, other = hour_filling(a=40, b=20)
    loud = replace(other, steps=(Step(20, loud=True),))
    assert finish._flowing(spread(one, other))
    assert finish._flowing(spread(one, loud))
    assert not finish._flowing(spread(one, loud, quiet=True))
    assert not finish._flowing(spread(one, other, people=("ann", "ben")))
    assert not finish._flowing(spread(one, replace(other, needs=("a",))))
    assert not finish._flowing(spread(one, replace(other, steps=(Step(10), Step(10)))))
    assert not finish._flowing(spread(one, other, until=0.0))


def test_only_an_exact_squeeze_asks_the_solver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the rules find no way into fewer sessions, "do everything" leaves that to the rounds that follow."""
    asked: list[int] = []
    for exact, told in ((False, []), (True, [1])):
        search = spread(*hour_filling(a=40, b=20))
        monkeypatch.setattr(search.placer, "quick", lambda *_: None)
        monkeypatch.setattr(search.placer, "place", lambda _, horizon, __: asked.append(horizon))
        finish._squeeze(search, exact=exact)
        assert asked == told


def test_ids_are_settled_once_no_earlier_set_is_left() -> None:
    """Two sets alike: that is proven with the earlier one in hand, and with the later one it is found first."""
    options = tuple(Option(id, steps=(Step(60),)) for id in ("m2", "m9"))
    problem = points_problem(options, {"m2": 5, "m9": 5}, sessions=(Session(0, 60, (60,)),))
    for start in ("m2", "m9"):
        search = search_of(problem)
        search.try_set(frozenset({start}))
        assert search.reach("points") == "proven"
        search.freeze("points")
        search.freeze("minutes")
        assert finish.first_ids(search) == "proven"
        assert search.best is not None
        assert search.best.chosen == {"m2"}
