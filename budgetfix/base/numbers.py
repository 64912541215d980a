"""Exact numbers: one rounding for points, one for money, one tolerance for each unit."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Literal

MeasureUnit = Literal["mm", "ratio", "degree", "count", "lm/m2", "K", "lm", "yes"]

TOLERANCE: dict[MeasureUnit, float] = {
    "mm": 0.1,
    "ratio": 1e-6,
    "degree": 0.01,
    "count": 1e-6,
    "lm/m2": 0.01,
    "K": 0.1,
    "lm": 0.1,
    "yes": 1e-6,
}

_GRID = 10**6


def exact(value: float) -> Fraction:
    """A measured number on a grid of one millionth: 1/64 in and every metric reading are exact on it."""
    return Fraction(round(value * _GRID), _GRID)


def half_even(value: Fraction) -> int:
    """Points: rounded once, halves to even."""
    return round(value)


def half_up(value: Fraction) -> int:
    """Money: a non-negative amount in minor units, halves up."""
    return math.floor(value + Fraction(1, 2))


def ceil_div(amount: int, by: int) -> int:
    """Whole packs: the least n with n x by >= amount, for by > 0; 0 when the amount is not positive."""
    return max(0, -(-amount // by))
