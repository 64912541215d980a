"""Answers of one job with fewer pieces, and small worlds that share a rug: the same as trying every way to share it."""

from __future__ import annotations

import time
from collections.abc import Sequence
from dataclasses import replace
from itertools import product
from pathlib import Path

import pytest

from budgetfix.optimize import solve
from budgetfix.optimize.problem import Answer
from budgetfix.optimize.sharing import Answered, Left, Memory, NoShare, Shared, share
from budgetfix.optimize.stock import Packs, Stock
from budgetfix.pipeline.planning import Wish
from budgetfix.pipeline.seat import Seat, answered, fitted_more, left_by, sit
from tests.optimize import brute
from tests.optimize.many_houses import too_many
from tests.optimize.worlds import World, marked, random_world, still
from tests.pipeline.street import only_plans, read_street, write_street

WISH = Wish(60.0, time.monotonic)
PIECES = ("paint", "rug")


def seat(folder: Path) -> Seat:
    """Elm Street, planned with every piece."""
    write_street(folder)
    found = sit(read_street(folder)[0], WISH)
    assert isinstance(found, Seat)
    return found


def test_fewer_pieces_do_no_more(tmp_path: Path) -> None:
    """With the rug 0 points are left for 100.00, without it 20; each says what it holds and under which ceilings."""
    elm = seat(tmp_path)
    assert answered(elm, (), WISH) == Answered((0, 0, 0, 0, 10000), (0, 0, 0, 0, 10000), (("lamp", 2), ("rug", 1)))
    without: Packs = (("rug", 0),)
    assert answered(elm, without, WISH) == Answered((0, 0, 20, 0, 4000), (0, 0, 20, 0, 4000), (("lamp", 2),), without)


def test_a_must_without_its_piece_has_no_plan(tmp_path: Path) -> None:
    """None is no mistake: without the rug the must cannot be kept."""
    write_street(tmp_path)
    job = read_street(tmp_path)[0]
    must = replace(job, brief=type(job.brief)(**{**dict(job.brief), "must": ("hall",)}))
    found = sit(must, WISH)
    assert isinstance(found, Seat)
    assert answered(found, (("rug", 0),), WISH) is None


def test_listed_faults_are_not_fitted_again(tmp_path: Path) -> None:
    """Where nothing is measured nothing new can fit."""
    elm = seat(tmp_path)
    answered(elm, (("rug", 0),), WISH)
    assert not fitted_more(elm, (("rug", 0),), WISH)


def with_most(world: World, ceilings: Packs) -> World:
    """A world with no more packs than that."""
    most = dict(ceilings)
    products = tuple(replace(one, most=most.get(one.id, one.most)) for one in world.problem.products)
    return replace(world, problem=replace(world.problem, products=products))


def worlds(number: int) -> tuple[tuple[World, ...], Stock]:
    """Two or three random jobs that share cans of paint and rugs."""
    packs = {"paint": 1 + number % 2, "rug": 1 + number % 3}
    each = tuple(
        with_most(random_world(number * 10 + at, options=4, sessions=2), tuple(packs.items()))
        for at in range(2 + number % 2)
    )
    stays = ((1, 5), (5, 9), (number % 11, 12))
    return each, Stock(packs, stays[: len(each)])


def asked(each: tuple[World, ...], wanted: Sequence[tuple[int, Packs]]) -> list[Answered | None]:
    """The chooser's answers."""
    found: list[Answered | None] = []
    for at, ceilings in wanted:
        problem = with_most(each[at], ceilings).problem
        answer = solve(problem, clock=still, depth="set")
        left = left_by(problem, answer.plan) if isinstance(answer, Answer) else None
        held = tuple(pair for pair in answer.plan.packs if pair[0] in PIECES) if isinstance(answer, Answer) else ()
        found.append(Answered(left, left, held) if left is not None else None)
    return found


def slow(each: tuple[World, ...], stock: Stock) -> Left | None:
    """Every way to deal out the pieces, each job answered by trying everything."""
    ways = [
        [(("paint", p), ("rug", r)) for p in range(stock.packs["paint"] + 1) for r in range(stock.packs["rug"] + 1)]
    ]
    best = [{way: tried(world, way) for way in ways[0]} for world in each]
    sums = []
    for dealt in product(*(ways * len(each))):
        found = [best[at][way] for at, way in enumerate(dealt)]
        if not too_many(stock, dealt) and all(found):
            sums.append(tuple(map(sum, zip(*(one for one in found if one), strict=True))))
    return min(sums, default=None)


def tried(world: World, ceilings: Packs) -> Left | None:
    """What the best plan of one job leaves, the slow way."""
    job = with_most(world, ceilings)
    best = brute.best(job)
    if best is None:
        return None
    marks = sum(one.marks for one in job.problem.options if one.id in best.chosen)
    if job.problem.must_all:
        return (best.last + 1, 0, 0, marks, best.spent)
    if not job.problem.hazards_first:
        return (0, 0, best.hazards + best.points, marks, best.spent)
    return (0, best.hazards, best.points, marks, best.spent)


@pytest.mark.parametrize("number", range(16))
def test_sharing_agrees_with_every_way_to_deal_out(number: int) -> None:
    """Jobs with hours, waits, shops, musts and everything at once: the sums are those of the best way to deal out."""
    agrees(*worlds(number))


@pytest.mark.parametrize("number", range(16))
def test_so_it_does_where_plans_leave_marks(number: int) -> None:
    """The same jobs, where the fewest marks in all come before the least money in all."""
    each, stock = worlds(number)
    agrees(tuple(marked(one, number * 10 + at) for at, one in enumerate(each)), stock)


def agrees(each: tuple[World, ...], stock: Stock) -> None:
    """What the search leaves is what the best of all ways to deal out leaves, proven."""
    found = share(stock, Memory(lambda wanted: asked(each, wanted)), lambda: False)
    right = slow(each, stock)
    if right is None:
        assert isinstance(found, NoShare)
    else:
        assert isinstance(found, Shared)
        assert (found.left, found.proven) == (right, True)


def test_a_street_keeps_its_seats_after_the_search(tmp_path: Path) -> None:
    """What was answered under ceilings is kept, so that its book can be made later."""
    elm = seat(tmp_path)
    with only_plans():
        answered(elm, (("lamp", 1),), WISH)
    assert list(elm.answers) == [(), (("lamp", 1),)]
