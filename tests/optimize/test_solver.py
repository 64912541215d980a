"""The thin wrapper around the solver: statuses, silence, and text."""

from __future__ import annotations

import json
import math
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from budgetfix.optimize import SolverDisagrees, solve, solver
from budgetfix.optimize.facts import Facts, with_needs
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.merging import merged
from budgetfix.optimize.problem import Answer, Extra, Option, Problem
from budgetfix.optimize.solver import Engine, Program, Row, Solved, Terms, Variable, lp_text, run
from budgetfix.optimize.start import least
from budgetfix.optimize.worth_rows import families
from tests.optimize.worlds import points_problem, still, table_tree


def knapsack() -> Program:
    """Two of three things fit."""
    program = Program()
    for name in "abc":
        program.binary(name)
    program.add([Row("room", ((1, "a"), (1, "b"), (1, "c")), "<=", 2)])
    return program


def test_an_optimum_with_its_bound() -> None:
    """The best two are found, and the bound says that no better pair exists."""
    solved = run(knapsack(), ((-3, "a"), (-2, "b"), (-1, "c")), 10.0)
    assert (solved.status, round(solved.objective)) == ("optimal", -5)
    assert -5.5 - 1e-6 <= solved.bound <= -5 + 1e-6
    assert solved.values is not None
    assert [round(solved.values[name]) for name in "abc"] == [1, 1, 0]


def test_what_cannot_be_is_infeasible() -> None:
    """Three of three do not fit, not even with nothing to gain; a row without variables counts too."""
    program = knapsack()
    for name in "abc":
        program.fix(name, 1)
    assert run(program, (), 10.0).status == "infeasible"
    empty = knapsack()
    empty.add([Row("never", (), ">=", 1)])
    assert run(empty, (), 10.0).status == "infeasible"


@pytest.mark.parametrize("engine", ["highs", "cbc"])
def test_what_cannot_be_in_whole_numbers_is_infeasible(engine: Engine) -> None:
    """Half of each of two would do, but neither whole."""
    program = Program()
    for name in "ab":
        program.binary(name)
    program.add([Row("half", ((2, "a"), (2, "b")), "=", 1), Row("both", ((1, "a"), (-1, "b")), "<=", 0)])
    if engine == "cbc":
        cbc = pytest.importorskip("pulp").__dict__.get("PULP_CBC_CMD")
        if cbc is None or not cbc(msg=False).available():
            pytest.skip("NOT RUN: this PuLP ships no CBC")
    assert run(program, ((1, "a"),), 10.0, engine).status == "infeasible"


def test_without_seconds_nothing_is_tried() -> None:
    """A clock that has run out stops before the solver starts."""
    solved = run(knapsack(), (), 0.0)
    assert (solved.status, solved.values) == ("stopped", None)


def test_the_solver_is_silent(capfd: pytest.CaptureFixture[str]) -> None:
    """Nothing that native code says reaches file descriptor 1; what was there before still works."""
    run(knapsack(), ((-1, "a"),), 10.0)
    os.write(1, b"mine\n")
    assert capfd.readouterr().out == "mine\n"


def test_importing_the_package_loads_no_solver() -> None:
    """Types and lazily given names do not bring PuLP along."""
    words = "import sys, budgetfix.optimize.problem, budgetfix.optimize; print('pulp' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", words], capture_output=True, text=True, check=True)
    assert done.stdout == "False\n"


def test_text_of_a_program() -> None:
    """Objective, rows, bounds and whole numbers, one a line."""
    program = Program()
    program.integer("q", 4)
    program.share("l")
    program.add([Row("r", ((2, "q"), (-1, "l")), ">=", -1)])
    assert lp_text(program, ((-1, "q"),)) == (
        "Minimize\n obj: -q\nSubject To\n r: 2 q - l >= -1\nBounds\n 0 <= q <= 4\n 0 <= l\nGenerals\n q\nEnd\n"
    )


def test_merged_families_hold_both_sums() -> None:
    """Two trees over the same two options become one with four leaves, each the sum of both."""
    options = (Option("a"), Option("b"))
    both = {frozenset(ids): (0, 10 - len(ids)) for ids in ((), ("a",), ("b",), ("a", "b"))}
    one = {frozenset[str](): (5, 0), frozenset({"a"}): (0, 0)}
    trees = (table_tree("both", options, both, ("a", "b")), table_tree("one", options, one, ("a",)))
    problem = Problem(options, trees)
    growth = Growth(problem)
    growth.grow_up_front(frozenset("ab"))
    facts = Facts.of(problem)
    (family,) = merged(facts, families(facts, growth))
    assert {leaf.chosen: (leaf.hazards, leaf.points) for leaf in family.leaves} == {
        frozenset(): (5, 10),
        frozenset("a"): (0, 9),
        frozenset("b"): (5, 9),
        frozenset("ab"): (0, 8),
    }
    assert len(merged(facts, families(facts, growth), most=3)) == 2


def test_the_least_that_must_be() -> None:
    """Of a must the cheapest member, with all that it needs."""
    options = (
        Option("a", cost_minor=9),
        Option("b", cost_minor=5, needs=("c",)),
        Option("c", needs=("d",)),
        Option("d"),
    )
    facts = Facts.of(Problem(options, must=(("a", "b"),)))
    assert with_needs(facts, "b") == frozenset("bcd")
    assert least(facts, Extra(), lambda one: (one.cost_minor, 0)) == frozenset("bcd")


