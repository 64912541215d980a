"""What chosen lines may come to: by hand, and against a direct count by a second coding."""

from __future__ import annotations

import math
from collections.abc import Mapping
from pathlib import Path
from random import Random

import pytest

from budgetfix.outcome.odds import DRAWS, MoneyOdds, PriceRange
from budgetfix.outcome.price_odds import CENT
from tests.outcome.replayed import figure
from tests.pipeline.listed_job import proven_plan, write_job

RUG: dict[str, object] = {
    "product": "rug",
    "name": "Rug",
    "price": {"low": 20, "likely": 22, "high": 30},
    "shop": "mill",
}
SHOP: dict[str, object] = {"shop": "mill", "delivery": 6, "free_over": 50, "tax": "10%"}
REMEDIES: list[dict[str, object]] = [
    {"remedy": "m1", "name": "Lay rugs", "answers": {"f1": 1}, "uses": {"rug": 2}},
    {"remedy": "m2", "name": "Call a plumber", "answers": {"f2": 1}, "cost": {"low": 50, "likely": 60, "high": 100}},
]


def odds(folder: Path, brief: Mapping[str, object], catalog: Mapping[str, object]) -> MoneyOdds | None:
    """What is told of the prices of two remedies."""
    write_job(folder, [100, 200], REMEDIES, brief, catalog)
    chances = proven_plan(folder).chances
    assert chances is not None
    return chances.money


def test_by_hand(tmp_path: Path) -> None:
    """Rugs 2 x 24, plumber 70: 118 planned; 2 x 20 + 50 = 90 at least, 2 x 30 + 100 = 160 at most, 42 above."""
    plain = {"products": [{**RUG, "shop": None}]}
    found = odds(tmp_path, {"budget": 140, "contingency": 20}, plain)
    assert found is not None
    ranges = (
        PriceRange("rug", "Rug", 2, 2000, 2200, 3000, 2400),
        PriceRange("m2", "Call a plumber", 0, 5000, 6000, 10000, 7000),
    )
    assert found == MoneyOdds(9000, 16000, 4200, 2000, found.covered, ranges)
    assert found.lacking_minor == 2200


def test_delivery_and_tax_follow_the_prices(tmp_path: Path) -> None:
    """Below 50 of goods delivery is 6, above it is free; tax is a tenth: 40 + 4 + 6 + 50 at least, 60 + 6 + 100."""
    found = odds(tmp_path, {"budget": 200}, {"products": [RUG], "shops": [SHOP]})
    assert found is not None
    assert (found.least_minor, found.most_minor, found.above_minor) == (10_000, 16_600, 16_600 - 12_880)
    assert found.covered == DRAWS


def test_without_a_limit_or_a_range(tmp_path: Path) -> None:
    """No budget: nothing to cover. No range: nothing to tell."""
    found = odds(tmp_path, {}, {"products": [{**RUG, "price": 24, "shop": None}]})
    assert found is not None
    assert (found.covered, [one.id for one in found.ranges]) == (None, ["m2"])
    remedies = [{**REMEDIES[0]}, {**REMEDIES[1], "cost": 70}]
    write_job(tmp_path, [100, 200], remedies, {}, {"products": [{**RUG, "price": 24, "shop": None}]})
    chances = proven_plan(tmp_path).chances
    assert chances is not None
    assert chances.money is None


@pytest.mark.parametrize("budget", [128.80, 135, 150])
def test_against_a_direct_count(tmp_path: Path, budget: float) -> None:
    """20,000 draws of a second coding, with a generator of its own, within four standard errors."""
    found = odds(tmp_path, {"budget": budget}, {"products": [RUG], "shops": [SHOP]})
    assert found is not None
    assert found.covered is not None
    random, covered = Random(11), 0
    for _ in range(DRAWS):
        shared = random.gauss(0, 1)
        rugs = 2 * figure(random, shared, (20, 22, 30))
        whole = rugs * 1.1 + (0 if rugs >= 50 else 6) + figure(random, shared, (50, 60, 100))
        covered += whole <= budget + CENT / 100
    share = (covered + found.covered) / (2 * DRAWS)
    assert abs(covered - found.covered) <= 4 * math.sqrt(2 * DRAWS * share * (1 - share)) + 4
    assert 0 < covered < DRAWS


def test_more_money_never_covers_less(tmp_path: Path) -> None:
    """What is held back counts as there; each sum more covers as many draws or more."""
    catalog = {"products": [RUG], "shops": [SHOP]}
    covered = [odds(tmp_path, {"budget": 129 + more, "contingency": more}, catalog) for more in (0, 10, 20, 40)]
    counts = [one.covered or 0 for one in covered if one is not None]
    assert len(counts) == 4
    assert counts == sorted(counts)
    assert counts[0] < counts[-1] == DRAWS
