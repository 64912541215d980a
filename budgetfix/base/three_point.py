"""Three figures for one thing that nobody knows: low, likely, high. What to plan on, and how far off it may be.

Planned is the mean of the triangle, which is exact. Beside it stands the three-point rule of the textbooks, which
weighs the likely figure four times. Sums are taken with a common factor: who is slow at one thing is slow at others.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from fractions import Fraction

COMMON = Fraction(1, 2)
"""How far all deviations hang together (0: not at all, 1: as one). A household does all of its work itself, and prices
rise together, so that independence would promise too much. The half is by judgement."""


def triangular_mean(low: Fraction, likely: Fraction, high: Fraction) -> Fraction:
    """The mean of the triangle over low to high with its top at likely: (l + m + h) / 3, exactly."""
    return Fraction(low + likely + high) / 3


def triangular_sd(low: float, likely: float, high: float) -> float:
    """The standard deviation of the same triangle, in the unit of its figures."""
    squares = low * low + likely * likely + high * high - low * likely - low * high - likely * high
    return math.sqrt(max(0.0, squares) / 18)


def rule_mean(low: float, likely: float, high: float) -> float:
    """The three-point rule: (a + 4m + b) / 6 (Taylor, Introduction to Management Science, chapter 8)."""
    return (low + 4 * likely + high) / 6


def rule_sd(low: float, high: float) -> float:
    """The spread by the same rule: (b - a) / 6."""
    return (high - low) / 6


def sd_of_sum(sds: Iterable[float], common: float | Fraction = COMMON) -> float:
    """The standard deviation of a sum whose parts share a factor: (1 - c) * sum of squares + c * square of the sum.

    `common` 0 is independence, 1 is all deviations as one.
    """
    parts, share = tuple(sds), float(common)
    return math.sqrt((1 - share) * sum(sd * sd for sd in parts) + share * sum(parts) ** 2)


def normal_share(z: float) -> float:
    """The share of a normal distribution that lies below `z` standard deviations."""
    return (1 + math.erf(z / math.sqrt(2))) / 2


def within(target: float, mean: float, sd: float) -> float:
    """The normal chance of ending at or below a target; 0 or 1 where nothing is uncertain."""
    if sd <= 0:
        return 1.0 if mean <= target else 0.0
    return normal_share((target - mean) / sd)
