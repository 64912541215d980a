"""Who holds what on which day, and how too few packs can be dealt out."""

from __future__ import annotations

from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from budgetfix.optimize.stock import Conflict, Stock, conflicts, deals, in_order, left_over, lower, within

LAMPS = Stock({"lamp": 3, "rug": 1}, ((1, 5), (4, 9), None))


def test_conflicts_by_day_then_piece() -> None:
    """On the fourth day the second house joins: three lamps and one more, two rugs."""
    held = [(("lamp", 2), ("rug", 1)), (("lamp", 1), ("rug", 1)), (("lamp", 1),)]
    assert conflicts(LAMPS, held) == [Conflict(4, "lamp", (0, 1, 2)), Conflict(4, "rug", (0, 1))]
    assert conflicts(Stock({"lamp": 1}, (None, None)), [(("lamp", 1),)] * 2) == [Conflict(None, "lamp", (0, 1))]


def test_what_the_others_leave() -> None:
    """On the fullest day of its own stay; pieces that nobody holds are not named."""
    held = {0: (("lamp", 2),), 1: (("lamp", 2), ("rug", 1))}
    assert left_over(LAMPS, held, 2) == (("lamp", 0), ("rug", 0))
    assert left_over(LAMPS, {1: held[1]}, 0) == (("lamp", 1), ("rug", 0))
    assert left_over(LAMPS, {}, 0) == ()


def test_those_without_dates_come_first() -> None:
    """Then by first day."""
    assert in_order(LAMPS) == [2, 0, 1]


def test_ceilings() -> None:
    """What is not named has none; a ceiling is never raised."""
    assert within((("lamp", 2),), (("rug", 0),))
    assert not within((("lamp", 2),), (("lamp", 1),))
    assert lower((("lamp", 1),), "lamp", 2) == (("lamp", 1),)
    assert lower((("rug", 1),), "lamp", 2) == (("lamp", 2), ("rug", 1))


def test_one_piece_is_dealt_to_one_of_them() -> None:
    """Two lamps among three houses: both to one, or one to each of two."""
    assert deals(1, [1, 1, 1]) == [(1, 0, 0), (0, 1, 0), (0, 0, 1)]
    assert len(deals(2, [1, 1, 1])) == 6
    assert deals(9, [5, 6]) == [(9 - rest, rest) for rest in range(10)]
    assert deals(10, [5, 6]) == [(4, 10), (10, 5)]


@given(st.integers(1, 12), st.lists(st.integers(1, 6), min_size=2, max_size=4))
def test_every_allocation_keeps_one_of_the_deals(packs: int, held: list[int]) -> None:
    """Nothing that fits is cut off, and what is held now, being too much, is."""
    held = [min(one, packs) for one in held]
    if sum(held) <= packs:
        return
    ways = deals(packs, held)
    assert not any(all(mine <= most for mine, most in zip(held, way, strict=True)) for way in ways)
    for some in product(range(packs + 1), repeat=len(held)):
        if sum(some) <= packs:
            assert any(all(mine <= most for mine, most in zip(some, way, strict=True)) for way in ways)
