"""Figures drawn: their triangle, what hangs them together, and that they are the same for good."""

from __future__ import annotations

import math
from statistics import NormalDist

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from budgetfix.base.three_point import COMMON, triangular_mean, triangular_sd
from budgetfix.outcome.draws import SEED_MINUTES, SEED_PRICES, below, drawn, quantile
from budgetfix.outcome.odds import DRAWS, HARDLY, NEARLY, in_ten

RANGES = [(10.0, 20.0, 60.0), (5.0, 5.0, 9.0), (30.0, 45.0, 45.0), (7.0, 7.0, 7.0)]


@pytest.mark.parametrize("at", range(3))
def test_each_lies_on_its_triangle(at: int) -> None:
    """Mean and spread are those of the triangle, within four standard errors; nothing lies outside."""
    low, likely, high = RANGES[at]
    figures = drawn(RANGES, SEED_MINUTES)[at]
    sd = triangular_sd(low, likely, high)
    mean = float(sum(map(int, (low, likely, high)))) / 3
    assert float(triangular_mean(*(map(int, (low, likely, high))))) == pytest.approx(mean)  # type: ignore[arg-type]
    assert figures.mean() == pytest.approx(mean, abs=4 * sd / math.sqrt(DRAWS))
    assert figures.std() == pytest.approx(sd, rel=0.03)
    assert low <= figures.min()
    assert figures.max() <= high


def test_one_figure_is_sure() -> None:
    """Where low, likely and high are one, every draw is that."""
    assert set(drawn(RANGES, SEED_MINUTES)[3].tolist()) == {7.0}


def test_they_hang_together() -> None:
    """The normal figures behind two ranges share half of their variance; by ranks that is asin(1/4) * 6 / pi."""
    first, second = drawn([(0.0, 30.0, 90.0), (10.0, 12.0, 40.0)], SEED_MINUTES)
    ranks = [np.argsort(np.argsort(one)) for one in (first, second)]
    found = np.corrcoef(ranks[0], ranks[1])[0, 1]
    assert found == pytest.approx(6 / math.pi * math.asin(float(COMMON) / 2), abs=0.02)


def test_the_same_for_good() -> None:
    """The first draws as they were when this was written: the stream is frozen, and so is what is told of it."""
    first = drawn([(10.0, 20.0, 60.0), (90.0, 135.0, 200.0)], SEED_MINUTES)[:, :3]
    assert first.round(6).tolist() == KNOWN
    assert not np.array_equal(drawn(RANGES, SEED_MINUTES), drawn(RANGES, SEED_PRICES))


KNOWN = [[35.636749, 36.054975, 27.461088], [138.480845, 134.528701, 161.815718]]


@given(st.floats(-12, 12))
def test_the_table_of_the_normal_curve(z: float) -> None:
    """Straight lines between its points are off by less than a millionth."""
    assert float(below(np.array([z]))[0]) == pytest.approx(NormalDist().cdf(z), abs=1e-6)


THREE = st.tuples(*(st.integers(0, 500) for _ in range(3))).map(sorted).filter(lambda three: three[0] < three[2])


def under(at: float, low: float, likely: float, high: float) -> float:
    """The share of a triangle below a figure."""
    if at < likely:
        return (at - low) ** 2 / ((high - low) * (likely - low))
    return 1.0 if high == likely else 1 - (high - at) ** 2 / ((high - low) * (high - likely))


@given(st.floats(0, 1), THREE)
def test_the_inverse_is_the_inverse(share: float, three: list[int]) -> None:
    """The share of the triangle below the figure that is given for a share is that share."""
    low, likely, high = three
    at = float(quantile(np.array([share]), low, likely, high)[0])
    assert low <= at <= high
    assert under(at, low, likely, high) == pytest.approx(share, abs=1e-9)


@pytest.mark.parametrize(
    ("times", "words"),
    [
        (0, "hardly ever"),
        (HARDLY - 1, "hardly ever"),
        (HARDLY, "1 in 10"),
        (2_999, "1 in 10"),
        (3_000, "2 in 10"),
        (14_000, "7 in 10"),
        (NEARLY, "9 in 10"),
        (NEARLY + 1, "nearly always"),
        (DRAWS, "nearly always"),
    ],
)
def test_chances_in_tenths(times: int, words: str) -> None:
    """Under 1 in 20 and over 19 in 20 in words, all else in tenths, halves up."""
    assert in_ten(times) == words


@given(THREE, st.integers(1, 300))
def test_a_wider_range_upwards_never_lowers_a_figure(three: list[int], more: int) -> None:
    """With the same low and likely, and the same share, a higher high gives no lower figure."""
    low, likely, high = three
    shares = np.linspace(0, 1, 101)
    assert bool((quantile(shares, low, likely, high + more) >= quantile(shares, low, likely, high) - 1e-9).all())
