"""Money after the plan: paid, dearer, given back, a second order, what is held back, pay and fixed costs."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from budgetfix.outcome.so_far import LineBack, SoFar, State
from budgetfix.pipeline.replanning import NoRest, replanned
from budgetfix.pipeline.rest_money import Paid
from budgetfix.pipeline.rest_notes import notes_of
from tests.pipeline.listed_job import Remedy, write_job
from tests.pipeline.ticked import TODAY, back, everything, ids, lines, plan_of, read_at, rest, wish

SHOP = {"shop": "mill", "name": "Mill", "delivery": 5, "tax": "10%"}


def shopping(folder: Path, budget: float = 100, shop: dict[str, object] | None = None, **brief: object) -> None:
    """Three remedies of an hour, each with a product of its own from one shop: 20.00, 30.00 and 10.00."""
    goods = {"lamp": 20, "rug": 30, "pad": 10}
    products = [{"product": id, "name": id.title(), "shop": "mill", "price": price} for id, price in goods.items()]
    remedies = [
        {"remedy": f"lay-{id}", "name": f"Lay {id}", "answers": {f"f{at}": 1}, "uses": {id: 1}, "hours": 1}
        for at, id in enumerate(goods, 1)
    ]
    catalog = {"products": products, "shops": [shop or SHOP]}
    write_job(folder, (100, 90, 30), remedies, {"budget": budget, "hours": [3, 3], **brief}, catalog)


def test_what_was_paid_is_gone_and_what_it_bought_is_there(tmp_path: Path) -> None:
    """The rug is bought: 30.00, its tax and the first order's delivery are spent, the rest pays a delivery again."""
    shopping(tmp_path)
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), {"product:rug@mill": "bought"}))
    assert found.left.paid.spent_minor == 3000 + 500 + 300
    assert found.book.budget_minor == 10000 - 3800
    assert ids(found.book) == ["lay-lamp", "lay-pad", "lay-rug"]
    assert lines(found.book) == [
        ("Lamp", 2000),
        ("Pad", 1000),
        ("Delivery, Mill", 500),
        ("Tax, Mill", 300),
    ]


def test_a_whole_order_is_taxed_as_it_was_planned(tmp_path: Path) -> None:
    """All three are bought: delivery and tax of the plan are spent, and nothing is bought again."""
    shopping(tmp_path)
    job = read_at(tmp_path)
    bought = dict.fromkeys(("product:rug@mill", "product:lamp@mill", "product:pad@mill"), "bought")
    found = rest(job, back(plan_of(job), bought))  # type: ignore[arg-type]
    assert found.left.paid.spent_minor == 6000 + 500 + 600
    assert (found.book.spent_minor, ids(found.book)) == (0, ["lay-lamp", "lay-pad", "lay-rug"])


def test_sums_that_were_typed_count_as_typed(tmp_path: Path) -> None:
    """Rug, delivery and tax at what was really paid."""
    shopping(tmp_path)
    job = read_at(tmp_path)
    paid = {"product:rug@mill": 3250, "delivery:Delivery, Mill@mill": 0, "tax:Tax, Mill@mill": 325}
    found = rest(job, back(plan_of(job), paid=paid))
    assert found.left.paid.spent_minor == 3250 + 0 + 325
    assert [fact.kind for fact in found.since.facts if fact.name == "Rug"] == ["dearer"]


def test_dearer_than_planned_leaves_less_for_the_rest(tmp_path: Path) -> None:
    """80.00 are just enough for all; with a rug 10.00 dearer the pad, which does least, falls off, and that is why."""
    shopping(tmp_path, 80, {"shop": "mill"})
    job = read_at(tmp_path)
    book = plan_of(job)
    assert ids(book) == ["lay-lamp", "lay-pad", "lay-rug"]
    found = rest(job, back(book, {"product:rug@mill": "bought"}, {"product:rug@mill": 5500}))
    assert ids(found.book) == ["lay-lamp", "lay-rug"]
    assert [(one.names, one.why and one.why.kind) for one in found.since.off] == [(("Lay pad",), "dearer")]
    assert found.since.off[0].why is not None
    assert (found.since.off[0].why.name, found.since.off[0].why.amount) == ("Rug", 2500)


