"""Exact fractions to whole numbers: each product and each limit gets the scale that makes its figures whole."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from fractions import Fraction


def scales(figures: Iterable[tuple[str, Fraction]]) -> dict[str, int]:
    """For each name the least common denominator of all its figures."""
    found: dict[str, int] = {}
    for name, figure in figures:
        found[name] = math.lcm(found.get(name, 1), figure.denominator)
    return found


def scaled(figures: Iterable[tuple[str, Fraction]], by: Mapping[str, int]) -> tuple[tuple[str, int], ...]:
    """Figures times their scale, as whole numbers, by name."""
    return tuple(sorted((name, int(figure * by[name])) for name, figure in figures))
