"""Money of several jobs rolled up: every line counted once, and told by shop."""

from __future__ import annotations

from dataclasses import replace

from budgetfix.exports.portfolio_rows import Bought, bought, money_table, shop_sums
from tests.exports.sample_portfolio import EMPTY, HOUSES, PORTFOLIO


def test_the_lines_add_up_to_what_all_jobs_spend() -> None:
    """Rolled up by shop or line by line, it is the same sum."""
    whole = sum(house.book.spent_minor for house in HOUSES)
    assert sum(line.line_minor for line in bought(PORTFOLIO)) == whole
    assert sum(total for _, total in shop_sums(PORTFOLIO)) == whole
    assert sum(sum(line.each_minor) for line in bought(PORTFOLIO)) == whole


def test_packs_stand_by_job() -> None:
    """Two jobs want a rod each; the third buys nothing. A rug from the store is told as ours."""
    lines = {line.name: line for line in bought(PORTFOLIO)}
    rod = lines["Extending rod 66-120 in"]
    assert rod == Bought("Harrow Tools", rod.name, '66" to 120"', True, (1, 1, 0), 3900, 7800, (3900, 3900, 0))
    assert (lines["Ivory rug"].place, lines["Ivory rug"].packs) == ("our stock", (1, 0, 0))


def test_goods_come_first_and_by_shop() -> None:
    """Goods by shop, then delivery, tax, hire and pay, which have no packs."""
    lines = bought(PORTFOLIO)
    assert [line.goods for line in lines] == sorted((line.goods for line in lines), reverse=True)
    goods = [line.place for line in lines if line.goods]
    assert goods == sorted(goods)
    assert {line.name for line in lines if not line.goods} == {
        "Delivery", "Tax", "Hire: cordless drill", "Pay for the work",
    }  # fmt: skip
    assert all(line.packs is None for line in lines if not line.goods)


def test_unlike_prices_are_left_open() -> None:
    """A piece that costs more in one house, since it stays longer there, has no one price; its sums stay exact."""
    dearer = tuple(
        replace(line, unit_price_minor=7800, line_minor=7800) if line.product == "rod" else line
        for line in HOUSES[1].book.money
    )
    longer = replace(HOUSES[1], book=replace(HOUSES[1].book, money=dearer))
    rod = next(line for line in bought(replace(PORTFOLIO, houses=(HOUSES[0], longer))) if "rod" in line.name)
    assert (rod.price_minor, rod.line_minor, rod.each_minor) == (None, 11700, (3900, 7800))


def test_nothing_to_buy() -> None:
    """No lines, and no sums."""
    assert bought(EMPTY) == ()
    assert shop_sums(EMPTY) == []
    assert len(money_table(EMPTY)) == 0
