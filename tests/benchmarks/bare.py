"""The very same model without PuLP: what HiGHS was handed, caught on the way, and handed to a HiGHS of its own."""

from __future__ import annotations

import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any
from unittest import mock

import highspy
import pulp

from budgetfix.optimize.solver import Program, Terms, run

AT_ONCE, SECONDS = 1e-3, 120.0


@dataclass(frozen=True)
class Handed:
    """One model as it was handed over, with the options of that run."""

    model: Any
    options: Any

    @property
    def size(self) -> tuple[int, int]:
        """(rows, columns)."""
        return self.model.num_row_, self.model.num_col_

    def solved(self) -> float:
        """Seconds that a fresh HiGHS takes from being handed the model to its end."""
        began = time.perf_counter()
        self._run()
        return time.perf_counter() - began

    def optimum(self) -> float:
        """The least value of the objective."""
        return float(self._run().getInfo().objective_function_value)

    def _run(self) -> Any:
        solver: Any = highspy.Highs()  # type: ignore[no-untyped-call]
        solver.passOptions(self.options)
        solver.setOptionValue("time_limit", SECONDS)
        solver.passModel(self.model)
        solver.run()
        assert solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
        return solver


@dataclass
class Caught:
    """Every solve of PuLP's inside a block: (rows, columns, seconds from PuLP to HiGHS and back)."""

    handed: list[Handed] = field(default_factory=list)
    seconds: list[float] = field(default_factory=list)


@contextmanager
def catching(*, models: bool = True) -> Iterator[Caught]:
    """Look over PuLP's shoulder. `models`: keep them, which takes memory."""
    caught = Caught()
    plain = pulp.LpProblem.solve

    def solve(problem: Any, *words: Any, **named: Any) -> Any:
        began = time.perf_counter()
        said = plain(problem, *words, **named)
        caught.seconds.append(time.perf_counter() - began)
        if models:
            live = problem.solverModel
            caught.handed.append(Handed(live.getLp(), live.getOptions()))
        return said

    with mock.patch.object(pulp.LpProblem, "solve", solve):
        yield caught


def handed_by(program: Program, objective: Terms) -> Handed:
    """What HiGHS gets when this program is run; it is stopped at once, since only the model is wanted."""
    with catching() as caught:
        run(program, objective, AT_ONCE)
    return caught.handed[-1]
