"""Sums shared out: every part a whole minor unit, all parts together the sum."""

from __future__ import annotations

from fractions import Fraction

import pytest

from budgetfix.outcome.sharing import shared_out


def test_largest_remainders_get_what_is_left() -> None:
    """7.00 by 1, 1 and 4: 116.67, 116.67 and 466.67 cents; one of the three, the first by id, stays a cent short."""
    assert shared_out(700, {"a": 1, "b": 1, "c": 4}) == {"a": 117, "b": 117, "c": 466}
    assert shared_out(100, {"a": 1, "b": 2, "c": 4}) == {"a": 14, "b": 29, "c": 57}


def test_ties_go_by_id() -> None:
    """One cent for three goes to the first."""
    assert shared_out(1, {"z": 1, "b": 1, "m": 1}) == {"b": 1, "m": 0, "z": 0}


def test_without_use_all_share_alike() -> None:
    """Weights of nothing are equal weights; nobody to pay is refused."""
    assert shared_out(10, {"a": 0, "b": 0}) == {"a": 5, "b": 5}
    with pytest.raises(ValueError, match="nobody"):
        shared_out(10, {})


@pytest.mark.parametrize("amount", [0, 1, 99, 100, 2530, 100_003])
@pytest.mark.parametrize("weights", [(1,), (3, 2), (Fraction(1, 3), Fraction(2, 7), 5), (0, 1, 0)])
def test_parts_add_up(amount: int, weights: tuple[Fraction | int, ...]) -> None:
    """No cent is lost or made, and nobody is more than a cent from the exact part."""
    given = dict(zip("abc", weights, strict=False))
    parts = shared_out(amount, given)
    assert sum(parts.values()) == amount
    for id, part in parts.items():
        assert abs(part - Fraction(amount) * given[id] / sum(given.values())) < 1
