"""The benchmark of the chooser, on its smallest problems: what it compares is comparable."""

from __future__ import annotations

import time

import pytest

from budgetfix.optimize import solve
from budgetfix.optimize.problem import Answer
from budgetfix.optimize.solver import run
from tests.benchmarks.bare import handed_by
from tests.benchmarks.bench_choice import page
from tests.benchmarks.families import FAMILIES, Shape, made
from tests.benchmarks.figures import Line
from tests.benchmarks.house_jobs import first_program, house_job, names
from tests.benchmarks.part_by_hand import Hand
from tests.benchmarks.part_lazy import GROUPS, PLACES, room
from tests.benchmarks.part_merged import knot, lines_for
from tests.optimize.big import stages

SMALL = tuple(shape for shape in FAMILIES if shape.faults <= 15)


@pytest.mark.parametrize("shape", SMALL, ids=[shape.name for shape in SMALL])
@pytest.mark.slow
def test_each_family_has_one_answer(shape: Shape) -> None:
    """Choose and place reaches what the one big program reaches: hazard points, points and spend."""
    problem = made(shape, 7)
    answer = solve(problem, seconds=60.0, clock=time.monotonic, depth="figures")
    assert isinstance(answer, Answer)
    assert answer.proven
    assert (answer.plan.hazards, answer.plan.points, answer.plan.spent_minor) == stages(problem, 3)


def test_bare_highs_gets_the_very_same_model() -> None:
    """What is caught on the way has the size and the optimum of what went through PuLP."""
    program, objective = first_program(house_job(names(1)[1]).problem)
    handed = handed_by(program, objective)
    solved = run(program, objective, 60.0)
    assert handed.optimum() == pytest.approx(solved.objective)


def test_by_hand_is_never_better() -> None:
    """Best value first leaves at least what the proven plan leaves, and fills most of the way."""
    house = house_job(names(1)[0])
    left = Hand(house.problem).fill()
    assert house.left <= left < house.points - house.best // 2


def test_a_room_of_one_knot() -> None:
    """Six groups of three places; taking every undecided piece away never leaves more than any room."""
    problem, ways = room(0)
    assert sum(one.id in ways.groups for one in problem.options) == GROUPS * PLACES
    tree = problem.trees[0]
    chosen = frozenset({"p0-1"})
    refused = frozenset(id for id in ways.groups if id not in chosen)
    assert tree.bound(chosen, frozenset())[1] <= tree.ask(chosen, refused).points


def test_tables_merged_and_apart_agree() -> None:
    """Four findings over two groups of five: 36 columns merged, 144 apart."""
    assert len(knot(2).trees) == 4
    first, second = lines_for(2)
    assert "36 columns against" in first.measured
    assert "1 table of 4 left" in second.measured


def test_the_page_says_what_was_missed() -> None:
    """Met and missed targets are counted, and what was missed is named at the top."""
    text = page([(3, [Line("a", "≤ 3", "1", True), Line("b", "≤ 3", "4", False), Line("c", "", "5")])], 1.0)
    assert "1 targets met, 1 missed: 3, b." in text
    assert "| b | ≤ 3 | 4 | **missed** |" in text
