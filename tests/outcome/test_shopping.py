"""What a shop needs beside the bill: bags, days to give back, most to pay, what else would do, what to take along."""

from __future__ import annotations

import time
from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction

import pytest

from budgetfix.catalog.models import Product
from budgetfix.optimize.ceilings import Ceiling, ceilings
from budgetfix.outcome.book import MoneyLine, Task
from budgetfix.outcome.make import money
from budgetfix.outcome.second_choice import second_choice
from budgetfix.outcome.shopping import CHECK_BEFORE, CHECK_THERE, Shopped, letters, shopped
from budgetfix.outcome.take_along import sort_of, take_along
from budgetfix.outcome.tasks import tasks
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.items import Curtain, Opening, Piece
from budgetfix.room.survey import Change, Household, Survey
from tests.outcome.test_check import ANSWER, BASE, FOUND, FRAMED

PLAN = ANSWER.plan
PRICES = ceilings(FRAMED.problem, PLAN, seconds=30, clock=time.monotonic)


def about(**product: object) -> Shopped:
    """The small job's plan, its tin with other fields; the mill's errand runs on the first Saturday."""
    tins = tuple(one.model_copy(update=product) for one in BASE.catalog.products)
    catalog = BASE.catalog.model_copy(update={"products": tins})
    return Shopped(replace(BASE, catalog=catalog), FRAMED, PLAN, None, PRICES, {})


def bought(made: Shopped) -> tuple[MoneyLine, tuple[Task, ...]]:
    """The one line of goods, and the tasks."""
    lines, todo = shopped(
        made,
        money(made.base, FOUND.bill, FOUND.chosen),
        tasks(made.base.brief, made.base.catalog, FRAMED, PLAN, {"paint": 300, "sort": 100}),
    )
    return next(line for line in lines if line.product), todo


def test_the_most_to_pay_is_the_line_and_what_it_may_cost_more() -> None:
    """Paint 22.00 of the 60.00: as much is done by nothing cheaper, so it may cost what is left, 33.00 more."""
    line, _ = bought(about())
    assert PRICES["tin"].more_minor == 6000 - PLAN.spent_minor
    assert line.most_minor == line.line_minor + 3300
    assert not line.any_price
    open_line, _ = bought(replace(about(), prices={}))
    assert (open_line.most_minor, open_line.any_price, open_line.second_choice) == (None, False, "")
    free, _ = bought(replace(about(), prices={"tin": Ceiling("tin", any_price=True)}))
    assert (free.most_minor, free.any_price) == (None, True)


def test_ones_own_stock_has_no_most_to_pay() -> None:
    """A piece from the own store has a fee that one sets oneself, and no other is bought in its place."""
    line, _ = bought(about(stock=2))
    assert (line.most_minor, line.any_price, line.second_choice) == (None, False, "")
    assert bought(about())[0].second_choice


def test_what_else_would_do() -> None:
    """Without the paint the wall is washed: instead of it, with the points that this leaves."""
    words = second_choice(BASE, FRAMED, PLAN, PRICES["tin"])
    assert words.startswith("instead: ")
    assert words.endswith(" points less")
    assert FRAMED.candidates["wash"].name in words
    barred = second_choice(BASE, FRAMED, PLAN, Ceiling("tin", nothing=True))
    assert barred == "nothing: no plan keeps your wishes without it"
    alone = replace(PLAN, chosen=("sort",), points=PLAN.points + 1)
    assert second_choice(BASE, FRAMED, PLAN, Ceiling("tin", without=alone)) == "nothing in its place: 1 point less"
    same = replace(PLAN, chosen=("sort",), hazards=PLAN.hazards + 250, points=PLAN.points - 5)
    words = second_choice(BASE, FRAMED, PLAN, Ceiling("tin", without=same))
    assert words == "nothing in its place: 250 hazard points stay, 5 points more"


def test_another_of_its_sort_is_named_with_its_price() -> None:
    """A second tin of paint that the best plan without the first one buys: name, label, price."""
    other = Product(product="tin2", name="Chalk paint", label="2 L", price_minor=3100)
    tin = next(one for one in BASE.catalog.products if one.product == "tin")
    catalog = BASE.catalog.model_copy(update={"products": (tin.model_copy(update={"name": "Paint"}), other)})
    chalk = replace(FRAMED.candidates["paint"], id="chalk", uses=(("tin2", Fraction(1)),), pick_one="walls")
    paint = replace(FRAMED.candidates["paint"], pick_one="walls")
    sold = next(one for one in FRAMED.problem.products if one.id == "tin")
    problem = replace(FRAMED.problem, products=(sold, replace(sold, id="tin2", price_minor=3100)))
    framed = replace(FRAMED, problem=problem, candidates={**FRAMED.candidates, "paint": paint, "chalk": chalk})
    then = replace(PLAN, chosen=("chalk", "sort"), packs=(("tin2", 1),), points=PLAN.points + 39)
    words = second_choice(replace(BASE, catalog=catalog), framed, PLAN, Ceiling("tin", without=then))
    assert words == "Chalk paint, 2 L, 31.00: 39 points less"


