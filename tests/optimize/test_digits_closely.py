"""Programs in digits, looked at closely: what is split, what is left as it is, ends of variables, and the clock."""

from __future__ import annotations

import math
from collections.abc import Iterator

import pytest

from budgetfix.optimize.digits import BASE, LARGE, PLACES, by_digits, ends, in_digits, large, number_of
from budgetfix.optimize.program import Program, Row, Solved, Terms, Variable
from budgetfix.optimize.solver import run

M = 10**9


def program(*rows: Row, **up: int | None) -> Program:
    """Whole variables from 0 to these ends, with these rows."""
    made = Program()
    for name, end in up.items():
        made.integer(name, end)
    made.add(rows)
    return made


@pytest.mark.parametrize(
    ("terms", "right", "is_large"),
    [
        (((LARGE, "a"), (-LARGE, "b")), LARGE, False),
        (((LARGE, "a"), (-LARGE, "b")), -LARGE, False),
        (((1, "a"), (LARGE + 1, "b")), 0, True),
        (((-LARGE - 1, "a"), (1, "b")), 0, True),
        (((1, "a"),), LARGE + 1, True),
        (((1, "a"),), -LARGE - 1, True),
    ],
)
def test_what_is_large(terms: Terms, right: int, is_large: bool) -> None:
    """One figure of a row or of the wish beyond a million, on either side of 0, is enough."""
    assert large(program(Row("r", terms, "<=", right), a=1, b=1), ()) is is_large
    assert large(program(a=1, b=1), terms) is (is_large and abs(right) <= LARGE)


@pytest.mark.parametrize(
    ("row", "end"),
    [
        (Row("r", ((3, "x"), (1, "a")), "<=", 20), 6),
        (Row("r", ((3, "x"), (-1, "a")), "<=", 20), 8),
        (Row("r", ((-3, "x"), (1, "a")), ">=", -20), 8),
        (Row("r", ((3, "x"), (1, "a")), "=", 20), 6),
        (Row("r", ((-3, "x"), (-1, "a")), "=", -20), 6),
        (Row("r", ((3, "x"),), "<=", 20.5), 6),
        (Row("r", ((3, "x"),), "<=", -1), 0),
        (Row("r", ((3, "x"),), ">=", 20), None),
        (Row("r", ((-3, "x"),), "<=", 20), None),
    ],
)
def test_the_end_of_a_variable_follows_from_a_row(row: Row, end: int | None) -> None:
    """3 x + a <= 20 leaves x at most 6, 3 x - a <= 20 with a up to 5 at most 8; a row the other way says nothing."""
    assert ends(program(row, x=None, a=5)) == {"x": end, "a": 5}


def test_ends_with_a_lower_end_of_their_own() -> None:
    """A variable from 2 on and a at 4: x + a <= 9 leaves 5; two without an end share what is left, each for itself."""
    made = program(Row("r", ((1, "x"), (1, "a")), "<=", 9), x=None, a=4)
    made.variables["x"] = Variable(2, None, True)
    made.fix("a", 4)
    assert ends(made) == {"x": 5, "a": 4}
    both = program(Row("r", ((1, "x"), (2, "y")), "<=", 9), x=None, y=None)
    assert ends(both) == {"x": 9, "y": 4}
    apart = program(Row("r", ((1, "x"), (-1, "y")), "<=", 9), x=None, y=None)
    assert ends(apart) == {"x": None, "y": None}


def test_only_what_meets_something_large_becomes_whole() -> None:
    """A share in a large row is made whole; in small rows it stays a share, and their rows stay as they are."""
    made = program(Row("money", ((M, "a"), (1, "s")), "<=", 3 * M), Row("small", ((2, "a"), (1, "t")), "<=", 4), a=3)
    made.share("s")
    made.share("t")
    small = in_digits(made, ((1, "t"),))
    whole = {name: one.whole for name, one in small.program.variables.items() if name in ("a", "s", "t")}
    assert whole["a"]
    assert not whole["t"]
    assert Row("small", ((2, "a"), (1, "t")), "<=", 4) in small.program.rows
    assert small.objective == (((1, "t"),),)


