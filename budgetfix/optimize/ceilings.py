"""How dear a product may get before another plan is better, and what is best where the shop has not got it.

The question: every pack of one product costs more than planned, by the same amount; delivery and tax stay as planned.
Up to which sum for the plan's whole line does the plan in hand stay the best one?

Let the plan spend s with k packs, and let its line cost d more. A plan with j packs then costs d j / k more.
A plan that does more than the one in hand is above the budget today, or it would have been chosen; dearer goods do not
bring it below. A plan that does less never wins, for money comes after points (and after marks, where options leave
any: as much with more left behind is less). So only plans that do exactly as much count, within the budget. With k
packs or more they get dearer by at least as much, and stay behind. With j < k packs and a spend of s + g they are as
dear as the plan in hand at

    d = g k / (k - j),

and cheaper beyond. At that very sum the further wishes decide (minutes, last session, ids): where they speak for the
other plan, the line must stay below. The plan in hand itself must stay within the budget: d <= budget - s.
The ceiling is the line plus the least of all these d, in whole minor units. Where two people have priorities of their
own, plans that give each of them as much are what counts.

What is best without the product tells in figures whether anything does as much; only then are ties worked out.
For each j the cheapest plan with *at most* j packs is enough: one with fewer packs than j is met again at its own j,
where its d is smaller. Its own count of packs says where to go on, so most j are never asked.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from budgetfix.optimize.asking import Asking
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.problem import Extra, NoPlan, Plan, Problem, Report, Round
from budgetfix.optimize.recount import charged, marks_of
from budgetfix.optimize.solver import Engine


@dataclass(frozen=True, slots=True)
class Ceiling:
    """What is known of one product that a plan buys.

    `more_minor`: the plan stays the best while the whole line costs at most so much more than planned; None where that
    was not worked out. `any_price`: no price alters the plan (`more_minor` is None then). `without`: the best plan
    that buys none of it; `nothing`: there is none.
    """

    id: str
    more_minor: int | None = None
    any_price: bool = False
    without: Plan | None = None
    nothing: bool = False


def ceilings(
    problem: Problem,
    best: Plan,
    *,
    seconds: float,
    clock: Callable[[], float],
    growth: Growth | None = None,
    report: Report | None = None,
    engine: Engine = "highs",
) -> dict[str, Ceiling]:
    """By product, for those that `best` buys, dear lines first; what the clock stopped is not there, or not whole.

    `best` is the proven plan of `problem`, down to its ids. Empty where everything is asked for: points do not come
    first there; and where money comes in phases: a dearer line may be within the budget and not within a phase.
    """
    if problem.must_all or problem.phases:
        return {}
    asking = Asking(problem, growth or Growth(problem), clock, clock() + seconds, report, engine)
    products = {one.id: one for one in problem.products}
    packs = sorted(best.packs, key=lambda pair: (-charged(products[pair[0]], pair[1]), pair[0]))
    found: dict[str, Ceiling] = {}
    for number, (id, count) in enumerate(packs):
        if report is not None:
            report(Round("ceilings", number, len(packs)))
        asking.depth = "figures"
        without = asking.ask(Extra(packs_at_most=((id, 0),)))
        if without is None:
            break
        plan = without if isinstance(without, Plan) else None
        found[id] = _priced(asking, best, count, Ceiling(id, without=plan, nothing=plan is None))
    return found


def _priced(asking: Asking, best: Plan, packs: int, known: Ceiling) -> Ceiling:
    """With how much more the line may cost."""
    budget = asking.problem.budget_minor
    most = None if budget is None else budget - best.spent_minor
    for rival in _rivals(asking, best, packs, known, most):
        if rival is None:
            return known
        dearer = _until(asking.problem, best, rival, packs, dict(rival.packs).get(known.id, 0))
        most = dearer if most is None else min(most, dearer)
    return replace(known, more_minor=most, any_price=most is None)


def _rivals(asking: Asking, best: Plan, packs: int, known: Ceiling, most: int | None) -> Iterator[Plan | None]:
    """Plans that do as much with fewer packs, cheapest first for each count of packs; None where the clock ended."""
    without = known.without
    as_good = without is not None and (best.voices or left(asking.problem, without) == left(asking.problem, best))
    asking.depth = "set"
    fewer = packs - 1
    while fewer >= (0 if as_good else 1):
        found = asking.ask(_as_much(asking.problem, best, known.id, fewer, most))
        if isinstance(found, NoPlan):
            return
        yield found
        if found is None:
            return
        fewer = dict(found.packs).get(known.id, 0) - 1


def _as_much(problem: Problem, best: Plan, id: str, packs: int, most: int | None) -> Extra:
    """Asks for the least spend that does as much as a plan with at most so many packs."""
    within = Extra(
        packs_at_most=((id, packs),),
        spend_at_most=None if most is None else best.spent_minor + most,
        spend_first=True,
    )
    if any(one.marks for one in problem.options):
        within = replace(within, marks_at_most=marks_of(problem, best.chosen))
    if best.voices:
        hazards = best.hazards if problem.hazards_first else None
        return replace(within, hazards_at_most=hazards, voices_at_most=best.voices)
    if problem.hazards_first:
        return replace(within, hazards_at_most=best.hazards, points_at_most=best.points)
    return replace(within, both_at_most=best.hazards + best.points)


def _until(problem: Problem, best: Plan, rival: Plan, packs: int, fewer: int) -> int:
    """With how much more for its line a plan still stands before a rival that does as much with fewer packs."""
    until, over = divmod((rival.spent_minor - best.spent_minor) * packs, packs - fewer)
    tied = over == 0 and _ties(problem, rival) < _ties(problem, best)
    return max(0, until - tied)


def left(problem: Problem, plan: Plan) -> tuple[int, ...]:
    """What remains after a plan and what it leaves behind, as plans are compared before money."""
    worth = (plan.hazards, plan.points) if problem.hazards_first else (plan.hazards + plan.points,)
    return (*worth, marks_of(problem, plan.chosen))


def _ties(problem: Problem, plan: Plan) -> tuple[int, int, tuple[bool, ...]]:
    """The wishes after spend: person-minutes, last session, ids. Less is better."""
    last = max((one.session for one in plan.placed if one.session is not None), default=-1)
    ids = sorted(option.id for option in problem.options)
    return plan.person_minutes, last if problem.sessions else 0, tuple(id not in plan.chosen for id in ids)
