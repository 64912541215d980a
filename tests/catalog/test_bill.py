"""The bill: whole packs, delivery, tax, tools; checked against published worked examples."""

from __future__ import annotations

from fractions import Fraction

import pytest

from budgetfix.catalog.bill import bill, packs_needed, tax_minor, total_minor
from budgetfix.catalog.models import Catalog, Product, Shop, Tool

F = Fraction


@pytest.mark.parametrize(
    ("use", "pack", "packs"),
    [
        (F(2000), F(350), 6),  # OpenStax, Prealgebra 2e, proportions exercise: 5.714 gallons
        (F(13500), F(4000), 4),  # OpenStax, Prealgebra 2e, same section, answer: 4 bags
        (F(29 * 16), F(20), 24),  # OpenStax, Contemporary Mathematics, Area: 23.2 -> 24 boxes of tile
        (F(72), F(6), 12),  # US school arithmetic (book scan) p. 99: exactly 12 bundles, not 13
    ],
)
def test_whole_packs_as_published(use: Fraction, pack: Fraction, packs: int) -> None:
    """What is used is bought in whole packs, and an exact fit buys none to spare."""
    assert packs_needed(use, F(0), pack) == packs


@pytest.mark.parametrize(
    ("price_minor", "rate", "tax"),
    [
        (42899, F(825, 10000), 3539),  # the book's printed total is wrong (it adds 35.88); 35.39 is right
        (3488, F(825, 10000), 288),
        (49900, F(881, 10000), 4396),
    ],
)
def test_sales_tax_as_published(price_minor: int, rate: Fraction, tax: int) -> None:
    """OpenStax, Contemporary Mathematics, Discounts, Markups, and Sales Tax."""
    assert tax_minor(price_minor, rate) == tax


def test_tax_rounds_half_up() -> None:
    """Kansas Statutes 79-3676(a): the third decimal rounds up when it exceeds 4."""
    assert tax_minor(100, F(5, 1000)) == 1
    assert tax_minor(100, F(4, 1000)) == 0


CATALOG = Catalog(
    products=(
        Product(product="paint", shop="mill", price_minor=2200, pack=F(5, 2), on_hand=F(1)),
        Product(product="tape", shop="mill", price_minor=500),
        Product(product="wax", price_minor=300),
    ),
    shops=(Shop(shop="mill", delivery_minor=590, free_over_minor=4500, tax=F(33, 400)),),
    tools=(Tool(tool="drill", buy_minor=5900, hire_minor=1400), Tool(tool="saw", buy_minor=2000)),
)


def test_what_is_on_hand_is_used_first() -> None:
    """One litre on hand: 3.5 litres need one tin of 2.5, 3.6 need two."""
    assert packs_needed(F(35, 10), F(1), F(5, 2)) == 1
    assert packs_needed(F(36, 10), F(1), F(5, 2)) == 2
    assert packs_needed(F(1), F(1), F(5, 2)) == 0
    assert packs_needed(F(1), F(9), F(5, 2)) == 0


def test_delivery_falls_away_from_the_threshold_on() -> None:
    """44.00 of goods pay 5.90, 49.00 pay nothing; tax is on the goods alone."""
    short = bill(CATALOG, (), {"paint": F(6)}, (), ())
    assert [(line.kind, line.line_minor) for line in short] == [("product", 4400), ("delivery", 590), ("tax", 363)]
    enough = bill(CATALOG, (), {"paint": F(6), "tape": F(1)}, (), ())
    assert [(line.kind, line.line_minor) for line in enough] == [
        ("product", 4400),
        ("product", 500),
        ("delivery", 0),
        ("tax", 404),
    ]


def test_tools_are_bought_or_hired_and_own_costs_stand_alone() -> None:
    """A saw bought, a drill hired for two sessions, a remedy of 34.50, wax without a shop."""
    lines = bill(CATALOG, [("m1", 3450), ("m2", 0)], {"wax": F(1)}, ("saw",), (("drill", 2),))
    assert [(line.kind, line.id, line.line_minor) for line in lines] == [
        ("product", "wax", 300),
        ("tool", "saw", 2000),
        ("hire", "drill", 2800),
        ("remedy", "m1", 3450),
    ]
    assert total_minor(lines) == 8550