def test_a_solver_that_lies_is_found_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """Two options of one group claimed together: counted again, asked once more, and refused."""
    options = (Option("a", "wall", cost_minor=1), Option("b", "wall", cost_minor=1))
    lie = Solved("optimal", {"x[a]": 1.0, "x[b]": 1.0}, 0.0, -0.5)
    monkeypatch.setattr("budgetfix.optimize.search.run", lambda *_, **__: lie)
    with pytest.raises(SolverDisagrees, match="a against b"):
        solve(points_problem(options, {"a": 5, "b": 4}), clock=still)


def test_columns_are_handed_over_in_the_order_of_their_making(monkeypatch: pytest.MonkeyPatch) -> None:
    """PuLP 3.3 sorts columns by name: a hundred and more of them still come in the order in which they were made."""
    import pulp

    seen: list[list[str]] = []
    solve_it = pulp.LpProblem.solve

    def listening(problem: pulp.LpProblem, *more: object) -> object:
        seen.append([str(column.name) for column in problem.variables()])
        return solve_it(problem, *more)

    monkeypatch.setattr(pulp.LpProblem, "solve", listening)
    program = Program()
    for index in range(120):
        program.binary(f"x{index}")
    program.add([Row("last_first", tuple((1, f"x{index}") for index in reversed(range(120))), ">=", 1)])
    assert run(program, ((1, "x119"),), 10.0).status == "optimal"
    assert len(seen[0]) == 120
    assert seen[0] == sorted(seen[0])
    assert [int(name[1:]) for name in seen[0]] == list(range(120))


@pytest.mark.parametrize(("file", "least"), [("said_infeasible.json", 313), ("gave_up.json", 12)])
def test_a_no_of_the_presolve_is_asked_once_more(file: str, least: int) -> None:
    """Programs with a solution that HiGHS 1.x calls infeasible, or gives up with an error, as soon as it presolves."""
    typed = json.loads(Path(__file__).with_name(file).read_text(encoding="utf-8"))
    program = Program()
    for name, low, up, whole in typed["variables"]:
        program.variables[name] = Variable(low, up, whole)
    program.add(
        Row(name, tuple((by, of) for by, of in terms), sense, right) for name, terms, sense, right in typed["rows"]
    )
    found = run(program, tuple((by, of) for by, of in typed["objective"]), 20.0)
    assert (found.status, round(found.objective)) == ("optimal", least)


def test_a_solver_that_went_wrong_is_asked_once_more(monkeypatch: pytest.MonkeyPatch) -> None:
    """It says at first that it failed, and nothing else: the second answer counts."""
    read, told = solver._read, list[Solved]()

    def at_first_nothing(*asked: Any) -> Solved:
        told.append(read(*asked))
        return told[-1] if len(told) > 1 else Solved("stopped", None, math.inf, -math.inf)

    monkeypatch.setattr(solver, "_read", at_first_nothing)
    monkeypatch.setattr(solver, "_failed", lambda _: True)
    solved = run(knapsack(), ((-3, "a"), (-2, "b"), (-1, "c")), 10.0)
    assert (solved.status, round(solved.objective), len(told)) == ("optimal", -5, 2)


def test_coarse_tolerances_are_not_the_last_word(monkeypatch: pytest.MonkeyPatch) -> None:
    """A set that breaks a ceiling, as sums of millions can within tolerances: asked again with finer ones."""
    options = tuple(Option(id, cost_minor=cost) for id, cost in (("a", 300), ("b", 500)))
    problem = points_problem(options, {"a": 1_000_000, "b": 2_000_000})
    honest, asked = run, list[bool]()

    def blurred(program: Program, objective: Terms, seconds: float, engine: Engine, **more: bool) -> Solved:
        asked.append(more.get("tight", False))
        found = honest(program, objective, seconds, engine, tight=asked[-1])
        if asked[-1] or found.values is None:
            return found
        return Solved("optimal", {**found.values, "x[a]": 1.0, "x[b]": 0.0}, found.objective, found.bound)

    monkeypatch.setattr("budgetfix.optimize.search.run", blurred)
    answer = solve(problem, clock=still, extra=Extra(points_at_most=1_000_000, spend_first=True))
    assert isinstance(answer, Answer)
    assert answer.plan.chosen == ("b",)
    assert asked[:2] == [False, True]


def test_times_are_read_without_what_only_one_line_of_pulp_has(monkeypatch: pytest.MonkeyPatch) -> None:
    """PuLP 4 keeps no time of a solve: it comes from HiGHS, also where there is no solution."""
    import pulp

    solve_it = pulp.LpProblem.solve

    def bare(problem: pulp.LpProblem, *more: object) -> object:
        status = solve_it(problem, *more)
        for name in ("solutionTime", "solutionCpuTime"):
            vars(problem).pop(name, None)
        return status

    monkeypatch.setattr(pulp.LpProblem, "solve", bare)
    assert run(knapsack(), ((-3, "a"),), 10.0).took > 0
    full = knapsack()
    for name in "abc":
        full.fix(name, 1)
    none = run(full, (), 10.0)
    assert (none.status, none.took >= 0) == ("infeasible", True)
