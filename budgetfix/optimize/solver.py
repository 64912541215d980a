"""The solver of integer programs: the only module that knows PuLP.

HiGHS through PuLP solves them; only what PuLP 3.3 and 4.x share is used. What holds numbers that are too large for its
tolerances goes through programs in small ones (see `digits`).
"""

from __future__ import annotations

import ctypes
import math
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any, Literal

from budgetfix.optimize import digits
from budgetfix.optimize.program import Program, Row, Solved, Terms, Variable, holds, lp_text

__all__ = ["Engine", "Program", "Row", "Solved", "Terms", "Variable", "holds", "lp_text", "quiet", "run"]
Engine = Literal["highs", "cbc"]
GAP = 0.5
"""All objectives are whole numbers: a gap of half a unit is a proof."""
ASKED_TWICE = 1000
"""Columns up to which "no solution" is asked once more without presolve: HiGHS has said it where there is one, and
has given up with an error of its own where there was nothing hard.
"""
ENDED = frozenset({"kOptimal", "kInfeasible", "kUnboundedOrInfeasible", "kTimeLimit", "kSolutionLimit"})
"""How HiGHS ends when nothing went wrong; the last of them where its nodes are counted."""
NO_RESTART = {"mip_allow_restart": False}
"""Starting over once much is fixed costs more than it brings on these programs: half as long without, on houses."""
FEASIBLE = 2
"""HiGHS's word for a primal solution that holds."""
TIGHT = 1e-9
"""Tolerance of a second try, when the first one's rounding was too coarse for large numbers."""


def run(
    program: Program,
    objective: Terms,
    seconds: float,
    engine: Engine = "highs",
    *,
    tight: bool = False,
    nodes: int | None = None,
) -> Solved:
    """Minimise. `seconds` is the solver's own limit; at 0 or below nothing is tried. `nodes`: HiGHS's, at most."""

    def small(mine: Program, terms: Terms, left: float) -> Solved:
        if left <= 0:
            return Solved("stopped", None, math.inf, -math.inf)
        return _run(mine, terms, left, engine, tight, nodes)

    with quiet():
        if digits.large(program, objective):
            return digits.by_digits(program, objective, seconds, small)
        return small(program, objective, seconds)


def _run(
    program: Program, objective: Terms, seconds: float, engine: Engine, tight: bool, nodes: int | None = None
) -> Solved:
    import pulp

    built = _built(pulp, program, objective)
    if built is None:
        return Solved("infeasible", None, math.inf, math.inf)
    problem, columns = built
    problem.solve(_solver(pulp, seconds, engine, tight, nodes))
    solved = _read(pulp, problem, program, columns, engine)
    if engine == "highs" and len(columns) <= ASKED_TWICE and (solved.status == "infeasible" or _failed(problem)):
        problem.solve(_solver(pulp, seconds, engine, tight, nodes, presolve="off"))
        solved = _read(pulp, problem, program, columns, engine)
    return solved


def _built(pulp: Any, program: Program, objective: Terms) -> tuple[Any, dict[str, Any]] | None:
    """The problem and its columns by name; None where a row without columns does not hold.

    Columns that can only be 0 are left out. PuLP 3.3 sorts columns by name and 4.x does not: with these names both
    hand over the same program, and HiGHS takes the same way through it.
    """
    problem = pulp.LpProblem("budgetfix", pulp.LpMinimize)
    columns: dict[str, Any] = {}
    for name, one in program.variables.items():
        if one.up != 0 or one.low != 0:
            sort = pulp.LpInteger if one.whole else pulp.LpContinuous
            columns[name] = problem.add_variable(f"v{len(columns):07}", one.low, one.up, sort)
    problem.setObjective(_sum(pulp, columns, objective))
    for row in program.rows:
        pairs = _pairs(columns, row.terms)
        if pairs:
            problem += _condition(_made(pulp, pairs), row)
        elif not holds(row):
            return None
    return problem, columns


def _pairs(columns: dict[str, Any], terms: Terms) -> list[tuple[Any, int]]:
    sums: dict[str, int] = {}
    for coefficient, name in terms:
        if name in columns:
            sums[name] = sums.get(name, 0) + coefficient
    return [(columns[name], coefficient) for name, coefficient in sums.items() if coefficient]