def test_a_large_variable_is_split_wherever_it_is() -> None:
    """One up to 10^9 has three digits, the last as small as it can be; a small row with it is written with them."""
    made = program(Row("money", ((M, "x"),), "<=", M * M), Row("tie", ((1, "x"), (-7, "y")), "<=", 0), x=M, y=5)
    small = in_digits(made, ((1, "y"),))
    assert small.split == {"x": ("x.0", "x.1", "x.2")}
    assert [small.program.variables[name].up for name in small.split["x"]] == [BASE - 1, BASE - 1, M // BASE**2]
    assert small.value("x", {"x.0": 1.0, "x.1": 2.0, "x.2": 3.0}) == 1 + 2 * BASE + 3 * BASE**2
    assert small.value("y", {"y": 2.0}) == 2.0


def test_what_stands_beside_a_split_variable_is_whole() -> None:
    """Shares in a small row, or the wish, with what goes into digits, or in a heavy wish, are whole; others are not."""
    light: Terms = ((1, "a"), (1, "t"))
    beside: Terms = ((1, "x"), (1, "t"))
    heavy: Terms = ((1, "a"), (M, "t"))
    for objective, whole in ((light, {"s"}), (beside, {"s", "t"}), (heavy, {"s", "t"})):
        made = program(Row("money", ((M, "x"),), "<=", M * M), Row("tie", ((1, "x"), (-7, "s")), "<=", 0), x=M, a=1)
        for name in ("s", "t"):
            made.variables[name] = Variable(0, 9, False)
        small = in_digits(made, objective)
        assert {name for name in ("s", "t") if small.program.variables[name].whole} == whole
        assert not any(large(small.program, terms) for terms in small.objective)


def test_without_an_end_a_variable_has_all_its_digits() -> None:
    """Nothing says where x ends: six digits."""
    made = program(Row("money", ((-M, "x"), (1, "y")), "<=", -M), x=None, y=1)
    small = in_digits(made, ((1, "x"),))
    assert len(small.split["x"]) == PLACES
    assert {small.program.variables[name].up for name in small.split["x"]} == {BASE - 1}


def test_up_to_the_limit_nothing_is_split() -> None:
    """A variable up to a million in a large row stays one; one more, and it goes into digits."""
    for end, split in ((LARGE, 0), (LARGE + 1, 2)):
        made = program(Row("money", ((LARGE + 1, "x"),), "<=", M * M), x=end)
        assert len(in_digits(made, ((1, "x"),)).split.get("x", ())) == split


@pytest.mark.parametrize(("right", "sense", "kept"), [(-M * M, "<=", -1), (M * M, "<=", 1), (M * M, ">=", -1)])
def test_a_row_whose_columns_fall_out(right: int, sense: str, kept: int) -> None:
    """Anything less itself against something large: no columns are left, and the row holds or does not, as before."""
    made = Program()
    made.integer("x", 3)
    made.add([Row("none", ((M, "x"), (-M, "x")), "<=" if sense == "<=" else ">=", right)])
    assert in_digits(made, ((1, "x"),)).program.rows == [Row("none", (), "<=", kept)]


def test_what_all_figures_share_is_taken_out() -> None:
    """Whole thousands of a row are one thing each: 3,000,000 x + 6,000,000 y <= 13,000,000 is x + 2 y <= 4."""
    made = program(Row("money", ((3 * LARGE, "x"), (6 * LARGE, "y")), "<=", 13 * LARGE), x=3, y=3)
    assert in_digits(made, ((1, "x"),)).program.rows == [Row("money.0", ((1, "x"), (2, "y")), "<=", 4)]


@pytest.mark.parametrize("weight", [M + 1, -M - 1, 2047 * (1 + BASE + BASE**2), -2047 * (1 + BASE + BASE**2)])
@pytest.mark.parametrize("value", [0, 2, 3, 9])
def test_the_digits_of_a_wish_come_to_the_wish(weight: int, value: int) -> None:
    """However much each digit carries over to the next, put together again they are weight times value."""
    small = in_digits(program(x=9), ((weight, "x"),))
    small.program.fix("x", value)
    values = run(small.program, small.objective[0], 20.0).values
    assert values is not None
    digits = [sum(by * round(values[name]) for by, name in terms) for terms in small.objective]
    assert number_of(digits[::-1]) == weight * value
    assert all(0 <= digit < BASE for digit in digits[1:])


def test_a_large_row_with_a_small_side_is_written_anew() -> None:
    """A side of 0 does not make large figures small."""
    made = program(Row("money", ((M, "x"), (-M - 1, "y")), "<=", 0), x=3, y=3)
    assert not large(in_digits(made, ((1, "x"),)).program, ())


@pytest.mark.parametrize(("right", "most"), [(2 * M + 0.5, 1), (2 * M + 1.5, 2)])
def test_a_side_with_a_half_in_it(right: float, most: int) -> None:
    """Things of 10^9 and 10^9 + 1: half a unit under both together leaves room for one of them."""
    made = program(Row("money", ((M, "x"), (M + 1, "y")), "<=", right), x=1, y=1)
    assert run(made, ((-1, "x"), (-1, "y")), 20.0).objective == -most


def test_an_equation_keeps_each_of_its_units() -> None:
    """3 x + y = 3 x 10^12 + 2332 with y no more than 1 leaves one x only, odd in its last digit."""
    made = program(x=2 * 10**12, y=1)
    made.add([Row("equal", ((3, "x"), (1, "y")), "=", 3 * 10**12 + 2332)])
    solved = run(made, ((1, "x"),), 20.0)
    assert solved.values is not None
    assert (solved.values["x"], solved.values["y"]) == (10**12 + 777, 1)


class Said:
    """A solver that says what it is told to, and notes what it was asked."""

    def __init__(self, *answers: Solved) -> None:
        self.answers: Iterator[Solved] = iter(answers)
        self.asked: list[tuple[Terms, float]] = []

    def __call__(self, small: Program, objective: Terms, seconds: float) -> Solved:
        """The next answer, with 0 for what it does not name."""
        self.asked.append((objective, seconds))
        answer = next(self.answers)
        values = None if answer.values is None else dict.fromkeys(small.variables, 0.0) | answer.values
        return Solved(answer.status, values, answer.objective, answer.bound, answer.took)


def wish() -> tuple[Program, Terms]:
    """One thing up to 9 with a weight of 10^9 + 1: an objective of three digits."""
    return program(Row("least", ((1, "x"),), ">=", 2), x=9), ((M + 1, "x"),)


def test_a_clock_that_ends_between_two_digits() -> None:
    """The first digit is proven at 119, the second is not: what is known is 119 times 4096 twice, and its bound."""
    made, objective = wish()
    first = in_digits(made, objective).objective[0]
    carry = first[-1][1]
    top = {name: by for by, name in first}
    found = {"x": 2.0, carry: 1.0}
    reached = sum(by * round(found.get(name, 0)) for name, by in top.items())
    said = Said(Solved("optimal", found, reached, reached, 3.0), Solved("stopped", None, math.inf, 7.2, 4.0))
    solved = by_digits(made, objective, 10.0, said)
    assert [seconds for _, seconds in said.asked] == [10.0, 7.0]
    assert (solved.status, solved.objective, solved.took) == ("stopped", 2 * (M + 1), 7.0)
    assert solved.bound == reached * BASE**2 + 8 * BASE
    assert solved.values is not None
    assert solved.values["x"] == 2.0


def test_a_clock_that_ends_at_once() -> None:
    """Nothing found: no values, and the bound of the first digit if the solver has one."""
    made, objective = wish()
    for bound, known in ((-math.inf, -math.inf), (3.0, 3 * BASE**2)):
        solved = by_digits(made, objective, 5.0, Said(Solved("stopped", None, math.inf, bound, 5.0)))
        assert (solved.status, solved.values, solved.bound, solved.took) == ("stopped", None, known, 5.0)


def test_no_solution_is_said_by_the_first_digit() -> None:
    """Where the first program has none there is none."""
    made, objective = wish()
    none = Solved("infeasible", None, math.inf, math.inf, 1.0)
    assert by_digits(made, objective, 5.0, Said(none)) == none


def test_a_solver_that_contradicts_itself_keeps_what_it_found() -> None:
    """The first digit has a solution, the second program none: that solution stands, unproven."""
    made, objective = wish()
    first = Solved("optimal", {"x": 2.0}, 0.0, 0.0, 1.0)
    solved = by_digits(made, objective, 5.0, Said(first, Solved("infeasible", None, math.inf, math.inf, 1.0)))
    assert (solved.status, solved.objective, solved.bound) == ("stopped", 2 * (M + 1), 0)


def test_a_solution_that_is_not_proven_ends_it() -> None:
    """The first digit is found and not proven: nothing more is asked, and what was found is handed back."""
    made, objective = wish()
    said = Said(Solved("stopped", {"x": 3.0}, 1.0, 0.2, 1.0))
    solved = by_digits(made, objective, 5.0, said)
    assert (solved.status, solved.objective, solved.bound, len(said.asked)) == ("stopped", 3 * (M + 1), BASE**2, 1)


def test_what_all_digits_took() -> None:
    """Three digits of 1, 2 and 3 seconds: each has what is left, and together they took 6."""
    made, objective = wish()
    said = Said(*(Solved("optimal", {"x": 2.0}, 0.0, 0.0, seconds) for seconds in (1.0, 2.0, 3.0)))
    solved = by_digits(made, objective, 10.0, said)
    assert [seconds for _, seconds in said.asked] == [10.0, 9.0, 7.0]
    assert (solved.status, solved.objective, solved.took) == ("optimal", 2 * (M + 1), 6.0)
    assert solved.bound == solved.objective - 0.5


def test_every_bound_is_a_whole_number() -> None:
    """Carries of a row and of a wish end at whole numbers, however large: a fraction would be rounded on its way."""
    made = in_digits(program(Row("r", ((M, "a"), (M + 7, "b")), "<=", 3 * M), a=5, b=9), ((M + 1, "a"), (-3 * M, "b")))
    assert len(made.objective) > 1
    ends_of_all = [end for one in made.program.variables.values() for end in (one.low, one.up) if end is not None]
    assert [end for end in ends_of_all if type(end) is not int] == []
