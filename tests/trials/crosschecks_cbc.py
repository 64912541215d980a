"""The command with CBC in place of HiGHS: `python -m tests.trials.crosschecks_cbc plan JOB ...`.

HiGHS cannot even be loaded here. CBC, which PuLP 3.3 ships, answers whole-number programs and linear relaxations both;
the bound of a relaxation is put together from CBC's prices as the tool does it from those of HiGHS.
"""

from __future__ import annotations

import math
import sys
from collections.abc import Iterable
from typing import Any

from budgetfix.cli import main
from budgetfix.optimize import linear, solver
from budgetfix.optimize.linear import NOTHING, SAFE, SAFE_SHARE, Relaxed
from budgetfix.optimize.solver import GAP, Program, Solved, Terms


def whole(
    program: Program, objective: Terms, seconds: float, engine: str, tight: bool, nodes: int | None = None
) -> Solved:
    """A whole-number program by CBC, whoever was asked for."""
    del engine, tight, nodes
    import pulp

    built = solver._built(pulp, program, objective)
    if built is None:
        return Solved("infeasible", None, math.inf, math.inf)
    problem, columns = built
    problem.solve(pulp.PULP_CBC_CMD(msg=False, gapRel=0, gapAbs=GAP, threads=1, timeLimit=seconds))
    return solver._read(pulp, problem, program, columns, "cbc")


def linear_program(program: Program, objective: Terms, seconds: float) -> tuple[Any, dict[str, Any]] | None:
    """The program without whole numbers, solved; None where it has no solution."""
    import pulp

    loose = program.copy()
    for name in program.variables:
        loose.loosen(name)
    built = solver._built(pulp, loose, objective)
    if built is None:
        return None
    built[0].solve(pulp.PULP_CBC_CMD(msg=False, threads=1, timeLimit=seconds, mip=False))
    return built if built[0].sol_status == pulp.LpSolutionOptimal else None


def relaxed(program: Program, objective: Terms, seconds: float) -> Relaxed | None:
    """A linear relaxation by CBC."""
    solved = linear_program(program, objective, seconds)
    if solved is None:
        return None
    problem, columns = solved
    names = {str(column.name): name for name, column in columns.items()}
    costs = dict.fromkeys(columns, 0.0)
    for coefficient, name in objective:
        if name in costs:
            costs[name] += coefficient
    bound = 0.0
    for row in problem.constraints.values():
        price = _signed(float(row.pi or 0.0), row.sense)
        bound -= price * row.constant
        for column, coefficient in row.items():
            costs[names[str(column.name)]] -= price * coefficient
    for name, price in costs.items():
        one = program.variables[name]
        end = one.low if price >= 0 else one.up
        bound += 0.0 if abs(price) < NOTHING else -math.inf if end is None else price * end
    return Relaxed(bound, costs, {name: float(column.varValue or 0.0) for name, column in columns.items()})


def _signed(price: float, sense: int) -> float:
    """A price on the side of its row on which it can only make the bound smaller."""
    return min(0.0, price) if sense < 0 else max(0.0, price) if sense > 0 else price


def relaxed_with(program: Program, objective: Terms, wanted: Iterable[str], seconds: float) -> dict[str, float]:
    """Floors of the objective with one variable after the other at 1, by CBC."""
    found = {}
    for name in wanted:
        held = program.copy()
        if program.variables[name].up == 0:
            found[name] = math.inf
            continue
        held.fix(name, 1)
        solved = relaxed(held, objective, seconds)
        bound = math.inf if solved is None else solved.bound
        found[name] = bound - SAFE - SAFE_SHARE * abs(bound) if solved is not None else math.inf
    return found


def without_highs() -> None:
    """From here on CBC answers everything, and loading HiGHS is an error."""
    sys.modules["highspy"] = None  # type: ignore[assignment]
    solver._run = whole
    linear._relaxed = relaxed
    linear._relaxed_with = relaxed_with


if __name__ == "__main__":
    without_highs()
    main()
