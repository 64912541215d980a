"""Exact numbers: the grid, the two roundings, whole packs."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from budgetfix.base.numbers import TOLERANCE, ceil_div, exact, half_even, half_up

F = Fraction
INCH_MM = F(254, 10)
"""The international inch, exactly (US Federal Register 59-5442, 1959)."""


@pytest.mark.parametrize("sixty_fourths", [1, 3, 63, 64 * 96 + 7])
def test_tape_readings_are_exact_on_the_grid(sixty_fourths: int) -> None:
    """1/64 in is 0.396875 mm: six digits after the point hold every reading of a tape, in inches or millimetres."""
    reading = F(sixty_fourths, 64) * INCH_MM
    assert exact(float(reading)) == reading
    assert exact(0.1) == F(1, 10)
    assert exact(1234.5) == F(2469, 2)


def test_the_grid_is_a_millionth() -> None:
    """A millionth is kept, a tenth of it is rounded away: noise of the machine's arithmetic is gone."""
    assert exact(0.000001) == F(1, 10**6)
    assert exact(5.0000001) == 5
    assert exact(0.1 + 0.2) == F(3, 10)


@pytest.mark.parametrize(("value", "points"), [(F(1, 2), 0), (F(3, 2), 2), (F(5, 2), 2), (F(8, 3), 3), (F(-1, 2), 0)])
def test_points_round_to_even(value: Fraction, points: int) -> None:
    """Halves go to the even neighbour, as IEEE 754 rounds by default, so that sums of points are not pushed up."""
    assert half_even(value) == points


@given(st.fractions(min_value=0, max_value=10**9))
def test_money_rounds_halves_up(amount: Fraction) -> None:
    """What comes out is at most half a unit above the amount, and less than half a unit below it."""
    assert -F(1, 2) < half_up(amount) - amount <= F(1, 2)


@given(st.integers(-50, 200), st.integers(1, 30))
def test_whole_packs(amount: int, by: int) -> None:
    """The least whole number of packs that holds the amount; none for nothing, or for less."""
    packs = ceil_div(amount, by)
    assert packs * by >= amount
    assert packs == 0 or (packs - 1) * by < amount
    assert packs >= 0


def test_a_tolerance_is_finer_than_any_figure_that_is_judged() -> None:
    """A tape is read to a millimetre, an angle to a degree, light to a lumen; a tolerance is at most a tenth of it."""
    read_to = {"mm": 1, "ratio": 0.01, "degree": 1, "count": 1, "lm/m2": 1, "K": 10, "lm": 1, "yes": 1}
    assert {unit: 0 < within <= read_to[unit] / 10 for unit, within in TOLERANCE.items()} == dict.fromkeys(
        read_to, True
    )
