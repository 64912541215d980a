"""Why an option is not in the plan: the best plan that holds it, and the least money with which that costs nothing.

All are screened by a linear relaxation first; the nearest are then answered exactly, as long as the clock allows.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from budgetfix.optimize import worth_rows
from budgetfix.optimize.asking import Asking, doing
from budgetfix.optimize.cannot import impossible
from budgetfix.optimize.choice_rows import x
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.linear import relaxed_with
from budgetfix.optimize.problem import Extra, NoPlan, Plan, Problem, Report, Round
from budgetfix.optimize.search import Search
from budgetfix.optimize.solver import Engine, Row
from budgetfix.optimize.wishes import Wish


@dataclass(frozen=True, slots=True)
class WhyNot:
    """What holding one option would come to.

    `held`: the best plan that holds it, within the same money, hours and limits. `nothing`: no plan there holds it.
    `enough`: the cheapest plan that holds it and does at least as much as the plan in hand, with more money. `dear`:
    where there is none, the cheapest that holds it at all, with more money. `barred`: no plan holds it, however much
    money, time and room there is. `open`: the clock ended before one of these was known. `worse`: with `held`, how
    many points and hazard points more remain; without, how many points more at least, in plans that are as safe.
    """

    id: str
    held: Plan | None = None
    nothing: bool = False
    enough: Plan | None = None
    dear: Plan | None = None
    barred: bool = False
    open: bool = False
    worse: int | None = None


def why_not(
    problem: Problem,
    best: Plan,
    ids: Iterable[str],
    *,
    seconds: float,
    clock: Callable[[], float],
    growth: Growth | None = None,
    report: Report | None = None,
    engine: Engine = "highs",
) -> dict[str, WhyNot]:
    """An answer for each of the options that are not in `best` and not impossible, as far as the clock allows."""
    asking = Asking(problem, growth or Growth(problem), clock, clock() + seconds, report, engine)
    cannot = impossible(problem)
    asked = sorted(id for id in set(ids) if id not in best.chosen and id not in cannot)
    found = {id: WhyNot(id, worse=worse) for id, worse in _screened(asking, best, asked).items()}
    for number, id in enumerate(sorted(asked, key=lambda id: (found[id].worse or 0, id))):
        if asking.left() <= 0:
            break
        if report is not None:
            report(Round("why_not", number, len(asked)))
        found[id] = _exact(asking, best, id, found[id])
    for id in sorted(found):
        found[id] = _with_more(asking, best, found[id])
    return found


def _screened(asking: Asking, best: Plan, ids: Iterable[str]) -> dict[str, int]:
    """For each option, how many points more remain at least in any plan that holds it and leaves no more hazards."""
    problem = asking.problem
    facts = Facts.of(problem, without=impossible(problem))
    search = Search(facts, asking.growth, Extra(), asking.clock, None, asking.until, asking.engine)
    wish: Wish = "points" if problem.hazards_first else "both"
    program = search.program()
    if problem.hazards_first:
        program.add([Row("as_safe", worth_rows.hazard_terms(search.families()), "<=", best.hazards + 0.5)])
    mine = best.points if problem.hazards_first else best.hazards + best.points
    floors = relaxed_with(program, search.terms(wish), [x(id) for id in ids], asking.left())
    found = {}
    for id in ids:
        floor = floors.get(x(id), 0.0)
        found[id] = max(0, math.ceil(floor - 1e-6) - mine) if math.isfinite(floor) else 0
    return found


def _exact(asking: Asking, best: Plan, id: str, known: WhyNot) -> WhyNot:
    """The best plan that holds an option, by solving again with it chosen."""
    held = asking.ask(Extra(chosen=(id,)))
    if held is None:
        return known
    if isinstance(held, NoPlan):
        return replace(known, nothing=True, worse=None)
    return replace(known, held=held, worse=held.hazards - best.hazards + held.points - best.points)


def _with_more(asking: Asking, best: Plan, known: WhyNot) -> WhyNot:
    """For one that does not fit or costs points: the money with which it would cost none; or that it never fits."""
    if not known.nothing and (known.held is None or not _less(asking.problem, known.held, best)):
        return known
    problem = asking.problem
    if problem.budget_minor is not None and not problem.phases:
        lifted = _lifted(asking, replace(problem, budget_minor=None))
        enough = lifted.least(doing(problem, best, more=0, chosen=(known.id,)))
        if isinstance(enough, Plan):
            return replace(known, enough=enough)
        if enough is None or not known.nothing:
            return replace(known, open=enough is None)
        dear = lifted.ask(Extra(chosen=(known.id,), spend_first=True))
        if not isinstance(dear, NoPlan):
            return replace(known, dear=dear, open=dear is None)
    return _ever(asking, known) if known.nothing else known


def _ever(asking: Asking, known: WhyNot) -> WhyNot:
    """Whether any plan holds it when money, time and room are no matter."""
    plenty = tuple(replace(one, most=None) for one in asking.problem.products)
    free = replace(
        asking.problem,
        products=plenty,
        budget_minor=None,
        limits=(),
        loads=(),
        sessions=None,
        last_session=None,
        must=(),
    )
    anything = _lifted(asking, free).ask(Extra(chosen=(known.id,)))
    return replace(known, barred=isinstance(anything, NoPlan), open=anything is None)


def _lifted(asking: Asking, problem: Problem) -> Asking:
    return Asking(problem, asking.growth, asking.clock, asking.until, engine=asking.engine)


def _less(problem: Problem, one: Plan, than: Plan) -> bool:
    """True where a plan does less than another."""
    if problem.hazards_first:
        return (one.hazards, one.points) > (than.hazards, than.points)
    return one.hazards + one.points > than.hazards + than.points
