"""How dear a product may get before the plan changes: held against every subset in every placing, price by price."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction

import pytest

from budgetfix.optimize.answering import solve
from budgetfix.optimize.ceilings import Ceiling, ceilings
from budgetfix.optimize.problem import Answer, Option, Plan, Problem, Product, Shop
from budgetfix.optimize.recount import marks_of
from tests.optimize import brute
from tests.optimize.test_curve import key, small_world
from tests.optimize.worlds import World, marked, points_problem, still, table_tree, ticking

FAR = 100_000
"""A price rise beyond every budget and gap of the small worlds."""


@dataclass(frozen=True)
class Row:
    """The best placing of one set at the planned prices, and its packs."""

    chosen: frozenset[str]
    left: tuple[int, ...]
    spent: int
    minutes: int
    last: int
    packs: dict[str, int]


def alike(number: int) -> World:
    """A random job in which many sets do as much: what remains is told in steps so coarse that most sets share one.

    Every option uses goods, so that the sets differ in packs; each kind of goods comes in packs of one or two.
    """
    world = small_world(number, people=1 + number % 2, options=5)
    problem = world.problem
    tables = tuple(
        (ids, {chosen: (0, points // (60 if number % 3 else 99)) for chosen, (_, points) in table.items()})
        for ids, table in world.tables
    )
    options = tuple(
        replace(one, cost_minor=one.cost_minor // 5, uses=_more(one, GOODS[(at + number) % 3], 1 + at % 3))
        for at, one in enumerate(problem.options)
    )
    trees = tuple(table_tree(f"t{at}", options, table, ids) for at, (ids, table) in enumerate(tables))
    goods = tuple(replace(one, pack=1 + (number + at) % 2) for at, one in enumerate(problem.products))
    must = (options[0].id, options[1].id)
    return World(replace(problem, options=options, trees=trees, products=goods, must=(must,)), tables)


def _more(one: Option, product: str, amount: int) -> tuple[tuple[str, int], ...]:
    return tuple(sorted({**dict(one.uses), product: amount}.items()))


GOODS = ("paint", "rug", "tape")


def rows(world: World) -> list[Row]:
    """Every set that can be placed, each in all of its placings."""
    problem = world.problem
    by_id = {one.id: one for one in problem.options}
    found = []
    for chosen in brute.subsets(problem):
        left = world.left(chosen)
        if left is None:
            continue
        minutes = sum(step.minutes * step.people for id in chosen for step in by_id[id].steps)
        packs = {product.id: _packs(product, [by_id[id] for id in chosen]) for product in problem.products}
        for where in brute.placings(problem, chosen):
            money = brute.spent(problem, chosen, where)
            if money is not None:
                worth = (*(left if problem.hazards_first else (sum(left),)), marks_of(problem, chosen))
                last = max((place for place, _ in where.values()), default=-1)
                found.append(Row(chosen, worth, money, minutes, last, packs))
    return found


def _packs(product: Product, chosen: list[Option]) -> int:
    used = sum(dict(one.uses).get(product.id, 0) for one in chosen)
    return max(0, -(-(used - product.on_hand) // product.pack))


def chosen_at(world: World, every: list[Row], id: str, dearer: Fraction) -> frozenset[str] | None:
    """The set chosen by all wishes when each pack of a product costs so much more; None where nothing fits."""
    problem = world.problem
    ids = sorted(one.id for one in problem.options)
    fitting = [
        (row.left, money, row.minutes, row.last if problem.sessions else 0, tuple(one not in row.chosen for one in ids))
        for row in every
        if (money := row.spent + dearer * row.packs[id]) <= (FAR * FAR if (b := problem.budget_minor) is None else b)
    ]
    if not fitting:
        return None
    return frozenset(id for id, absent in zip(ids, min(fitting)[-1], strict=True) if not absent)


def planned(problem: Problem) -> Plan | None:
    """The best plan down to its ids."""
    answer = solve(problem, clock=still, depth="set")
    return answer.plan if isinstance(answer, Answer) else None


def usual(number: int) -> World:
    """A random job with one or two people."""
    return small_world(number, people=1 + number % 2, options=5)


def leaving(number: int) -> World:
    """A random job in which many sets do as much, and differ in what they leave behind: that comes before money."""
    return marked(alike(number), number)


@pytest.mark.parametrize("made", [usual, alike, leaving])
@pytest.mark.parametrize("number", range(700, 760))
def test_up_to_the_ceiling_the_set_stays_and_one_unit_more_alters_it(made: Callable[[int], World], number: int) -> None:
    """For each product that is bought, the sum for the whole line, in steps of one minor unit."""
    world = made(number)
    best = planned(world.problem)
    if best is None:
        return
    every = rows(world)
    mine = frozenset(best.chosen)
    found = ceilings(world.problem, best, seconds=60, clock=still)
    assert set(found) == set(dict(best.packs))
    for id, packs in best.packs:
        ceiling = found[id]
        assert chosen_at(world, every, id, Fraction(0)) == mine
        if ceiling.any_price:
            assert ceiling.more_minor is None
            assert chosen_at(world, every, id, Fraction(FAR, packs)) == mine
            continue
        most = ceiling.more_minor
        assert most is not None
        for more in {0, most // 2, most}:
            assert chosen_at(world, every, id, Fraction(more, packs)) == mine
        assert chosen_at(world, every, id, Fraction(most + 1, packs)) != mine


@pytest.mark.parametrize("number", range(700, 730))
@pytest.mark.parametrize("made", [usual, alike])
def test_the_catalogue_with_the_new_price_is_planned_the_same_up_to_there(
    made: Callable[[int], World], number: int
) -> None:
    """Solved again with the pack dearer by whole minor units, through the charge: delivery and tax go by the shelf."""
    world = made(number)
    best = planned(world.problem)
    if best is None:
        return
    for id, ceiling in ceilings(world.problem, best, seconds=60, clock=still).items():
        packs = dict(best.packs)[id]
        most = FAR if ceiling.any_price else (ceiling.more_minor or 0)
        for each, same in ((most // packs, True), (most // packs + 1, ceiling.any_price)):
            again = planned(dearer(world.problem, id, each))
            assert (again is not None and again.chosen == best.chosen) is same


def dearer(problem: Problem, id: str, each: int) -> Problem:
    """The same problem with every pack of one product charged at so much more."""

    def raised(one: Product) -> Product:
        charge = Fraction(one.charge_numerator, one.charge_denominator) + Fraction(each, one.price_minor)
        return replace(one, charge_numerator=charge.numerator, charge_denominator=charge.denominator)

    return replace(problem, products=tuple(raised(one) if one.id == id else one for one in problem.products))


@pytest.mark.parametrize("number", range(700, 740))
def test_without_it_is_the_best_that_buys_none(number: int) -> None:
    """Where the shop has not got it, what is on hand may still be used."""
    world = small_world(number, options=5)
    best = planned(world.problem)
    if best is None:
        return
    budget = world.problem.budget_minor
    for id, ceiling in ceilings(world.problem, best, seconds=60, clock=still).items():
        none = [
            (row.left, row.spent)
            for row in rows(world)
            if not row.packs[id] and (budget is None or row.spent <= budget)
        ]
        assert ceiling.nothing == (not none)
        if ceiling.without is not None:
            plan = ceiling.without
            assert (key(world, plan), plan.spent_minor) == min(none)


def rugs(budget_minor: int | None, *, also: int = 0) -> Problem:
    """Three rolls at 5.00 in a shop that brings them for 3.00, or one carpet at 20.00: as many points either way."""
    whole = Option("whole", "floor", uses=(("carpet", 1), ("roll", also)))
    options = (Option("rolls", "floor", uses=(("roll", 3),)), whole)
    gains = {"rolls": 40, "whole": 40}
    products = (Product("carpet", 2000), Product("roll", 500, shop="mill"))
    return points_problem(options, gains, products=products, shops=(Shop("mill", 300),), budget_minor=budget_minor)


def most(problem: Problem, id: str) -> Ceiling:
    """The ceiling of one product of the best plan."""
    best = planned(problem)
    assert best is not None
    return ceilings(problem, best, seconds=60, clock=still)[id]


def test_by_hand() -> None:
    """Rolls and delivery are 18.00, the carpet 20.00: the three may cost 2.00 more, less what the budget lacks."""
    assert most(rugs(None), "roll").more_minor == 200
    assert most(rugs(1950), "roll").more_minor == 150
    assert most(rugs(1800), "roll").more_minor == 0


def test_packs_that_the_other_plan_needs_as_well_get_dearer_there_too() -> None:
    """The carpet with one roll for its edge is 28.00, 10.00 more: shared by two of three packs, 15.00."""
    assert most(rugs(None, also=1), "roll").more_minor == 1500


def test_any_price_is_told_from_not_worked_out() -> None:
    """Without a budget and with nothing else that does as much, no price alters the plan; the clock leaves it open."""
    problem = points_problem((Option("a", uses=(("tin", 1),)),), {"a": 5}, products=(Product("tin", 700),))
    assert most(problem, "tin") == replace(most(problem, "tin"), any_price=True, more_minor=None)
    best = planned(problem)
    assert best is not None
    assert ceilings(problem, best, seconds=0, clock=ticking(1.0)) == {}
    assert ceilings(replace(problem, must_all=True), best, seconds=60, clock=still) == {}