def test_what_is_held_back_is_there_for_what_gets_dearer(tmp_path: Path) -> None:
    """Of 10.00 held back a rug that is 4.00 dearer leaves 6.00; one that is 15.00 dearer leaves nothing of it."""
    shopping(tmp_path, 90, {"shop": "mill"}, contingency=10)
    job = read_at(tmp_path)
    book = plan_of(job)
    dear = rest(job, back(book, {"product:rug@mill": "bought"}, {"product:rug@mill": 3400}))
    assert (dear.book.budget_minor, dear.book.held_back_minor) == (5600, 600)
    dearer = rest(job, back(book, {"product:rug@mill": "bought"}, {"product:rug@mill": 4500}))
    assert (dearer.book.budget_minor, dearer.book.held_back_minor) == (4500, 0)


def test_cheaper_makes_up_for_dearer(tmp_path: Path) -> None:
    """What is held back is drawn on for what was overpaid on the whole, never added to."""
    shopping(tmp_path, 90, {"shop": "mill"}, contingency=10)
    job = read_at(tmp_path)
    book = plan_of(job)
    both = {"product:rug@mill": 3400, "product:lamp@mill": 1700}
    assert rest(job, back(book, paid=both)).book.held_back_minor == 900
    assert rest(job, back(book, paid={**both, "product:rug@mill": 2000})).book.held_back_minor == 1000


def test_more_paid_than_there_was(tmp_path: Path) -> None:
    """Nothing that costs anything is planned; what was bought is still put to use; the sum is said."""
    shopping(tmp_path, 80, {"shop": "mill"})
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), paid={"product:rug@mill": 9000}))
    assert (found.book.budget_minor, found.book.spent_minor, ids(found.book)) == (0, 0, ["lay-rug"])
    assert found.since.over_budget_minor == 1000


def test_given_back(tmp_path: Path) -> None:
    """The money is there again but for what it cost in the end, the tax is too; the rug is not bought again."""
    shopping(tmp_path)
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), {"product:rug@mill": "returned"}, {"product:rug@mill": 350}))
    assert found.left.paid.spent_minor == 350 + 500
    assert ids(found.book) == ["lay-lamp", "lay-pad"]
    assert [(one.names, one.why and one.why.kind) for one in found.since.off] == [(("Lay rug",), "returned")]


def test_money_of_next_month(tmp_path: Path) -> None:
    """The brief has more in it now: what did not fit before comes on, and the reason is that."""
    shopping(tmp_path, 55, {"shop": "mill"})
    first = plan_of(read_at(tmp_path))
    assert ids(first) == ["lay-lamp", "lay-rug"]
    told = back(first, dict.fromkeys(("product:rug@mill", "product:lamp@mill"), "bought"))
    found = rest(read_at(tmp_path, "65"), told)
    assert ids(found.book) == ["lay-lamp", "lay-pad", "lay-rug"]
    assert [(one.names, one.why and one.why.kind) for one in found.since.on] == [(("Lay pad",), "more money")]


def test_twice_replanned(tmp_path: Path) -> None:
    """The second order's delivery is still to be paid as long as nothing of that order is bought."""
    shopping(tmp_path)
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), {"product:rug@mill": "bought"}))
    again = rest(job, back(first.book))
    assert again.left.paid.spent_minor == first.left.paid.spent_minor
    assert lines(again.book) == lines(first.book)
    third = rest(job, back(first.book, {"product:pad@mill": "bought"}))
    assert third.left.paid.spent_minor == first.left.paid.spent_minor + 1000 + 500 + 100


def test_pay_and_own_costs_of_what_is_done_are_spent(tmp_path: Path) -> None:
    """Half of a remedy is done: half of its pay is spent; its own cost only where it was paid."""
    steps = [{"hours": 1}, {"hours": 1}]
    remedies: list[Remedy] = [{"remedy": "m1", "answers": {"f1": 1}, "cost": 10, "steps": steps}]
    write_job(tmp_path, (100,), remedies, {"budget": 100, "hours": [2, 2], "labour": 12})
    job = read_at(tmp_path)
    book = plan_of(job)
    half = rest(job, back(book, done=("m1#1",)))
    assert (half.left.paid.spent_minor, half.book.spent_minor) == (1200, 1000 + 1200)
    paid = rest(job, back(book, {"remedy:m1": "bought"}, done=("m1#1",)))
    assert (paid.left.paid.spent_minor, paid.book.spent_minor) == (2200, 1200)


