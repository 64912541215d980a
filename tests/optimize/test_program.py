"""Programs as plain data."""

from __future__ import annotations

from budgetfix.optimize.program import Program, Row, Solved, Variable, holds, lp_text


def test_a_copy_is_added_to_alone() -> None:
    """Rows and variables that come to a copy do not come to the program that it was made of."""
    program = Program()
    program.binary("a")
    other = program.copy()
    other.integer("b", 3)
    other.add([Row("row", ((2, "a"), (-1, "b")), "<=", 4)])
    assert (list(program.variables), program.rows) == (["a"], [])
    assert " row: 2 a - b <= 4" in lp_text(other)


def test_a_row_without_columns_holds_or_does_not() -> None:
    """0 is at most 0, is no less than 0, and equals 0 alone."""
    assert [holds(Row("r", (), "<=", right)) for right in (-1, 0, 1)] == [False, True, True]
    assert [holds(Row("r", (), ">=", right)) for right in (-1, 0, 1)] == [True, True, False]
    assert [holds(Row("r", (), "=", right)) for right in (-1, 0, 1)] == [False, True, False]


def test_what_each_sort_of_variable_may_be() -> None:
    """A yes or no, a whole number with and without an end, a share; the first word about a name holds."""
    program = Program()
    program.binary("yes")
    program.integer("count", 3)
    program.integer("open")
    program.share("part")
    for told_again in (program.share, program.binary, program.integer):
        for name in ("yes", "count", "open", "part"):
            told_again(name)
    assert program.variables == {
        "yes": Variable(0, 1, True),
        "count": Variable(0, 3, True),
        "open": Variable(0, None, True),
        "part": Variable(0, None, False),
    }


def test_pinned_and_loosened() -> None:
    """A pinned variable has one value and stays what it was; a loosened one keeps its ends and need not be whole."""
    program = Program()
    program.integer("count", 3)
    program.share("part")
    program.fix("part", 2)
    program.loosen("count")
    assert program.variables == {"part": Variable(2, 2, False), "count": Variable(0, 3, False)}
    program.fix("count", 1)
    assert program.variables["count"] == Variable(1, 1, False)


def test_the_text_of_a_program() -> None:
    """Signs, figures of 1 that are not written, an empty row, ends, and which variables are whole."""
    program = Program()
    program.integer("a", 4)
    program.share("s")
    program.add([Row("r", ((-1, "a"), (-2, "s")), ">=", -1.5), Row("none", (), "=", 0)])
    assert lp_text(program, ((1, "a"), (-1, "s"), (3, "a"))).splitlines() == [
        "Minimize",
        " obj: a - s + 3 a",
        "Subject To",
        " r: -a - 2 s >= -1.5",
        " none: 0 = 0",
        "Bounds",
        " 0 <= a <= 4",
        " 0 <= s",
        "Generals",
        " a",
        "End",
    ]
    assert lp_text(Program()).splitlines()[1] == " obj: 0"


def test_what_came_out_took_no_time_unless_it_is_said() -> None:
    """A solution that nobody had to look for."""
    assert Solved("optimal", {}, 0.0, 0.0).took == 0.0
