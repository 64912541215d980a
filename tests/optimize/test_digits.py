"""Large numbers in digits: the same solutions, and every sum exact to the unit."""

from __future__ import annotations

import math
import random
from itertools import product
from typing import Literal

import pytest

from budgetfix.optimize import digits
from budgetfix.optimize.digits import BASE, LARGE, digits_of, in_digits, number_of
from budgetfix.optimize.program import Program, Row, Terms, Variable
from budgetfix.optimize.solver import run

MILLION_MILLIONS = 10**12


@pytest.mark.parametrize("number", [0, 1, -1, BASE // 2, BASE // 2 + 1, -BASE, 10**12 + 7, -(10**15) + 1])
def test_digits_come_to_the_number_again(number: int) -> None:
    """Each digit is at most half the base, and all of them together are the number."""
    found = digits_of(number)
    assert number_of(found) == number
    assert all(abs(digit) <= BASE // 2 for digit in found)


def random_program(dice: random.Random) -> tuple[Program, Terms]:
    """Six yes or no questions, one row of sums of up to a million millions that is met or missed by one, and a wish."""
    program = Program()
    names = tuple("abcdef")
    costs = [dice.randint(MILLION_MILLIONS // 9, MILLION_MILLIONS) for _ in names]
    for name in names:
        program.binary(name)
    some = [cost for cost in costs if dice.random() < 0.5]
    most = sum(some) + dice.choice((-1, 0, 1))
    sense = dice.choice(("<=", ">="))
    program.add([Row("sum", tuple(zip(costs, names, strict=True)), "<=" if sense == "<=" else ">=", most)])
    sign = -1 if sense == "<=" else 1
    return program, tuple((sign * (10**9 + dice.randint(-2, 2)), name) for name in names)


def best(program: Program, objective: Terms) -> int | None:
    """The least of the objective, by trying everything."""
    (row,) = program.rows
    sums = []
    for answer in product((0, 1), repeat=len(program.variables)):
        given = dict(zip(program.variables, answer, strict=True))
        total = sum(by * given[name] for by, name in row.terms)
        if total <= row.right if row.sense == "<=" else total >= row.right:
            sums.append(sum(by * given[name] for by, name in objective))
    return min(sums, default=None)


def test_the_best_is_exact_against_trying_everything() -> None:
    """Forty programs with sums of 10^12: the objective, its bound and the values are those of all 64 answers."""
    for number in range(40):
        program, objective = random_program(random.Random(f"digits {number}"))
        solved, least = run(program, objective, 20.0), best(program, objective)
        if least is None:
            assert solved.status == "infeasible"
            continue
        assert (solved.status, solved.objective, solved.bound) == ("optimal", least, least - 0.5)
        assert solved.values is not None
        assert sum(by * round(solved.values[name]) for by, name in objective) == least


def test_an_equation_of_large_numbers_holds_to_the_unit() -> None:
    """3 x = 3 x 10^12 + 3 is met by x = 10^12 + 1 and by nothing else; one more on the right has no solution."""
    program = Program()
    program.integer("x", 2 * MILLION_MILLIONS)
    program.add([Row("equal", ((3, "x"),), "=", 3 * MILLION_MILLIONS + 3)])
    solved = run(program, ((1, "x"),), 20.0)
    assert solved.values is not None
    assert solved.values["x"] == MILLION_MILLIONS + 1
    program.add([Row("other", ((3, "x"),), "=", 3 * MILLION_MILLIONS + 4)])
    assert run(program, (), 20.0).status == "infeasible"


def test_what_is_small_is_handed_over_as_it_is() -> None:
    """Up to the limit nothing is rewritten; one more in a row, a side or the objective is."""
    program = Program()
    program.binary("a")
    program.add([Row("row", ((LARGE, "a"),), "<=", LARGE)])
    assert not digits.large(program, ((LARGE, "a"),))
    assert digits.large(program, ((LARGE + 1, "a"),))
    program.add([Row("side", ((1, "a"),), "<=", LARGE + 1)])
    assert digits.large(program, ())


def test_no_number_of_a_program_in_digits_is_large() -> None:
    """Rows, sides, ends and objective are small, so that a solver's tolerance is far from a unit."""
    program, objective = random_program(random.Random("small"))
    made = in_digits(program, objective)
    assert not any(digits.large(made.program, terms) for terms in made.objective)
    assert all(one.up is not None and one.up <= LARGE for one in made.program.variables.values())


def test_without_seconds_there_is_no_solution_and_no_bound() -> None:
    """A clock that ends before the first digit says nothing."""
    program, objective = random_program(random.Random("late"))
    assert run(program, objective, 0.0).status == "stopped"


def test_a_declared_low_holds_in_digits() -> None:
    """Fixed to 3,000,000, or at least 3,000,000 by a bound alone: it is neither 0 nor anything else."""
    for low, up in ((3_000_000, 3_000_000), (3_000_000, 5_000_000), (3_000_000, None)):
        program = Program({"l": Variable(low, up, True), "x": Variable(0, 1, True)})
        program.add([Row("row", ((1, "l"), (2_000_000, "x")), ">=", 2_000_000)])
        solved = run(program, ((1, "l"), (1, "x")), 20.0)
        assert (solved.status, solved.objective) == ("optimal", 3_000_000)
        assert solved.values == {"l": 3_000_000.0, "x": 0.0}


def test_a_declared_end_holds_in_digits() -> None:
    """1,500,000 is no power of the base: the digits could go on to 1,503,231."""
    program = Program()
    program.integer("l", 1_500_000)
    program.binary("x")
    program.add([Row("row", ((1, "l"), (-3_000_000, "x")), "<=", 10_000_000)])
    assert run(program, ((-1, "l"),), 20.0).objective == -1_500_000


def test_an_end_that_digits_cannot_pass_costs_no_row() -> None:
    """At the last number before a power of the base there is no row for the end; one below that there is."""
    for up, told in ((BASE**2 - 1, False), (BASE**2 - 2, True)):
        program = Program()
        program.integer("l", up)
        program.add([Row("row", ((1, "l"), (2_000_000, "x")), ">=", 2_000_000)])
        program.binary("x")
        made = in_digits(program, ((1, "x"),)).program
        assert any(row.name.startswith("up[l]") for row in made.rows) == told


def bounded(dice: random.Random) -> tuple[Program, Terms]:
    """Two yes or no questions and an amount between declared bounds that lie less than 30 apart, in two large rows."""
    program = Program()
    low = dice.choice((0, LARGE + dice.randint(1, 10**9), BASE**2 * dice.randint(1, 50) - dice.randint(0, 20)))
    up = low + dice.randint(0, 29) if low else LARGE + dice.randint(1, 20)
    program.variables["l"] = Variable(low if low else up - dice.randint(0, 20), up, True)
    for name in "xy":
        program.binary(name)
    for number in range(2):
        terms = ((dice.choice((-1, 1, 3)), "l"), *((dice.randint(-(10**7), 10**7), name) for name in "xy"))
        middle = terms[0][0] * up + sum(by for by, _ in terms[1:] if dice.random() < 0.5)
        sense: Literal["<=", ">="] = dice.choice(("<=", ">="))
        program.add([Row(f"row {number}", terms, sense, middle + dice.randint(-25, 25))])
    return program, ((dice.choice((-1, 1)), "l"), (dice.randint(-9, 9), "x"), (dice.randint(-9, 9), "y"))


def counted(program: Program, objective: Terms) -> int | None:
    """The least of the objective over every value of every variable."""
    found = []
    for values in product(*(range(one.low, (one.up or 0) + 1) for one in program.variables.values())):
        given = dict(zip(program.variables, values, strict=True))
        sums = [sum(by * given[name] for by, name in row.terms) for row in program.rows]
        if all(is_kept(row, total) for row, total in zip(program.rows, sums, strict=True)):
            found.append(sum(by * given[name] for by, name in objective))
    return min(found, default=None)


def is_kept(row: Row, total: int) -> bool:
    """Whether a sum stands to the right side as the row says."""
    return total <= row.right if row.sense == "<=" else total >= row.right


def test_declared_bounds_are_exact_against_trying_everything() -> None:
    """Two hundred programs with an amount above a million between declared bounds: every answer was tried."""
    answers = []
    for number in range(200):
        program, objective = bounded(random.Random(f"bounds {number}"))
        solved, least = run(program, objective, 20.0), counted(program, objective)
        assert (solved.status, solved.objective) == (
            ("infeasible", math.inf) if least is None else ("optimal", least)
        ), f"bounds {number}"
        answers.append(least)
    assert 20 < answers.count(None) < 150
