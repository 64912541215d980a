"""Programs as plain data."""

from __future__ import annotations

from budgetfix.optimize.program import Program, Row, holds, lp_text


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
