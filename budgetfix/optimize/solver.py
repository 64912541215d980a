"""One integer program and its solver: the only module that knows PuLP.

A `Program` is plain data (variables by name, rows of whole numbers), so that it can be read as `.lp` text
without any solver. HiGHS through PuLP solves it; only what PuLP 3.3 and 4.x share is used.
"""

from __future__ import annotations

import ctypes
import math
import os
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any, Literal

Terms = tuple[tuple[int, str], ...]
Engine = Literal["highs", "cbc"]
GAP = 0.5
"""All objectives are whole numbers: a gap of half a unit is a proof."""
ASKED_TWICE = 1000
"""Columns up to which "no solution" is asked once more without presolve: HiGHS has said it where there is one."""
NO_RESTART = {"mip_allow_restart": False}
"""Starting over once much is fixed costs more than it brings on these programs: half as long without, on houses."""
FEASIBLE = 2
"""HiGHS's word for a primal solution that holds."""
TIGHT = 1e-9
"""Tolerance of a second try, when the first one's rounding was too coarse for large numbers."""


@dataclass(frozen=True, slots=True)
class Variable:
    """A column between two bounds; whole numbers only, or anything between."""

    low: int
    up: int | None
    whole: bool


@dataclass(frozen=True, slots=True)
class Row:
    """One condition: the sum of coefficient x variable stands in `sense` to `right`."""

    name: str
    terms: Terms
    sense: Literal["<=", ">=", "="]
    right: float


@dataclass
class Program:
    """Variables by name and rows, all of whole numbers; every objective is minimised."""

    variables: dict[str, Variable] = field(default_factory=dict)
    rows: list[Row] = field(default_factory=list)

    def binary(self, name: str) -> None:
        """A yes or no."""
        self.variables.setdefault(name, Variable(0, 1, True))

    def integer(self, name: str, up: int | None = None) -> None:
        """A whole number from 0 on."""
        self.variables.setdefault(name, Variable(0, up, True))

    def share(self, name: str) -> None:
        """A number from 0 on that need not be whole."""
        self.variables.setdefault(name, Variable(0, None, False))

    def fix(self, name: str, value: int) -> None:
        """Pin a variable to one value."""
        self.variables[name] = Variable(value, value, self.variables[name].whole)

    def loosen(self, name: str) -> None:
        """A variable need no longer be whole."""
        one = self.variables[name]
        self.variables[name] = Variable(one.low, one.up, False)

    def add(self, rows: Iterable[Row]) -> None:
        """Take in more rows."""
        self.rows.extend(rows)

    def copy(self) -> Program:
        """Another program with the same rows, to be added to."""
        return Program(dict(self.variables), list(self.rows))


@dataclass(frozen=True, slots=True)
class Solved:
    """What came out. `values` None: no solution known. `bound`: no solution has a smaller objective."""

    status: Literal["optimal", "infeasible", "stopped"]
    values: dict[str, float] | None
    objective: float
    bound: float


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
    if seconds <= 0:
        return Solved("stopped", None, math.inf, -math.inf)
    with quiet():
        return _run(program, objective, seconds, engine, tight, nodes)


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
    if solved.status == "infeasible" and engine == "highs" and len(columns) <= ASKED_TWICE:
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


def holds(row: Row) -> bool:
    """Whether a row without columns holds."""
    return {"<=": row.right >= 0, ">=": row.right <= 0, "=": row.right == 0}[row.sense]


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
        return Solved("infeasible", None, math.inf, math.inf)
    values = None
    if found:
        values = dict.fromkeys(program.variables, 0.0)
        values.update((name, float(column.varValue or 0.0)) for name, column in columns.items())
    objective = float(pulp.value(problem.objective) or 0.0) if found else math.inf
    if state == "optimal":
        return Solved("optimal", values, objective, objective - GAP)
    return Solved("stopped", values, objective, _bound(problem) if engine == "highs" else -math.inf)


def _highs_said(problem: Any) -> tuple[str, bool]:
    """What HiGHS itself says, and whether it holds a solution: PuLP 3.3 and 4.x say it in different words."""
    status = problem.solverModel.getModelStatus().name
    found = int(problem.solverModel.getInfo().primal_solution_status) == FEASIBLE
    if status in ("kInfeasible", "kUnboundedOrInfeasible"):
        return "infeasible", False
    return ("optimal" if status == "kOptimal" else "stopped"), found


def _cbc_said(pulp: Any, problem: Any) -> tuple[str, bool]:
    """The same of CBC, which only PuLP 3.3 ships."""
    state = problem.sol_status
    if state == pulp.LpSolutionInfeasible:
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


def lp_text(program: Program, objective: Terms = ()) -> str:
    """The program in the `.lp` format, in the order in which it was built."""
    lines = ["Minimize", f" obj: {_words(objective) or '0'}", "Subject To"]
    lines += [f" {row.name}: {_words(row.terms) or '0'} {row.sense} {row.right:g}" for row in program.rows]
    lines += ["Bounds"]
    for name, one in program.variables.items():
        lines.append(f" {one.low} <= {name}" + ("" if one.up is None else f" <= {one.up}"))
    lines += ["Generals", *(f" {name}" for name, one in program.variables.items() if one.whole), "End"]
    return "\n".join(lines) + "\n"


def _words(terms: Terms) -> str:
    words = ""
    for coefficient, name in terms:
        sign = "-" if coefficient < 0 else "+"
        size = "" if abs(coefficient) == 1 else f"{abs(coefficient)} "
        words += f" {sign} {size}{name}" if words else f"{'-' if coefficient < 0 else ''}{size}{name}"
    return words