def test_bags_are_lettered_in_the_order_of_work() -> None:
    """Only tasks with goods have a bag; it stands on their first step, and on each line of goods for them."""
    line, todo = bought(about())
    assert line.bag == "A"
    assert next(task.bag for task in todo if task.candidate == "paint") == "A"
    assert {task.bag for task in todo if task.candidate != "paint"} == {""}
    assert [letters(number) for number in (0, 25, 26, 51, 52, 701, 702)] == ["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]


@pytest.mark.parametrize(
    ("own", "shops", "no_return", "mind"),
    [(None, None, False, ""), (30, None, False, ""), (None, 14, False, ""), (0, 14, True, CHECK_THERE)],
)
def test_the_last_day_to_give_it_back(own: int | None, shops: int | None, no_return: bool, mind: str) -> None:
    """The product's days win over the shop's, and count from the day it is fetched; 0 days is no return at all."""
    made = about(return_days=own)
    mills = tuple(one.model_copy(update={"return_days": shops}) for one in made.base.catalog.shops)
    catalog = made.base.catalog.model_copy(update={"shops": mills})
    made = replace(made, base=replace(made.base, catalog=catalog))
    line, _ = bought(dated(made))
    days = own if own is not None else shops
    assert line.return_by == (date(2026, 6, 6) + timedelta(days=days) if days else None)
    assert (line.no_return, line.mind) == (no_return, mind)


def dated(made: Shopped) -> Shopped:
    """The same with sessions on two Saturdays, ordered on the Monday before."""
    hours = tuple(
        one.model_copy(update={"on": date(2026, 6, 6) + timedelta(days=7 * at)})
        for at, one in enumerate(made.base.brief.hours or ())
    )
    brief = made.base.brief.model_copy(update={"hours": hours, "ordered": date(2026, 6, 1)})
    return replace(made, base=replace(made.base, brief=brief))


def test_used_after_the_last_day_is_said() -> None:
    """Fetched on the 6th with 3 days, used on the 13th: unpack and check before."""
    made = dated(about(return_days=3))
    later = tuple(replace(one, session=1) if one.option == "paint" else one for one in PLAN.placed)
    line, _ = bought(replace(made, plan=replace(PLAN, placed=later)))
    assert (line.return_by, line.mind) == (date(2026, 6, 9), CHECK_BEFORE)
    line, _ = bought(made)
    assert line.mind == ""


WINDOW = Opening(name="window", what="window", wall="A", from_left=1000.0, width=1200.0, bottom=900.0, top=2100.0)
DOOR = Opening(name="door", wall="B", width=750.0)
CURTAIN = Curtain(
    name="curtain", window="window", rod_height=2390.0, rod_from_left=750.0, rod_width=1700.0, panel_width=1400.0,
    hem=10.0,
)  # fmt: skip
SOFA = Piece(name="sofa", what="sofa", wall="A", width=2100.0, depth=900.0, height=800.0)
ROOM = Survey(household=Household(unit="mm"), openings=(WINDOW, DOOR), curtains=(CURTAIN,), furniture=(SOFA,))
AT_WINDOW = Candidate("rod", "longer-rod", "Rod", changes=(Change("curtains", "curtain"),))
AT_SOFA = Candidate("sofa", "new-sofa", "Sofa", changes=(Change("furniture", "sofa"),))


@pytest.mark.parametrize(
    ("product", "buyer", "words"),
    [
        ({"name": "Curtain rod"}, AT_WINDOW, "window: frame 1200 mm wide, rod 1700 mm, 750 mm to 2450 mm from the left,"
         " 2390 mm up"),
        ({"what": "panels"}, AT_WINDOW, "window: rod 2390 mm up, 1700 mm wide, hem 10 mm off the floor (2380 mm below "
         "the rod)"),
        ({"name": "LED lamp, E27"}, AT_SOFA, "the old lamp, to compare its cap with E27; the most watts on each shade"),
        ({"name": "LED lamp"}, AT_SOFA, "the old lamp: its cap; the most watts on each shade"),
        ({"what": "console"}, AT_SOFA, "the tape; door 750 mm wide; stairs and car, measured"),
        ({"what": "paint"}, AT_SOFA, "a chip of the old paint, as large as a coin"),
        ({"name": "A thing"}, AT_SOFA, ""),
    ],
)  # fmt: skip
def test_what_to_take_along_names_figures_of_the_room(product: dict[str, object], buyer: Candidate, words: str) -> None:
    """Common practice by sort of goods, with widths and heights where the survey has them."""
    made = Product.model_validate({"product": "p", "price_minor": 1, **product})
    assert take_along(made, [buyer], ROOM, ROOM) == words


def test_what_a_product_is() -> None:
    """What the catalogue says wins; else the first word that the name holds."""
    assert sort_of(Product(product="p", name="Rug pad", what="rug", price_minor=1)) == "rug"
    assert sort_of(Product(product="p", name="Rug pad", price_minor=1)) == "pad"
    assert sort_of(Product(product="p", name="Ein Ding", price_minor=1)) == ""
    own, _ = bought(about(take_along="the old tin"))
    assert own.take_along == "the old tin"
