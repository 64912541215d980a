"""Rows about money, each held against plain arithmetic over every count of packs."""

from __future__ import annotations

from fractions import Fraction
from itertools import product as every

import pytest

from budgetfix.catalog.bill import marked_up, packs_needed, tax_minor
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.money_rows import (
    delivers,
    enough_packs,
    free_delivery,
    line_half_up,
    loads,
    money_variables,
    most_packs,
    one_pack_at_least,
    packs_at_most,
    q,
    shops_of,
    smaller,
    spend_terms,
    tax_half_up,
    uneven,
)
from budgetfix.optimize.problem import Extra, Load, Option, Problem, Product, Session, Shop, Step, Tool
from budgetfix.optimize.solver import Program, Row


def keeps(row: Row, values: dict[str, int]) -> bool:
    """True where a row holds for these values."""
    left = sum(coefficient * values[name] for coefficient, name in row.terms)
    return {"<=": left <= row.right, ">=": left >= row.right, "=": left == row.right}[row.sense]


def least(row: Row, name: str, values: dict[str, int]) -> int:
    """The smallest whole number of one variable with which a row holds."""
    return next(count for count in range(10**6) if keeps(row, {**values, name: count}))


def facts(*products: Product, uses: tuple[tuple[str, int], ...], shops: tuple[Shop, ...] = (), **more: object) -> Facts:
    """One option that uses these goods."""
    return Facts.of(Problem((Option("m", uses=uses),), products=products, shops=shops, **more))  # type: ignore[arg-type]


@pytest.mark.parametrize("rate", [Fraction(33, 400), Fraction(1, 3), Fraction(7, 8), Fraction(1, 20), Fraction(2)])
@pytest.mark.parametrize("price", [1, 7, 429])
def test_tax_comes_out_as_in_the_bill(rate: Fraction, price: int) -> None:
    """The least tax that the row allows is that of the bill, half up, for any number of packs; rates are shortened."""
    shop = Shop("mill", tax_numerator=2 * rate.numerator, tax_denominator=2 * rate.denominator)
    (row,) = tax_half_up(facts(Product("tin", price, shop="mill"), uses=(("tin", 50),), shops=(shop,)))
    assert max(coefficient for coefficient, _ in row.terms) == rate.denominator
    for packs in range(40):
        assert least(row, "t[mill]", {q("tin"): packs}) == tax_minor(packs * price, rate)


@pytest.mark.parametrize("charge", [Fraction(115, 100), Fraction(4, 3), Fraction(23, 20)])
def test_a_marked_up_line_comes_out_as_in_the_bill(charge: Fraction) -> None:
    """The least charge that the row allows is the bill's, rounded by the line; a whole charge needs no row."""
    odd = Product("tin", 457, 1, 0, None, charge.numerator, charge.denominator)
    (row,) = line_half_up(facts(odd, uses=(("tin", 50),)))
    for packs in range(40):
        assert least(row, "l[tin]", {q("tin"): packs}) == marked_up(packs * 457, charge - 1)
    whole = Product("tin", charge.denominator * 100, 1, 0, None, charge.numerator, charge.denominator)
    assert (uneven(odd), uneven(whole)) == (True, False)
    assert list(line_half_up(facts(whole, uses=(("tin", 50),)))) == []


@pytest.mark.parametrize(("pack", "on_hand", "used"), list(every((1, 3, 4), (0, 1, 5), (1, 4, 5, 12))))
def test_packs_come_out_as_in_the_bill(pack: int, on_hand: int, used: int) -> None:
    """The least packs that the rows allow for a chosen option are those of the bill; unchosen, none are needed."""
    looked = facts(Product("tin", 1, pack, on_hand), uses=(("tin", used),))
    needed = packs_needed(Fraction(used), Fraction(on_hand), Fraction(pack))
    assert most_packs(looked) == ({"tin": needed} if needed else {})
    for row in (*enough_packs(looked), *one_pack_at_least(looked)):
        assert least(row, q("tin"), {"x[m]": 1}) == needed
        assert least(row, q("tin"), {"x[m]": 0}) == 0


@pytest.mark.parametrize(("most", "fits"), [(0, False), (1, False), (2, True), (3, True)])
def test_no_more_packs_than_there_are(most: int, fits: bool) -> None:
    """Seven units with one on hand take two packs of three: with one pack there is no choosing it."""
    (row,) = packs_at_most(facts(Product("tin", 1, 3, 1, most=most), uses=(("tin", 7),)), Extra())
    assert keeps(row, {"x[m]": 1}) is fits
    assert keeps(row, {"x[m]": 0})


def test_a_ceiling_that_is_asked_for_holds_beside_the_stock() -> None:
    """The smaller of both; goods that nothing uses have no row."""
    looked = facts(Product("tin", 1, 1, most=3), Product("lid", 1, most=1), uses=(("tin", 2),))
    for asked, fits in ((1, False), (2, True), (5, True)):
        (row,) = packs_at_most(looked, Extra(packs_at_most=(("tin", asked),)))
        assert keeps(row, {"x[m]": 1}) is fits


