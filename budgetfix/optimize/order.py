"""The last wish for a chosen set: most worth early, then steps by id to the earliest session, then the first people."""

from __future__ import annotations

from collections.abc import Callable

from budgetfix.optimize.buying import billed
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth, value
from budgetfix.optimize.place_rows import Kind, worth_in
from budgetfix.optimize.placing import Placing
from budgetfix.optimize.recount import SolverDisagrees, bill
from budgetfix.optimize.solver import Engine
from budgetfix.optimize.timetable import Ladder, Timetable
from budgetfix.optimize.wishes import Held

HEAVIEST = 2**20
"""Largest weight in one objective: beyond it a solver's tolerances blur whole numbers."""
Worths = dict[str, tuple[int, int]]
"""(hazard points, points) by option."""


def worth(facts: Facts, growth: Growth, chosen: frozenset[str]) -> Worths:
    """(hazard points, points) that would come back if an option alone were dropped, never below 0."""
    hazards, points = value(growth, chosen)
    found = {}
    for id in sorted(chosen):
        more = value(growth, chosen - {id})
        back = (max(0, more[0] - hazards), max(0, more[1] - points))
        both = max(0, sum(more) - hazards - points)
        found[id] = back if facts.problem.hazards_first else (0, both)
    return found


def ordered(
    facts: Facts, growth: Growth, best: Held, left: Callable[[], float], engine: Engine
) -> tuple[Placing, bool]:
    """The placing of a set within its last session and its money, and whether the clock let it finish."""
    if not facts.horizon or best.placing.last < 0:
        return best.placing, True
    mine = facts.only(best.chosen).within(best.placing.last + 1)
    rest = 0 if facts.phases else bill(mine, best.chosen, ()).spent_minor - _least_tools(mine)
    timetable = Timetable(mine, best.placing.bill.spent_minor - rest, best.placing.placed, left, engine)
    done = _most_worth_early(timetable, worth(facts, growth, best.chosen))
    done = done and _steps_early(timetable) and _first_people(timetable)
    cost = billed(mine, best.chosen, timetable.placed, engine)
    if cost is None:
        raise SolverDisagrees(f"{sorted(best.chosen)} cannot be bought in its order")
    return Placing(timetable.placed, cost), done


def _least_tools(facts: Facts) -> int:
    return sum(tool.least_minor or 0 for tool in facts.tools.values())


def _most_worth_early(timetable: Timetable, worths: Worths) -> bool:
    """Running totals of worth over the sessions, each as large as can be, the first session first."""
    totals = [sum(back[part] for back in worths.values()) for part in (0, 1)]
    for session in range(timetable.facts.horizon - 1):
        for part in (0, 1):
            if totals[part] and not _running_total(timetable, worths, session, part):
                return False
    return True


def _running_total(timetable: Timetable, worths: Worths, session: int, part: int) -> bool:
    """The worth done by the end of one session, as large as can be, and no less from here on."""
    mine = {id: back[part] for id, back in worths.items() if back[part]}
    name = f"w[{session},{part}]"
    timetable.program.share(name)
    timetable.program.add([worth_in(timetable.kinds, mine, session, name)])
    objective = tuple((-1, f"w[{t},{part}]") for t in range(session + 1))
    now = {cell for kind in timetable.kinds for cells in kind.cells for t, _, cell in cells if t <= session}
    if not timetable.least(objective, now):
        return False
    ends = {one.option: one.session for one in timetable.placed if one.session is not None}
    reached = sum(back for id, back in mine.items() if id in ends and ends[id] <= session)
    timetable.freeze(objective, -reached, f"worth_{session}_{part}")
    return True


def _steps_early(timetable: Timetable) -> bool:
    """Steps in the order of ids, each to the earliest session that what came before leaves it."""
    return _in_order(timetable, timetable.facts.horizon, lambda t, _: t)


def _first_people(timetable: Timetable) -> bool:
    """Steps in the order of ids, each done by the first who can."""
    widest = max((len(timetable.facts.crews(step)) for kind in timetable.kinds for step in kind.steps), default=1)
    return _in_order(timetable, widest, lambda _, crew: crew)


def _in_order(timetable: Timetable, ranks: int, rank: Callable[[int, int], int]) -> bool:
    """Ranks of all steps as one number of many digits, a block of digits at a time; known digits are pinned."""
    if ranks < 2:
        return True
    block = 1
    while ranks ** (block + 1) <= HEAVIEST:
        block += 1
    steps = [(kind, index) for kind in timetable.kinds for index in range(len(kind.steps))]
    ladders = [_ladder(timetable, kind, index, rank) for kind, index in sorted(steps, key=lambda one: one[0].ids)]
    waiting = [ladder for ladder in ladders if len({at for at, _ in ladder}) > 1]
    for start in range(0, len(waiting), block):
        part = waiting[start : start + block]
        if any(timetable.rank(ladder) > timetable.least_rank(ladder) for ladder in part):
            terms = tuple(
                (ranks ** (len(part) - 1 - place) * at, cell)
                for place, ladder in enumerate(part)
                for at, cell in ladder
                if at
            )
            if not timetable.least(terms, {cell for ladder in part for _, cell in ladder}):
                return False
        for ladder in part:
            timetable.pin(ladder)
    return True


def _ladder(timetable: Timetable, kind: Kind, index: int, rank: Callable[[int, int], int]) -> Ladder:
    """Where one step can stand, with the rank of each place."""
    crews = timetable.facts.crews(kind.steps[index])
    return tuple((rank(t, crews.index(crew)), name) for t, crew, name in kind.cells[index])