def test_fixed_costs_are_over_when_all_is_done(tmp_path: Path) -> None:
    """Before that they are still to be paid, unless a sum was typed."""
    shopping(tmp_path, 100, {"shop": "mill"}, fixed=[{"name": "Skip", "cost": 8}])
    job = read_at(tmp_path)
    book = plan_of(job)
    assert rest(job, back(book, done=("lay-rug#1",))).book.spent_minor == 800 + 2000 + 1000
    typed = rest(job, back(book, paid={"fixed:Skip": 950}))
    assert (typed.left.paid.spent_minor, typed.book.spent_minor) == (950, 6000)
    assert rest(job, everything(book)).book.money == ()


def test_done_work_has_cost_what_it_took(tmp_path: Path) -> None:
    """The rug is laid, so it was bought, though nobody ticked it; that is told apart."""
    shopping(tmp_path, 100, {"shop": "mill"})
    job = read_at(tmp_path)
    found = rest(job, back(plan_of(job), done=("lay-rug#1",)))
    assert found.left.paid.spent_minor == 3000
    assert found.left.paid.counted == ("product:rug@mill",)
    assert "Counted as bought though not ticked, because work that needs it is done: Rug." in found.book.notes
    summed = rest(job, back(plan_of(job), paid={"product:rug@mill": 3100}))
    assert "Counted as bought though not ticked, because a sum is typed there: Rug." in summed.book.notes
    assert notes_of(Paid()) == ()


@pytest.mark.parametrize("wish_for", ["lay-lamp", "all"])
def test_a_must_that_the_rest_cannot_keep(tmp_path: Path, wish_for: str) -> None:
    """The money for it is gone: there is no plan, and the rest says so."""
    shopping(tmp_path, 60, {"shop": "mill"}, must=[wish_for] if wish_for != "all" else "all")
    job = read_at(tmp_path)
    found = replanned(job, back(plan_of(job), paid={"product:rug@mill": 5500}), TODAY, wish())
    assert isinstance(found, NoRest)


def test_pay_is_counted_once(tmp_path: Path) -> None:
    """Step 1 of 3 is done: 12.00 are spent, however often the rest is planned; with step 2 it is 24.00."""
    remedies: list[Remedy] = [{"remedy": "m1", "answers": {"f1": 1}, "steps": [{"hours": 1}] * 3}]
    write_job(tmp_path, (100,), remedies, {"budget": 100, "hours": [1, 1, 1], "labour": 12})
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), done=("m1#1",)))
    second = rest(job, back(first.book))
    third = rest(job, back(second.book))
    spent = [(one.left.paid.spent_minor, one.book.spent_minor) for one in (first, second, third)]
    assert spent == [(1200, 2400)] * 3
    assert rest(job, back(third.book, done=("m1#2",))).left.paid.spent_minor == 2400


def test_pay_for_a_round_of_shops_is_counted_once(tmp_path: Path) -> None:
    """The round is made and paid, the lamp was not there: the second round is still to be paid, each time."""
    errands = [{"errand": "go", "name": "Go", "shops": ["mill"], "hours": 1}]
    shopping(tmp_path, 200, {"shop": "mill"}, labour=12, errands=errands, hours=[3, 3, 3])
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), {"product:rug@mill": "bought"}, done=("errand:go#1",)))
    second = rest(job, back(first.book))
    assert first.left.paid.spent_minor == second.left.paid.spent_minor == 3000 + 1200
    assert lines(first.book) == lines(second.book)
    assert ("Labour: Go", 1200) in lines(first.book)