def test_a_load_counts_packs_by_their_weight() -> None:
    """Three packs of 20 are 60; what weighs nothing, or is not bought, is no part of it."""
    weights = (("tin", 20), ("lid", 0), ("vase", 9))
    looked = facts(
        Product("tin", 1), Product("lid", 1), uses=(("tin", 5), ("lid", 1)), loads=(Load("van", 60, weights),)
    )
    (row,) = loads(looked)
    assert [name for _, name in row.terms] == [q("tin")]
    assert [keeps(row, {q("tin"): count}) for count in (3, 4)] == [True, False]


@pytest.mark.parametrize(
    ("shop", "asks"),
    [
        (Shop("mill"), False),
        (Shop("mill", 1), True),
        (Shop("mill", 590, 1), True),
        (Shop("mill", 590, 0), False),
        (Shop("mill", 0, 100), False),
    ],
)
def test_whether_an_order_can_cost_delivery(shop: Shop, asks: bool) -> None:
    """A fee of nothing, or one that any order is free of, is none."""
    assert delivers(shop) is asks


def test_only_shops_where_something_can_be_bought() -> None:
    """A shop of which nothing is used, or only what is on hand, has no order."""
    goods = (Product("tin", 1, shop="mill"), Product("lid", 1, 1, 9, "yard"), Product("wax", 1, shop="barn"))
    looked = facts(*goods, uses=(("tin", 1), ("lid", 1)), shops=(Shop("yard"), Shop("mill"), Shop("barn")))
    assert shops_of(looked) == [(Shop("mill"), [goods[0]])]


def test_every_way_to_pay_has_a_variable() -> None:
    """Packs, order, free delivery, tax (5 % of two packs), a bought tool, hire for up to two sessions; ceilings."""
    option = Option("m", uses=(("tin", 5),), tools=("saw", "drill"), steps=(Step(10),))
    problem = Problem(
        (option,),
        products=(Product("tin", 100, 2, 1, "mill"),),
        shops=(Shop("mill", 590, 1000, 1, 20),),
        tools=(Tool("saw", buy_minor=99), Tool("drill", hire_minor=40)),
        sessions=(Session(0, 60, (60,)), Session(1440, 1500, (60,))),
    )
    program = Program()
    money_variables(Facts.of(problem), program)
    assert {name: one.up for name, one in program.variables.items()} == {
        "q[tin]": 2,
        "o[mill]": 1,
        "w[mill]": 1,
        "z[tin]": 1,
        "t[mill]": 10,
        "b[saw]": 1,
        "v[drill,1]": 1,
        "v[drill,2]": 1,
    }


@pytest.mark.parametrize("sense", ["<=", ">="])
@pytest.mark.parametrize("right", range(-7, 8))
def test_a_smaller_row_says_the_same(sense: str, right: int) -> None:
    """Divided by what its coefficients share, a row holds for the same whole numbers as before."""
    row = Row("r", ((6, "a"), (-4, "b")), sense, right)  # type: ignore[arg-type]
    short = smaller(row)
    assert [coefficient for coefficient, _ in short.terms] == [3, -2]
    for one, other in every(range(5), repeat=2):
        assert keeps(row, {"a": one, "b": other}) is keeps(short, {"a": one, "b": other})


@pytest.mark.parametrize(("price", "free"), [(4999, False), (5000, True), (5001, True)])
def test_delivery_is_free_from_the_sum_on(price: int, free: bool) -> None:
    """Free over 50.00: an order of 49.99 is one unit short, 50.00 is enough; without an order nothing is free."""
    mine = facts(Product("rug", price, 1, 0, "mill"), uses=(("rug", 1),), shops=(Shop("mill", 300, 5000, 0, 1),))
    goods, order = free_delivery(mine)
    assert keeps(goods, {q("rug"): 1, "w[mill]": 1}) is free
    assert keeps(goods, {q("rug"): 1, "w[mill]": 0})
    assert [keeps(order, {"w[mill]": 1, "o[mill]": ordered}) for ordered in (0, 1)] == [False, True]


def test_what_is_spent_term_by_term() -> None:
    """A rug marked up by a fifth, a tin by an eighth that leaves half units, delivery that can be free, tax, tools."""
    goods = (Product("rug", 5000, 1, 0, "mill", 6, 5), Product("tin", 999, 1, 0, "mill", 9, 8))
    problem = Problem(
        (Option("m", cost_minor=70, steps=(Step(10),), uses=(("rug", 1), ("tin", 1)), tools=("saw",)),),
        products=goods,
        shops=(Shop("mill", 300, 9000, 7, 100),),
        tools=(Tool("saw", False, 150, 100),),
        sessions=(Session(0, 60, (60,)),),
    )
    assert spend_terms(Facts.of(problem)) == (
        (70, "x[m]"),
        (6000, "q[rug]"),
        (1, "l[tin]"),
        (300, "o[mill]"),
        (-300, "w[mill]"),
        (1, "t[mill]"),
        (150, "b[saw]"),
        (100, "v[saw,1]"),
    )
