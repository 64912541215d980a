"""Figures drawn from what people say of them: low, likely, high, all under one common factor.

Each figure lies on its triangle (low to high, top at likely). Those who are slow at one thing are slow at others, so
the draws hang together: z = sqrt(c) Z + sqrt(1 - c) e, with Z shared by all figures of a draw and c the common factor;
the share of the normal curve below z is the share of the triangle below the figure (a Gaussian copula).

The generator is numpy's RandomState, whose stream is frozen for good (NEP 19), with fixed seeds: the same plan is
told the same chances, today and in ten years.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import TYPE_CHECKING

from budgetfix.base.three_point import COMMON, normal_share
from budgetfix.outcome.odds import DRAWS

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Figures = NDArray[np.float64]

SEED_MINUTES, SEED_PRICES = 1812, 1906
"""Any two numbers; what matters is that they stay."""
EDGE, PARTS = 8.0, 8192
"""The normal curve is laid out as a table from -8 to 8: straight between its points it is off by less than 1e-6."""

Range = tuple[float, float, float]
"""(low, likely, high), low to high."""


def drawn(ranges: Sequence[Range], seed: int) -> Figures:
    """`DRAWS` figures for each range, a row a range, in its own unit; one that is sure is the same in every draw."""
    import numpy as np

    found = np.empty((len(ranges), DRAWS))
    source = np.random.RandomState(seed)
    shared = source.standard_normal(DRAWS) * float(COMMON) ** 0.5
    for row, (low, likely, high) in zip(found, ranges, strict=True):
        row[:] = likely
        if low < high:
            own = source.standard_normal(DRAWS) * float(1 - COMMON) ** 0.5
            row[:] = quantile(below(shared + own), low, likely, high)
    return found


def below(z: Figures) -> Figures:
    """The share of the normal curve below each z."""
    import numpy as np

    places, shares = _curve()
    return np.interp(z, places, shares)


@cache
def _curve() -> tuple[Figures, Figures]:
    import numpy as np

    places = np.linspace(-EDGE, EDGE, PARTS + 1)
    return places, np.array([normal_share(float(place)) for place in places])


def quantile(share: Figures, low: float, likely: float, high: float) -> Figures:
    """The figure with this share of its triangle below it, in closed form; `low` is below `high`."""
    import numpy as np

    wide = high - low
    rising = low + np.sqrt(share * wide * (likely - low))
    falling = high - np.sqrt((1 - share) * wide * (high - likely))
    return np.where(share * wide < likely - low, rising, falling)