def test_a_hire_that_is_still_to_be_made_is_not_paid(tmp_path: Path) -> None:
    """Step 1 takes all of session 1: step 2 hires the saw again, and that hire is still to be paid the next time."""
    remedies: list[Remedy] = [
        {"remedy": "m1", "answers": {"f1": 1}, "tools": ["saw"], "steps": [{"hours": 1}, {"hours": 1}]}
    ]
    tools = {"tools": [{"tool": "saw", "hire_per_session": 10}]}
    write_job(tmp_path, (100,), remedies, {"budget": 100, "hours": [2, 2, 2]}, tools)
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), done=("m1#1",), minutes={"m1#1": 120}))
    second = rest(job, back(first.book))
    assert [(one.left.paid.spent_minor, one.book.spent_minor) for one in (first, second)] == [(1000, 1000)] * 2
    last = [one.id for one in second.book.remembered.steps][-1] if second.book.remembered else ""
    assert rest(job, back(second.book, done=(last,))).left.paid.spent_minor == 2000


def test_fixed_costs_are_as_paid_the_second_time_as_the_first(tmp_path: Path) -> None:
    """Not all was done: the skip is still to be paid, and that stays so. All was done: it is paid, and stays so."""
    shopping(tmp_path, 100, {"shop": "mill"}, fixed=[{"name": "Skip", "cost": 8}], never=["lay-pad"], hours=[1, 1])
    job = read_at(tmp_path)
    book = plan_of(job)
    gone = read_at(tmp_path, "38")
    some = rest(gone, back(book, done=("lay-rug#1",)))
    assert (ids(some.book), some.left.paid.spent_minor, some.book.spent_minor) == ([], 3000, 800)
    again = rest(gone, back(some.book))
    assert (again.left.paid.spent_minor, again.book.spent_minor) == (3000, 800)
    done = rest(job, everything(book))
    twice = rest(job, back(done.book))
    assert done.left.paid.spent_minor == twice.left.paid.spent_minor == 5800
    assert done.book.money == twice.book.money == ()


def test_tax_that_was_worked_out_is_worked_out_again(tmp_path: Path) -> None:
    """The rug goes back later: its tax goes as if it had gone back at once, and is there when the rug is kept."""
    shopping(tmp_path)
    job = read_at(tmp_path)
    both: dict[str, State] = {"product:rug@mill": "bought", "product:lamp@mill": "bought"}
    first = rest(job, back(plan_of(job), both))
    assert first.left.paid.spent_minor == 5000 + 500 + 500
    later = rest(job, back(first.book, {"product:rug@mill": "returned"}, {"product:rug@mill": 0}))
    assert later.left.paid.spent_minor == 2000 + 500 + 200
    assert rest(job, back(plan_of(job), {**both, "product:rug@mill": "returned"})).left.paid.spent_minor == 2700
    kept = back(later.book, {"product:rug@mill": "bought"}, {"product:rug@mill": 3000})
    assert rest(job, kept).left.paid.spent_minor == 6000


def test_tax_that_was_typed_stays(tmp_path: Path) -> None:
    """A receipt says 7.77 of tax: that stays whatever goes back, until somebody types something else."""
    shopping(tmp_path)
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), {"product:rug@mill": "bought"}, {"tax:Tax, Mill@mill": 777}))
    later = rest(job, back(first.book, {"product:rug@mill": "returned"}, {"product:rug@mill": 0}))
    assert later.left.paid.spent_minor == 777 + 500


def test_what_was_worked_out_goes_with_the_tick(tmp_path: Path) -> None:
    """Lamp and its step ticked by mistake: pay, delivery and tax that came of it go when the ticks are taken away."""
    shopping(tmp_path, labour=12)
    job = read_at(tmp_path)
    first = rest(job, back(plan_of(job), {"product:lamp@mill": "bought"}, done=("lay-lamp#1",)))
    assert first.left.paid.spent_minor == 2000 + 500 + 200 + 1200
    told = back(first.book)
    cleared = SoFar(
        told.remembered,
        tuple(LineBack(one.planned, None, one.paid_minor if one.state is None else None) for one in told.lines),
        tuple(replace(one, done=False) for one in told.steps),
    )
    assert rest(job, cleared).left.paid.spent_minor == 0
