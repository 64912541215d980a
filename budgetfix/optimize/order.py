"""The last wish for a chosen set: most worth early, then steps by id to the earliest session, then the first people."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth, value
from budgetfix.optimize.model import placing
from budgetfix.optimize.place_rows import Kind
from budgetfix.optimize.placing import Placing, given_out
from budgetfix.optimize.recount import bill
from budgetfix.optimize.solver import Engine, Program, Row, Solved, Terms, run
from budgetfix.optimize.wishes import Held

HEAVIEST = 2**20
"""Largest weight in one objective: beyond it a solver's tolerances blur whole numbers."""


def worth(facts: Facts, growth: Growth, chosen: frozenset[str]) -> dict[str, tuple[int, int]]:
    """(hazard points, points) that would come back if an option alone were dropped, never below 0."""
    hazards, points = value(growth, chosen)
    found = {}
    for id in sorted(chosen):
        more = value(growth, chosen - {id})
        back = (max(0, more[0] - hazards), max(0, more[1] - points))
        both = max(0, sum(more) - hazards - points)
        found[id] = back if facts.problem.hazards_first else (0, both)
    return found


@dataclass
class Ordering:
    """One chosen set while its steps are being put in order."""

    facts: Facts
    held: Held
    left: Callable[[], float]
    engine: Engine

    def __post_init__(self) -> None:
        rest = bill(self.facts, self.held.chosen, ()).spent_minor - _least_tools(self.facts)
        self.program, self.kinds = placing(self.facts, self.held.placing.bill.spent_minor - rest, grouped=False)
        self.placed = self.held.placing.placed
        self.frozen = 0

    def least(self, objective: Terms, name: str) -> bool:
        """Minimise and freeze; False where the clock stopped it."""
        if not objective:
            return True
        solved = run(self.program, objective, self.left(), self.engine)
        if solved.status != "optimal" or solved.values is None:
            return False
        self._keep(solved)
        reached = sum(by * round(solved.values[name_]) for by, name_ in objective)
        self.program.add([Row(f"{name}_{self.frozen}", objective, "<=", reached + 0.5)])
        self.frozen += 1
        return True

    def _keep(self, solved: Solved) -> None:
        if solved.values is not None:
            self.placed = given_out(self.facts, self.kinds, solved.values)


def _least_tools(facts: Facts) -> int:
    return sum(
        min(price for price in (tool.buy_minor, tool.hire_minor) if price is not None) for tool in facts.tools.values()
    )


def ordered(
    facts: Facts, growth: Growth, best: Held, left: Callable[[], float], engine: Engine
) -> tuple[Placing, bool]:
    """The placing of a set within its last session and its money, and whether the clock let it finish."""
    if not facts.horizon or best.placing.last < 0:
        return best.placing, True
    mine = facts.only(best.chosen).within(best.placing.last + 1)
    ordering = Ordering(mine, best, left, engine)
    done = _most_worth_early(ordering, worth(facts, growth, best.chosen))
    done = done and _steps_early(ordering) and _first_people(ordering)
    placed = ordering.placed
    return Placing(placed, bill(mine, best.chosen, placed)), done


def _most_worth_early(ordering: Ordering, worths: dict[str, tuple[int, int]]) -> bool:
    """Running totals of worth over the sessions, each as large as can be, the first session first."""
    for session in range(ordering.facts.horizon - 1):
        for part in (0, 1):
            terms = tuple(
                (-worths[kind.ids[0]][part], name)
                for kind in ordering.kinds
                for t, _, name in kind.cells[-1]
                if t <= session and worths[kind.ids[0]][part]
            )
            if not ordering.least(terms, "worth"):
                return False
    return True


def _steps_early(ordering: Ordering) -> bool:
    """Steps in the order of ids, each to the earliest session that what came before leaves it."""
    return _in_order(ordering, ordering.facts.horizon, lambda t, _: t, "early")


def _first_people(ordering: Ordering) -> bool:
    """Steps in the order of ids, each done by the first who can."""
    widest = max((len(ordering.facts.crews(step)) for kind in ordering.kinds for step in kind.steps), default=1)
    return _in_order(ordering, widest, lambda _, crew: crew, "people")


def _in_order(ordering: Ordering, ranks: int, rank: Callable[[int, int], int], name: str) -> bool:
    """Ranks of all steps as one number of many digits, a block of digits at a time."""
    steps = [
        (kind, index) for kind in sorted(ordering.kinds, key=lambda kind: kind.ids) for index in range(len(kind.steps))
    ]
    if ranks < 2:
        return True
    block = 1
    while ranks ** (block + 1) <= HEAVIEST:
        block += 1
    open_steps = [
        step for step in steps if len({_rank(ordering, step, cell, rank) for cell in step[0].cells[step[1]]}) > 1
    ]
    for start in range(0, len(open_steps), block):
        part = open_steps[start : start + block]
        terms = tuple(
            (ranks ** (len(part) - 1 - place) * _rank(ordering, step, cell, rank), cell[2])
            for place, step in enumerate(part)
            for cell in step[0].cells[step[1]]
            if _rank(ordering, step, cell, rank)
        )
        if not ordering.least(terms, name):
            return False
    return True


def _rank(
    ordering: Ordering, step: tuple[Kind, int], cell: tuple[int, tuple[int, ...], str], rank: Callable[[int, int], int]
) -> int:
    crews = ordering.facts.crews(step[0].steps[step[1]])
    return rank(cell[0], crews.index(cell[1]))


__all__ = ["Ordering", "Program", "ordered", "worth"]