def _sum(pulp: Any, columns: dict[str, Any], terms: Terms) -> Any:
    return _made(pulp, _pairs(columns, terms))


def _made(pulp: Any, pairs: list[tuple[Any, int]]) -> Any:
    made = getattr(pulp.LpAffineExpression, "from_list", pulp.LpAffineExpression)  # 4.x names what 3.3 constructs
    return made(pairs)


def _condition(total: Any, row: Row) -> Any:
    if row.sense == "<=":
        return total <= row.right
    return total >= row.right if row.sense == ">=" else total == row.right


def _solver(
    pulp: Any, seconds: float, engine: Engine, tight: bool, nodes: int | None = None, presolve: str | None = None
) -> Any:
    if engine == "cbc":
        return pulp.PULP_CBC_CMD(msg=False, gapRel=0, gapAbs=GAP, threads=1, timeLimit=seconds)
    more: dict[str, object] = (
        {"mip_feasibility_tolerance": TIGHT, "primal_feasibility_tolerance": TIGHT} if tight else {}
    )
    more |= {} if nodes is None else {"mip_max_nodes": nodes}
    more |= {} if presolve is None else {"presolve": presolve}
    return pulp.HiGHS(msg=False, gapRel=0, gapAbs=GAP, threads=1, timeLimit=seconds, **NO_RESTART, **more)


def _read(pulp: Any, problem: Any, program: Program, columns: dict[str, Any], engine: Engine) -> Solved:
    state, found = _cbc_said(pulp, problem) if engine == "cbc" else _highs_said(problem)
    if state == "infeasible":
        return Solved("infeasible", None, math.inf, math.inf, _took(problem, engine))
    values = None
    if found:
        values = dict.fromkeys(program.variables, 0.0)
        values.update((name, float(column.varValue or 0.0)) for name, column in columns.items())
    objective = float(pulp.value(problem.objective) or 0.0) if found else math.inf
    if state == "optimal":
        return Solved("optimal", values, objective, objective - GAP, _took(problem, engine))
    bound = _bound(problem) if engine == "highs" else -math.inf
    return Solved("stopped", values, objective, bound, _took(problem, engine))


def _took(problem: Any, engine: Engine) -> float:
    """Seconds of the solver's own clock; only PuLP 3.3 keeps a time of its own."""
    return float(problem.solverModel.getRunTime() if engine == "highs" else problem.solutionTime)


def _highs_said(problem: Any) -> tuple[str, bool]:
    """What HiGHS itself says, and whether it holds a solution: PuLP 3.3 and 4.x say it in different words."""
    status = problem.solverModel.getModelStatus().name
    found = int(problem.solverModel.getInfo().primal_solution_status) == FEASIBLE
    if status in ("kInfeasible", "kUnboundedOrInfeasible"):
        return "infeasible", False
    return ("optimal" if status == "kOptimal" else "stopped"), found


def _failed(problem: Any) -> bool:
    """Whether HiGHS itself says that it went wrong."""
    return problem.solverModel.getModelStatus().name not in ENDED


def _cbc_said(pulp: Any, problem: Any) -> tuple[str, bool]:
    """The same of CBC, which only PuLP 3.3 ships; it calls what has no solution in whole numbers a status only."""
    state = problem.sol_status
    if state == pulp.LpSolutionInfeasible or problem.status == pulp.LpStatusInfeasible:
        return "infeasible", False
    found = state in (pulp.LpSolutionOptimal, pulp.LpSolutionIntegerFeasible)
    return ("optimal" if state == pulp.LpSolutionOptimal else "stopped"), found


def _bound(problem: Any) -> float:
    bound = float(problem.solverModel.getInfo().mip_dual_bound)
    return bound if math.isfinite(bound) else -math.inf


@contextmanager
def quiet() -> Iterator[None]:
    """Send what native code says on file descriptor 1 nowhere: HiGHS greets even when told to be silent."""
    sys.stdout.flush()
    try:
        kept = os.dup(1)
    except OSError:
        yield
        return
    _flush()
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, 1)
    try:
        yield
    finally:
        _flush()
        os.dup2(kept, 1)
        os.close(kept)
        os.close(nowhere)


def _flush() -> None:
    """Empty the C library's buffers, where there is one to be found."""
    try:
        ctypes.CDLL(None).fflush(None)
    except (AttributeError, OSError, TypeError):
        return
