"""The best plan of a problem, wish by wish, or which wishes leave none."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

from budgetfix.optimize import finish, order, recount, worth_rows
from budgetfix.optimize.cannot import impossible
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.phase_count import counted, phases_broken
from budgetfix.optimize.problem import Answer, Depth, Extra, NoPlan, Plan, Problem, Report, Rounds
from budgetfix.optimize.recount import SolverDisagrees
from budgetfix.optimize.relax import relaxed
from budgetfix.optimize.search import Outcome, Search
from budgetfix.optimize.solver import Engine
from budgetfix.optimize.start import begin
from budgetfix.optimize.wishes import WORTH, Held, Wish

TIES_SECONDS = 5.0
TIES_SHARE = 0.25
"""Ties get this many seconds, or this share of the given ones, whichever is more; they never make a plan unproven."""
GROWTH_SHARE = 0.25
"""Share of the seconds after which no more questions are asked up front."""
MUST_SECONDS = 10.0
"""How long a first plan is looked for beyond the given seconds, where musts forbid the empty one."""


def solve(
    problem: Problem,
    *,
    seconds: float = 60.0,
    extra: Extra | None = None,
    clock: Callable[[], float],
    report: Report | None = None,
    growth: Growth | None = None,
    engine: Engine = "highs",
    depth: Depth = "all",
    known: Iterable[Plan] = (),
) -> Answer | NoPlan:
    """Choose and place. `seconds` is for proving hazards, points and spend; `clock` gives seconds, rising.

    `growth` is shared between solves of one job. `report` is told of every round. `depth`: how many of the
    wishes are asked for. `known`: plans of the same problem, to start from where they fit.
    Errors: SolverDisagrees when what the solver claims does not come out again.
    """
    more = extra or Extra()
    facts = Facts.of(problem, without=[*impossible(problem), *more.refused])
    grown = growth or Growth(problem)
    search = Search(facts, grown, more, clock, report, clock() + seconds, engine)
    seen = grown.grow_up_front(search.possible, lambda: search.left() < (1 - GROWTH_SHARE) * seconds)
    begin(search, known, large=not seen)
    outcome = _proven_wishes(search, depth)
    if search.best is None and outcome == "stopped":
        search.until = clock() + MUST_SECONDS
        outcome = search.reach("minutes", lambda _: ())
        outcome = "none" if outcome == "none" else "stopped"
    if search.best is None:
        if outcome == "none" and more == Extra():
            return relaxed(problem, seconds, clock, engine, report)
        return NoPlan(proven=outcome == "none")
    proven = outcome == "proven"
    if depth in ("set", "all"):
        _ties(search, seconds, proven, depth)
    return _answer(search, proven)


def _proven_wishes(search: Search, depth: Depth) -> Outcome:
    """The wishes that a proof is about: up to spend, hazards and points all told, or without spend."""
    more_follow = depth in ("set", "all")
    wishes = search.order[: _proof_length(search, WORTH if depth == "worth" else (*WORTH, "spend"))]
    for wish in wishes:
        outcome = finish.fewest_sessions(search) if wish == "last" else _reach(search, wish)
        if outcome != "proven":
            return outcome
        if wish != "last":
            search.freeze(wish, pin=more_follow or wish != wishes[-1])
    return "proven"


def _proof_length(search: Search, about: tuple[Wish, ...] = (*WORTH, "spend")) -> int:
    return max(search.order.index(wish) for wish in search.order if wish in about) + 1


def _reach(search: Search, wish: Wish) -> Outcome:
    """One wish; nothing is solved where the plan in hand is as good as can be on sight."""
    hazards, points = worth_rows.floors(search.families())
    sight = {"hazards": hazards, "points": points, "both": hazards + points}
    search.floors[wish] = max(search.floors.get(wish, 0), sight.get(wish, 0))
    if search.best is not None and search.best.measure(wish) <= search.floors[wish]:
        return "proven"
    outcome = search.reach(wish)
    if outcome == "none" and search.best is not None:
        raise SolverDisagrees(f"{wish}: no plan, while {sorted(search.best.chosen)} is one")
    return outcome


def _ties(search: Search, seconds: float, proven: bool, depth: Depth) -> None:
    """Person-minutes, last session and ids of a proven plan; then, where all is asked for, the order of its steps."""
    now = search.clock()
    search.until = now + (max(TIES_SECONDS, TIES_SHARE * seconds) if proven else min(2.0, TIES_SECONDS))
    done = proven
    for wish in search.order[_proof_length(search) :] if proven else ():
        outcome = finish.earliest_finish(search) if wish == "last" else _reach(search, wish)
        if outcome != "proven":
            done = False
            break
        if wish != "last":
            search.freeze(wish)
    if done:
        search.tell("ids")
        finish.first_ids(search)
    best = search.best
    if best is not None and depth == "all":
        search.tell("order")
        placed, _ = order.ordered(search.facts, search.growth, best, search.left, search.engine)
        search.best = replace(best, placing=placed)


def _answer(search: Search, proven: bool) -> Answer:
    best = search.best
    if best is None:
        raise SolverDisagrees("no plan in hand")
    plan = best.plan()
    _check(search, best, plan)
    hazards, points = (plan.hazards, plan.points) if proven else _floors(search)
    return Answer(plan, proven, hazards, points, Rounds(search.inspections, search.placings))


def _floors(search: Search) -> tuple[int, int]:
    """Proven floors on what remains, when the clock stopped the proof."""
    hazards, points = worth_rows.floors(search.families())
    if search.facts.problem.must_all or search.extra.spend_first:
        return hazards, points
    if not search.facts.problem.hazards_first:
        both = search.floors.get("both", 0)
        return hazards, max(points, both - worth_rows.most_hazards(search.families()))
    hazards = max(hazards, search.floors.get("hazards", 0))
    if "hazards" in search.ceilings:
        points = max(points, search.floors.get("points", 0))
    return hazards, points


def _check(search: Search, best: Held, plan: Plan) -> None:
    """Everything counted once more, from the plan alone."""
    words = recount.broken(search.facts, plan.chosen, plan.placed)
    if search.facts.phases:
        words += phases_broken(search.facts, plan.chosen, plan.placed, best.placing.bill)
    if words:
        raise SolverDisagrees("; ".join(words))
    again = recount.bill(search.facts, plan.chosen, plan.placed)
    if search.facts.phases:
        again = counted(search.facts, plan.chosen, plan.placed, dict(plan.buys), plan.bought)
    money = search.money
    if again != best.placing.bill or (money is not None and again.spent_minor > money):
        raise SolverDisagrees(f"{again.spent_minor} is spent, not {plan.spent_minor}")
