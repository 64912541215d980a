"""The bill phase by phase: what is left of a pack, an order a shop and phase, the sum."""

from __future__ import annotations

from fractions import Fraction

from budgetfix.catalog.bill_by_date import Bought, bill_by_date, spent_by
from budgetfix.catalog.models import Catalog, Product, Shop, Tool

F = Fraction
CATALOG = Catalog(
    currency="USD",
    products=(Product(product="paint", shop="mill", price_minor=3000, pack=F(5, 2), on_hand=F(1, 2)),),
    tools=(Tool(tool="drill", buy_minor=5900, hire_minor=1400),),
    shops=(Shop(shop="mill", delivery_minor=500, free_over_minor=6000, tax=F(33, 400)),),
)


def test_by_hand() -> None:
    """3 litres with half a litre there: one tin. Later 1 more: a second tin. Then 1 litre of its rest, and no line.

    What costs nothing has no line.

    Tax of 8.25 % on 30.00 is 2.475, half up 2.48, each time; 60.00 in one order would have had free delivery.
    """
    lines = bill_by_date(
        CATALOG,
        (
            Bought(uses={"paint": F(3)}, hired=(("drill", 1),), fixed=(("van", 900),)),
            Bought(uses={"paint": F(1)}, costs=(("rod", 700), ("tuck", 0)), labour=(("rod", 350), ("tuck", 0))),
            Bought(uses={"paint": F(1)}, tools=("drill",)),
        ),
    )
    assert [(line.phase, line.kind, line.packs, line.line_minor) for line in lines] == [
        (0, "product", 1, 3000),
        (0, "delivery", None, 500),
        (0, "tax", None, 248),
        (0, "hire", 1, 1400),
        (0, "fixed", None, 900),
        (1, "product", 1, 3000),
        (1, "delivery", None, 500),
        (1, "tax", None, 248),
        (1, "remedy", None, 700),
        (1, "labour", None, 350),
        (2, "tool", 1, 5900),
    ]
    assert spent_by(lines, 3) == (6048, 10846, 16746)
