"""The wishes that come after money: the last session used, and ids. Each over all tied sets."""

from __future__ import annotations

from itertools import accumulate

from budgetfix.optimize import flow, model
from budgetfix.optimize.choice_rows import x
from budgetfix.optimize.listing import bound
from budgetfix.optimize.placing import Placing
from budgetfix.optimize.problem import Placed
from budgetfix.optimize.recount import bill
from budgetfix.optimize.search import Outcome, Search
from budgetfix.optimize.solver import Program, Row, Terms


def earliest_finish(search: Search) -> Outcome:
    """The fewest sessions among all tied sets; the plan in hand is there afterwards."""
    if search.best is None or not search.horizon:
        return "proven"
    _squeeze(search, exact=True)
    while search.best.placing.last > least_last(search, search.best.minutes):
        search.horizon = search.best.placing.last
        outcome = search.reach("minutes", _nothing)
        if outcome != "proven":
            search.horizon = search.best.placing.last + 1
            return "proven" if outcome == "none" else "stopped"
    search.horizon = search.best.placing.last + 1
    return "proven"


def fewest_sessions(search: Search) -> Outcome:
    """For "do everything": the fewest sessions of all, from the least possible number upwards."""
    outcome = search.reach("minutes")
    if outcome != "proven" or search.best is None or not search.horizon:
        return outcome
    _squeeze(search, exact=False)
    if search.best.placing.last > least_last(search, search.floors.get("minutes", 0)) and _flowing(search):
        search.horizon = search.best.placing.last + 1
        return "proven"
    whole = search.horizon
    for horizon in range(least_last(search, search.floors.get("minutes", 0)) + 1, search.best.placing.last + 1):
        search.horizon = horizon
        search.timetable = True
        outcome = search.reach("minutes", _nothing)
        if outcome != "none":
            break
        search.floors["last"] = horizon
    search.timetable = False
    stopped = outcome == "stopped" and search.best.placing.last >= search.horizon
    search.horizon = whole if stopped else search.best.placing.last + 1
    return "stopped" if stopped else "proven"


def _flowing(search: Search) -> bool:
    """The fewest sessions of a set without choice, ties or waits, in equal sessions; False where that is not so."""
    facts, best = search.facts, search.best
    if best is None or facts.phases or len(facts.problem.people) > 1 or len(set(facts.minutes)) > 1:
        return False
    if best.chosen != model.sure(facts, search.extra) or any(facts.needs[id] for id in best.chosen):
        return False
    if any(len(one.steps) > 1 or bound(one) or set(one.tools) & set(facts.hirable) for one in facts.options):
        return False
    work = [one for one in facts.options if one.id in best.chosen and one.steps]
    if any(facts.hushed(one.steps[0], session) for one in work for session in range(facts.horizon)):
        return False
    found = flow.fewest([one.steps[0].minutes for one in work], facts.minutes[0][0], search.left(), search.engine)
    if found == "unknown":
        return False
    who = (facts.problem.people[0],)
    placed = tuple(
        sorted(
            (Placed(work[place].id, 0, session, who) for session, places in enumerate(found) for place in places),
            key=lambda one: one.option,
        )
    )
    search.consider(best.chosen, Placing(placed, bill(facts, best.chosen, placed)))
    return True


def least_last(search: Search, minutes: int) -> int:
    """The first session by whose end so many person-minutes find room; -1 where there is nothing to do."""
    room = accumulate(sum(row) for row in search.facts.minutes)
    return next((t for t, there in enumerate(room) if there >= minutes), 0) if minutes else -1


def _squeeze(search: Search, *, exact: bool) -> None:
    """The set in hand into fewer sessions, as far as the rules (or, where `exact`, the solver) find a way."""
    if search.best is None:
        return
    least = max(0, least_last(search, search.best.minutes))
    for last in range(least, search.best.placing.last):
        chosen = search.best.chosen
        found = search.placer.quick(chosen, last + 1, search.money)
        if found is None and exact:
            made = search.placer.place(chosen, last + 1, search.money)
            found = made if isinstance(made, Placing) else None
        if found is not None:
            search.consider(chosen, found)
            return


def _nothing(_: Program) -> Terms:
    """No objective: any plan will do."""
    return ()


def first_ids(search: Search) -> Outcome:
    """Of all tied sets, the one that holds the smallest id on which two of them differ."""
    outcome = search.reach("minutes", lambda program: another_set(search, program))
    if outcome != "proven":
        return "proven" if outcome == "none" else "stopped"
    while search.best is not None:
        chosen = search.best.chosen
        outcome = search.reach("minutes", lambda program: earlier_set(search, program))
        if outcome == "none":
            return "proven"
        if outcome == "stopped":
            return "stopped"
        if search.best.chosen == chosen:
            return "stopped"
    return "proven"


def another_set(search: Search, program: Program) -> Terms:
    """A row for any tied set but the one in hand: usually there is none, and that is quickly proven."""
    chosen = search.best.chosen if search.best is not None else frozenset()
    terms = tuple((-1 if one.id in chosen else 1, x(one.id)) for one in search.facts.options)
    program.add([Row("another", terms, ">=", 1 - len(chosen))])
    return ()


def earlier_set(search: Search, program: Program) -> Terms:
    """Rows for a tied set that comes before the one in hand: it first differs at an option that it alone holds.

    `d[id]`: the first difference. Gives the objective: the difference as early as can be.
    """
    best = search.best
    chosen = best.chosen if best is not None else frozenset()
    ids = [one.id for one in search.facts.options]
    later = [f"d[{id}]" for id in ids if id not in chosen]
    for name in later:
        program.binary(name)
    program.add([Row("differs", tuple((1, name) for name in later), "=", 1)])
    seen = 0
    for id in ids:
        if id in chosen:
            terms = (*((1, name) for name in later[seen:]), (-1, x(id)))
            program.add([Row(f"same_{id}", terms, "<=", 0)])
        else:
            terms = (*((1, name) for name in later[seen + 1 :]), (1, x(id)))
            program.add([Row(f"same_{id}", terms, "<=", 1), Row(f"new_{id}", ((1, later[seen]), (-1, x(id))), "<=", 0)])
            seen += 1
    return tuple((index, name) for index, name in enumerate(later))
