"""Sums paid ahead of the work or the goods: pay, a delivery, a tax; they are not asked for again."""

from __future__ import annotations

from pathlib import Path

from budgetfix.catalog.models import Catalog, Shop
from budgetfix.pipeline.rest_on_top import with_orders
from tests.pipeline.listed_job import write_job
from tests.pipeline.test_replan_money import shopping
from tests.pipeline.ticked import back, ids, lines, plan_of, read_at, rest

LABOUR, DELIVERY, TAX = "labour:Labour: m1", "delivery:Delivery, Mill@mill", "tax:Tax, Mill@mill"


def test_pay_that_was_typed_is_that_of_the_whole(tmp_path: Path) -> None:
    """36.00 for three steps, with nothing, one or all of them done: 36.00 are spent, and no pay is still to come."""
    remedies = [{"remedy": "m1", "answers": {"f1": 1}, "steps": [{"hours": 1}] * 3}]
    write_job(tmp_path, (100,), remedies, {"budget": 40, "hours": [1, 1, 1], "labour": 12})
    job = read_at(tmp_path)
    book = plan_of(job)
    for done in ((), ("m1#1",), ("m1#1", "m1#2", "m1#3")):
        first = rest(job, back(book, paid={LABOUR: 3600}, done=done))
        second = rest(job, back(first.book))
        sums = [(one.left.paid.spent_minor, one.book.spent_minor) for one in (first, second)]
        assert sums == [(3600, 0)] * 2, done
    assert ids(rest(job, back(book, paid={LABOUR: 3600})).book) == ["m1"]


def test_pay_typed_for_what_was_done_says_nothing_of_the_rest(tmp_path: Path) -> None:
    """12.00 were worked out for step 1; 15.00 are typed over it: the two other steps are still to be paid."""
    remedies = [{"remedy": "m1", "answers": {"f1": 1}, "steps": [{"hours": 1}] * 3}]
    write_job(tmp_path, (100,), remedies, {"budget": 40, "hours": [1, 1, 1], "labour": 12})
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), done=("m1#1",)))
    second = rest(job, back(first.book, paid={LABOUR: 1500}))
    assert (second.left.paid.spent_minor, second.book.spent_minor) == (1500, 2400)


def test_a_round_of_shops_that_was_paid_ahead(tmp_path: Path) -> None:
    """The round's pay is typed before it is made: it is not asked for again; a second round is."""
    errands = [{"errand": "go", "name": "Go", "shops": ["mill"], "hours": 1}]
    shopping(tmp_path, 200, {"shop": "mill"}, labour=12, errands=errands, hours=[3, 3, 3])
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), paid={"labour:Labour: Go": 1200}))
    assert "Labour: Go" not in [name for name, _ in lines(first.book)]
    second = rest(job, back(first.book, {"product:rug@mill": "bought"}, done=("errand:go#1",)))
    assert ("Labour: Go", 1200) in lines(second.book)


def test_an_order_whose_delivery_was_paid(tmp_path: Path) -> None:
    """The delivery is typed, no goods are ticked: the goods come with it, once; an order after that pays its own."""
    shopping(tmp_path)
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), paid={DELIVERY: 500}))
    assert (first.left.paid.spent_minor, first.book.spent_minor) == (500, 6000 + 600)
    again = rest(job, back(first.book))
    assert (again.left.paid.spent_minor, lines(again.book)) == (500, lines(first.book))
    second = rest(job, back(again.book, {"product:rug@mill": "bought"}))
    assert second.left.paid.spent_minor == 500 + 3000 + 300
    assert ("Delivery, Mill", 500) in lines(second.book)
    third = rest(job, back(second.book))
    assert (third.left.paid.spent_minor, lines(third.book)) == (3800, lines(second.book))


def test_an_order_whose_tax_was_paid(tmp_path: Path) -> None:
    """6.00 of tax are typed, no goods are ticked: that was the tax of the order, and the goods are bought without."""
    shopping(tmp_path)
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), paid={TAX: 600}))
    assert (first.left.paid.spent_minor, first.book.spent_minor) == (600, 6000 + 500)


def test_catalogues_without_open_orders_are_the_same() -> None:
    """Only the shop of the order asks for no delivery, and only what was paid is not asked for."""
    mill = Shop(shop="mill", delivery_minor=500)
    catalog = Catalog(currency="USD", shops=(mill, Shop(shop="quay", delivery_minor=700)))
    assert with_orders(catalog, ()) is catalog
    assert [one.delivery_minor for one in with_orders(catalog, [("delivery", "mill")]).shops] == [0, 700]
    assert with_orders(catalog, [("tax", "mill")]).shops[0].delivery_minor == 500
