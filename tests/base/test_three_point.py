"""What three figures for one thing come to, held against textbook figures."""

from __future__ import annotations

import ast
import math
from fractions import Fraction
from inspect import signature

import pytest
from hypothesis import given
from hypothesis import strategies as st

from budgetfix.base.three_point import (
    COMMON,
    normal_share,
    rule_mean,
    rule_sd,
    sd_of_sum,
    triangular_mean,
    triangular_sd,
    within,
)
from budgetfix.outcome.draws import drawn
from tests.laws.source import REPO, sources

NETWORK = {1: (5, 8, 17), 2: (7, 10, 13), 3: (3, 5, 7), 4: (1, 3, 5), 5: (4, 6, 8), 6: (3, 3, 3), 7: (3, 4, 5)}
"""Activities as (optimistic, likely, pessimistic) weeks: Taylor, Introduction to Management Science, chapter 8."""
PATH = (1, 3, 5, 7)
FIGURES = st.tuples(*(st.integers(0, 600) for _ in range(3))).map(lambda three: tuple(sorted(three)))


def test_textbook_means_and_variances() -> None:
    """Taylor, Introduction to Management Science, chapter 8: te = (a+4m+b)/6 and variance ((b-a)/6) squared."""
    means = [rule_mean(*figures) for figures in NETWORK.values()]
    assert means == [9, 10, 5, 3, 6, 3, 4]
    variances = [rule_sd(low, high) ** 2 for low, _, high in NETWORK.values()]
    assert variances == pytest.approx([4, 1, 4 / 9, 4 / 9, 4 / 9, 0, 1 / 9])


def test_textbook_path() -> None:
    """The same chapter: path 1-3-5-7 takes 24 weeks, variance 5; within 28 weeks 0.9633 (table), 0.96318 (exact)."""
    mean = sum(rule_mean(*NETWORK[one]) for one in PATH)
    sd = sd_of_sum((rule_sd(NETWORK[one][0], NETWORK[one][2]) for one in PATH), common=0)
    assert mean == 24
    assert sd**2 == pytest.approx(5)
    assert within(28, mean, sd) == pytest.approx(0.96318, abs=5e-6)
    assert within(28, mean, sd) == pytest.approx(0.9633, abs=2e-4)


def test_one_standard_deviation_above() -> None:
    """Course notes on PERT: te 36, sd 5, target 41 gives z 1 and 0.8413 (exact 0.841345)."""
    assert within(41, 36, 5) == pytest.approx(0.841345, abs=5e-7)
    assert round(within(41, 36, 5), 4) == 0.8413


def test_triangle_by_hand() -> None:
    """10, 20, 60: mean 30, variance (100 + 400 + 3600 - 200 - 600 - 1200) / 18; one figure has no spread."""
    assert triangular_mean(Fraction(10), Fraction(20), Fraction(60)) == 30
    assert triangular_sd(10, 20, 60) == pytest.approx(math.sqrt(2100 / 18))
    assert triangular_sd(7, 7, 7) == 0


def test_nothing_uncertain() -> None:
    """Without a spread a target is kept or missed."""
    assert within(36, 36, 0) == 1
    assert within(35.9, 36, 0) == 0
    assert normal_share(0) == 0.5


def test_a_small_spread_is_a_spread() -> None:
    """Standard normal tables: 0.8413 lies below one standard deviation, however small that is."""
    assert within(1.5, 1, 0.5) == pytest.approx(0.8413, abs=5e-5)
    assert within(0.99, 1, 0.01) == pytest.approx(0.1587, abs=5e-5)


@given(st.lists(FIGURES, min_size=1, max_size=8))
def test_what_hangs_together_spreads_more(figures: list[tuple[int, ...]]) -> None:
    """A common factor never narrows a sum, and as one the deviations add up."""
    sds = [rule_sd(low, high) for low, _, high in figures]
    apart, half, as_one = (sd_of_sum(sds, common) for common in (0, COMMON, 1))
    assert apart <= half + 1e-9
    assert half <= as_one + 1e-9
    assert as_one == pytest.approx(sum(sds), abs=1e-6)


def apart(text: str) -> list[str]:
    """Calls in a source text that name a common factor of their own, or that work out a normal chance."""
    found = []
    for call in (node for node in ast.walk(ast.parse(text)) if isinstance(node, ast.Call)):
        name = call.func.attr if isinstance(call.func, ast.Attribute) else getattr(call.func, "id", "")
        if name == "within" or (name == "sd_of_sum" and (len(call.args) > 1 or call.keywords)):
            found.append(ast.unparse(call))
    return found


def test_no_chance_under_independence() -> None:
    """Outside this module nothing of budgetfix sets the common factor or works out a normal chance: none is printed."""
    assert float(COMMON) == 0.5
    assert list(signature(drawn).parameters) == ["ranges", "seed"]
    users = [one for one in sources(REPO) if any("three_point" in name for name in one.bound.values())]
    assert {one.name: apart(one.text) for one in users} == {one.name: [] for one in users}


def test_a_planted_independence_is_found() -> None:
    """A sum taken as independent, and a normal chance, are both seen."""
    assert apart("from budgetfix.base.three_point import sd_of_sum\nsd_of_sum(sds, 0)") == ["sd_of_sum(sds, 0)"]
    assert apart("within(28, 24, 2.2)") == ["within(28, 24, 2.2)"]
