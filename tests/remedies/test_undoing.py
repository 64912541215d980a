"""Undoing at the end of a lease: minutes by what is left, goods by the hole, and what counts as left behind."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from budgetfix.brief.lease import Lease
from budgetfix.catalog.models import Catalog, Product
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.remedies.leases import Under
from budgetfix.remedies.undoing import goods_to_keep, holes_of, marks, undone
from budgetfix.room.items import Hung
from budgetfix.room.survey import Change
from tests.inspection.rooms import renter

F = Fraction
TUB, TIN = (Product(product=id, what=what, price_minor=600) for id, what in (("tub", "filler"), ("tin", "paint")))
BIG_TUB = Product(product="big tub", what="filler", price_minor=900)
SHOP = Catalog(products=(BIG_TUB, TUB, TIN))
FRAMES = tuple(Change("pictures", name, add=Hung(name=name)) for name in ("a", "b", "c"))


def one(**more: Any) -> Candidate:
    """A remedy that takes an hour."""
    return Candidate("m1", "declared", "Do it", work=(Work("", 40, 40, 40, 40), Work("", 10, 10, 10, 10, 2)), **more)


@pytest.mark.parametrize(
    ("made", "holes", "minutes", "left"),
    [
        (one(), (0, 0), 0, 0),
        (one(spends=(("holes", F(6)),)), (6, 0), 10 + 6 * 12 + 5, 24),
        (one(leaves="plugs"), (2, 0), 10 + 2 * 12 + 5, 8),
        (one(spends=(("pins", F(3)),), leaves="pins"), (0, 3), 3 + 3 * 7 + 5, 3),
        (one(leaves="pins", changes=FRAMES), (0, 3), 3 + 3 * 7 + 5, 3),
        (one(spends=(("holes", F(2)), ("pins", F(1)))), (2, 1), 10 + 2 * 12 + 7 + 5, 9),
        (one(leaves="strips", changes=FRAMES), (0, 0), 15, 0),
        (one(leaves="peels off"), (0, 0), 10, 0),
        (one(leaves="asks leave"), (0, 0), 60, 40),
    ],
)
def test_minutes_and_marks(made: Candidate, holes: tuple[int, int], minutes: int, left: int) -> None:
    """The table of the module, line by line; what a plug leaves counts as four pins, strips leave nothing."""
    done = undone(made)
    assert holes_of(made) == holes == (done.plugs, done.pins)
    assert (done.minutes, marks(made)) == (minutes, left)
    assert bool(done.words) == bool(minutes)


def test_what_is_put_back_takes_half_as_long() -> None:
    """An hour's work that replaced the landlord's curtain takes half an hour to put it back, with words for it."""
    done = undone(one(), ["the old cloth"])
    assert (done.minutes, done.words) == (30, ("put the old cloth back",))


def test_words() -> None:
    """What to do reads as a sentence's parts, holes counted."""
    assert undone(one(spends=(("holes", F(1)),))).words == ("take it off the wall, take out 1 plug, fill and touch up",)
    assert undone(one(leaves="strips")).words == ("pull the strips slowly along the wall",)


def test_goods_by_the_hole() -> None:
    """A twenty-fifth of the cheapest tub and tin a plug hole, a hundredth a pin hole; nothing where none is sold."""
    plugs, pins = undone(one(spends=(("holes", F(6)),))), undone(one(leaves="pins"))
    assert goods_to_keep(plugs, SHOP) == (("tin", F(6, 25)), ("tub", F(6, 25)))
    assert goods_to_keep(pins, SHOP) == (("tin", F(1, 100)), ("tub", F(1, 100)))
    assert goods_to_keep(plugs, Catalog()) == ()
    assert goods_to_keep(undone(one()), SHOP) == ()


def test_counted_in_the_candidate() -> None:
    """Counted: filler and paint are goods that are kept, and a limit of minutes is spent. Shown: neither."""
    made = one(spends=(("holes", F(6)),), uses=(("rod", F(1)), ("tub", F(1, 25))))
    counted = Under(Lease(undo="counted", undo_minutes=180), SHOP, renter()).told(made)
    assert counted.later == (("tin", F(6, 25)), ("tub", F(6, 25)))
    assert counted.goods == (("rod", F(1)), ("tin", F(6, 25)), ("tub", F(7, 25)))
    assert counted.uses == made.uses == made.goods
    assert counted.spends == (("holes", F(6)), ("minutes to undo", F(87)))
    shown = Under(Lease(), SHOP, renter()).told(made)
    assert (shown.later, shown.spends) == ((), made.spends)
