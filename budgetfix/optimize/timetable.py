"""One chosen set while its steps are being put in order: a timetable that is narrowed wish by wish."""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import dataclass

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.linear import relaxed
from budgetfix.optimize.model import placing
from budgetfix.optimize.placing import given_out
from budgetfix.optimize.problem import Placed
from budgetfix.optimize.solver import Engine, Row, Solved, Terms, run

LARGE = 1500
"""Open places from which on it is quicker to ask for whole numbers in a part of them first."""

NODES = 2000
"""Nodes of branch and bound for one wish about the order of steps; usually there are a handful."""

Ladder = tuple[tuple[int, str], ...]
"""(rank, name of the variable) of each place where a step can stand."""


@dataclass
class Timetable:
    """Places for the steps of one set. `ceiling`: most money for tools; `placed`: a timetable to start from."""

    facts: Facts
    ceiling: int
    placed: tuple[Placed, ...]
    left: Callable[[], float]
    engine: Engine = "highs"

    def __post_init__(self) -> None:
        self.program, self.kinds = placing(self.facts, self.ceiling, grouped=False)
        self.cells = [name for kind in self.kinds for cells in kind.cells for _, _, name in cells]
        self.stand(self.placed)

    def stand(self, placed: tuple[Placed, ...]) -> None:
        """Take a timetable as the one in hand."""
        self.placed = placed
        where = {(one.option, one.step): (one.session, one.people) for one in placed}
        people = self.facts.problem.people
        self.taken = frozenset(
            name
            for kind in self.kinds
            for index, cells in enumerate(kind.cells)
            for t, crew, name in cells
            if where[kind.ids[0], index] == (t, tuple(people[one] for one in crew))
        )

    def least(self, objective: Terms, now: Collection[str]) -> bool:
        """Minimise what depends on the places in `now`. False where the clock, or a count of nodes, stopped it.

        The count stops sets so tight that their order is a bin packing of its own, and at the same place every time.

        A large timetable is first asked for whole numbers in `now` alone; where the rest then finds places, that is
        proven as well, and much sooner.
        """
        solved = self._led(objective, now) or run(self.program, objective, self.left(), self.engine, nodes=NODES)
        if solved.status != "optimal" or solved.values is None:
            return False
        self.stand(given_out(self.facts, self.kinds, solved.values))
        return True

    def _led(self, objective: Terms, now: Collection[str]) -> Solved | None:
        """Whole numbers in `now`, then places for the rest; None where the rest finds none, or is small."""
        rest = [cell for cell in self.cells if cell not in now and not self._known(cell)]
        if len(rest) < LARGE:
            return None
        loose = self.program.copy()
        for cell in rest:
            loose.loosen(cell)
        first = run(loose, objective, self.left(), self.engine, nodes=NODES)
        if first.status != "optimal" or first.values is None:
            return None
        led = self.program.copy()
        for cell in now:
            led.fix(cell, round(first.values[cell]))
        solved = run(led, (), self.left(), self.engine, nodes=NODES)
        return solved if solved.status == "optimal" else None

    def freeze(self, objective: Terms, reached: int, name: str) -> None:
        """An objective stays at what is reached; places that only something worse could take are shut."""
        self.program.add([Row(name, objective, "<=", reached + 0.5)])
        found = relaxed(self.program, objective, self.left()) if self.engine == "highs" else None
        if found is None:
            return
        for cell in self.cells:
            way = found.dearer(cell, reached)
            if way is not None and not self._known(cell):
                self.program.fix(cell, int(way == "down"))

    def _known(self, cell: str) -> bool:
        one = self.program.variables[cell]
        return one.low == one.up

    def rank(self, ladder: Ladder) -> int:
        """The rank of a step as it stands."""
        return next(at for at, cell in ladder if cell in self.taken)

    def least_rank(self, ladder: Ladder) -> int:
        """The least rank that is still open to a step."""
        return min(at for at, cell in ladder if self.program.variables[cell].up != 0)

    def pin(self, ladder: Ladder) -> None:
        """No other rank for a step than the one it has."""
        mine = self.rank(ladder)
        for at, cell in ladder:
            if at != mine:
                self.program.fix(cell, 0)
