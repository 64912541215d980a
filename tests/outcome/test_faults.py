"""States of faults before and after."""

from __future__ import annotations

from fractions import Fraction

import pytest

from budgetfix.outcome.faults import state_of


@pytest.mark.parametrize(
    ("before", "after", "state"),
    [(1, 0, "fixed"), (0, 1, "new"), (2, 1, "better"), (1, 1, "still there"), (1, 2, "worse")],
)
def test_each_state_has_its_word(before: int, after: int, state: str) -> None:
    """Fixed, new, better, still there, worse."""
    assert state_of(Fraction(before), Fraction(after)) == state