def test_a_marked_up_line_is_rounded_as_a_line() -> None:
    """Two packs at 4.50 with 15 % are 10.35, not twice 5.18; delivery and tax go by the shelf price of 9.00."""
    catalog = Catalog(
        products=(Product(product="tape", shop="mill", price_minor=450),),
        shops=(Shop(shop="mill", delivery_minor=590, free_over_minor=1000, tax=F(10, 100), markup=F(15, 100)),),
    )
    lines = bill(catalog, (), {"tape": F(2)}, (), ())
    assert [(line.kind, line.unit_price_minor, line.line_minor) for line in lines] == [
        ("product", 450, 1035),
        ("delivery", None, 590),
        ("tax", None, 90),
    ]


def test_pay_and_fixed_costs_have_lines_of_their_own() -> None:
    """Half an hour's pay for one remedy, none for the other, and a van that is paid whatever is chosen."""
    lines = bill(CATALOG, (), {}, (), (), [("m1", 2250), ("m2", 0)], [("van", 18000)])
    assert [(line.kind, line.id, line.line_minor) for line in lines] == [
        ("labour", "m1", 2250),
        ("fixed", "van", 18000),
    ]


def one_shop(**more: object) -> Catalog:
    """Boards of 15.00 and a sample for nothing, in one shop."""
    return Catalog(
        products=(
            Product(product="board", shop="yard", price_minor=1500),
            Product(product="sample", shop="yard", price_minor=0),
        ),
        shops=(Shop(shop="yard", **more),),  # type: ignore[arg-type]
    )


@pytest.mark.parametrize(("boards", "fee"), [(2, 590), (3, 0), (4, 0)])
def test_delivery_is_free_at_the_threshold_itself(boards: int, fee: int) -> None:
    """Free from 45.00 on: three boards are exactly that; a sample for nothing brings nobody over it, nor any tax."""
    catalog = one_shop(delivery_minor=590, free_over_minor=4500, tax=F(33, 400))
    lines = bill(catalog, (), {"board": F(boards), "sample": F(5)}, (), ())
    assert [(line.kind, line.id, line.line_minor) for line in lines] == [
        ("product", "board", 1500 * boards),
        ("product", "sample", 0),
        ("delivery", "yard", fee),
        ("tax", "yard", tax_minor(1500 * boards, F(33, 400))),
    ]


def test_delivery_that_is_never_free() -> None:
    """A shop without a threshold asks its fee for ten boards as well; without fee and tax there is no line for them."""
    for shop, sums in ((one_shop(delivery_minor=590), [15000, 590]), (one_shop(), [15000])):
        assert [line.line_minor for line in bill(shop, (), {"board": F(10)}, (), ())] == sums


def test_goods_stand_shop_by_shop() -> None:
    """What has no shop comes first, then shop by shop, and by name within each; all of it is paid at once."""
    catalog = Catalog(
        products=(
            Product(product="anchor", shop="yard", price_minor=100),
            Product(product="brush", shop="mill", price_minor=100),
            Product(product="cork", price_minor=100),
            Product(product="apron", shop="mill", price_minor=100),
        ),
        shops=(Shop(shop="yard"), Shop(shop="mill")),
    )
    lines = bill(catalog, (), {one.product: F(1) for one in catalog.products}, (), ())
    assert [(line.id, line.phase) for line in lines] == [("cork", 0), ("apron", 0), ("brush", 0), ("anchor", 0)]


def test_a_tool_that_is_lent_for_nothing() -> None:
    """A price of nothing is a price: the line is there, and comes to nothing for two sessions as for one."""
    catalog = Catalog(tools=(Tool(tool="drill", buy_minor=0, hire_minor=0),))
    lines = bill(catalog, (), {}, ("drill",), (("drill", 2),))
    assert [(line.kind, line.packs, line.unit_price_minor, line.line_minor) for line in lines] == [
        ("tool", 1, 0, 0),
        ("hire", 2, 0, 0),
    ]
