"""What money, goods, tools and shops become in the integer problem, by hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from fractions import Fraction

from budgetfix.brief.models import Brief
from budgetfix.brief.stay import Stay
from budgetfix.catalog.models import Catalog, Product, Shop, Tool
from budgetfix.framing.options import Scales, labour_minor, limits, products, shops, tools
from budgetfix.framing.rest import Rest
from budgetfix.optimize import problem
from budgetfix.remedies.candidate import Work
from budgetfix.remedies.fit import candidates
from tests.framing.small_jobs import listed_ground

F = Fraction
CATALOG = Catalog(
    products=(
        Product(product="tin", shop="mill", price_minor=2200, pack=F(5, 2), on_hand=F(3, 10)),
        Product(product="rug", price_minor=6000, stock=2),
        Product(product="unused", price_minor=1),
    ),
    tools=(
        Tool(tool="saw", buy_minor=1500, hire_minor=600),
        Tool(tool="drill", own=True),
        Tool(tool="lift", hire_minor=900),
    ),
    shops=(
        Shop(shop="mill", delivery_minor=500, free_over_minor=9000, tax=F(7, 100), markup=F(1, 5)),
        Shop(shop="barn", delivery_minor=300),
    ),
)
TENTHS = Scales({"tin": 10, "rug": 1}, {"holes": 2})


def test_goods_in_whole_numbers_with_their_mark_up() -> None:
    """A tin of 2.5 with 0.3 on hand is 25 and 3 tenths, charged at 6/5 of the shelf price; a rug of no shop at 1."""
    rug, tin = products(CATALOG, TENTHS)
    assert tin == problem.Product("tin", 2200, 25, 3, "mill", 6, 5, most=None)
    assert rug == problem.Product("rug", 6000, 1, 0, None, 1, 1, most=2)


def test_what_is_sold_out_is_not_bought() -> None:
    """Of a tin that cannot be had any more there is what is on hand; a rug that is away for the stay likewise."""
    _, tin = products(CATALOG, TENTHS, Rest(sold_out=(("tin", "no longer made"),)))
    assert (tin.most, tin.on_hand) == (0, 3)
    one = Product(product="rug", price_minor=1, stock=1, free_from=date(2026, 7, 10))
    stay = Stay(first=date(2026, 6, 4), until=date(2026, 7, 4))
    assert products(Catalog(products=(one,), stay=stay), TENTHS)[0].most == 0


def test_tools_with_what_is_paid_for_already() -> None:
    """By name; two sessions of the saw are paid and one of them is in use, nothing is held of what was not paid."""
    drill, lift, saw = tools(CATALOG, Rest(prepaid=(("saw", 2),), held=(("lift", (4,)), ("saw", (1,)))))
    assert saw == problem.Tool("saw", False, 1500, 600, 2, (1,))
    assert drill == problem.Tool("drill", True, None, None, 0, ())
    assert lift == problem.Tool("lift", False, None, 900, 0, ())


def test_shops_with_their_tax_as_a_fraction() -> None:
    """7 % is 7 of 100; a shop without tax has 0 of 1."""
    assert shops(CATALOG) == (problem.Shop("barn", 300, None, 0, 1), problem.Shop("mill", 500, 9000, 7, 100))


def test_limits_are_rounded_down_to_their_scale() -> None:
    """At most 3.7 holes counted in halves are 7 halves; what nobody spends of keeps whole units."""
    brief = Brief(limits=(("pins", F(9, 2)), ("holes", F(37, 10))))
    assert limits(brief, TENTHS) == (problem.Limit("holes", 7), problem.Limit("pins", 4))


def test_the_pay_of_a_candidate_is_for_everybody() -> None:
    """90 minutes by two and 30 by one are 3.5 hours: 70.00 at 20.00 an hour; nothing where it is paid already."""
    base = listed_ground()
    shelf = next(one for one in candidates(None, base.catalog, base.brief, ()) if one.id == "shelf")
    shelf = replace(shelf, work=(Work("hold", 90, 90, 90, 90, people=2), Work("fix", 30, 30, 30, 30)))
    assert labour_minor(shelf, Brief(labour_minor_hour=2000)) == 7000
    assert labour_minor(shelf, Brief(labour_minor_hour=2000, paid_work=("shelf",))) == 0
    assert labour_minor(shelf, Brief()) == 0
