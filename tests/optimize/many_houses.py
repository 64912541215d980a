"""Several jobs drawn at random, each a list of plans, over one stock; and the best of all the ways to share it."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

from budgetfix.optimize.sharing import Answered, Left
from budgetfix.optimize.stock import Packs, Stock, within

PIECES = ("lamp", "mirror", "rug")


@dataclass(frozen=True)
class Offer:
    """One plan of a job: what it leaves, and what it holds."""

    left: Left
    held: Packs


Jobs = tuple[tuple[Offer, ...], ...]


def best(jobs: Jobs, wanted: Sequence[tuple[int, Packs]]) -> list[Answered | None]:
    """The least of each job's plans within its ceilings, the first of equals."""
    found: list[Answered | None] = []
    for at, ceilings in wanted:
        fitting = [one for one in jobs[at] if within(one.held, ceilings)]
        one = min(fitting, key=lambda offer: (offer.left, offer.held), default=None)
        found.append(Answered(one.left, one.left, one.held) if one else None)
    return found


def stands(stay: tuple[int, int] | None, day: int) -> bool:
    """True where a house holds its pieces on a day."""
    return stay is None or stay[0] <= day <= stay[1]


def too_many(stock: Stock, held: Sequence[Packs], days: range = range(40)) -> bool:
    """Day by day, piece by piece: more packs in houses than there are?"""
    return any(
        sum(dict(mine).get(piece, 0) for mine, stay in zip(held, stock.stays, strict=True) if stands(stay, day)) > packs
        for day in days
        for piece, packs in stock.packs.items()
    )


def slow(jobs: Jobs, stock: Stock) -> Left | None:
    """Every plan of every job beside every plan of the others."""
    sums = [
        tuple(map(sum, zip(*(one.left for one in plans), strict=True)))
        for plans in product(*jobs)
        if not too_many(stock, [one.held for one in plans])
    ]
    return min(sums, default=None)


def random_houses(number: int) -> tuple[Jobs, Stock]:
    """Two to four jobs of up to six plans; stays that overlap, touch or do not meet; one job in six undated."""
    dice = random.Random(f"houses {number}")
    count = dice.randint(2, 4)
    packs = {piece: dice.choice((1, 1, 1, 2, 3)) for piece in PIECES}
    jobs = tuple(tuple(_offer(dice, packs) for _ in range(dice.randint(1, 6))) for _ in range(count))
    if number % 5:
        jobs = tuple((*plans, Offer((3, dice.randint(50, 99), 0), ())) for plans in jobs)
    return jobs, Stock(packs, tuple(_stay(dice) for _ in range(count)))


def _offer(dice: random.Random, packs: dict[str, int]) -> Offer:
    held = tuple((piece, dice.randint(1, packs[piece])) for piece in PIECES if dice.random() < 0.5)
    left = (dice.choice((0, 0, 1, 2)), dice.randint(0, 60) - 5 * len(held), dice.choice((0, 100, 250)))
    return Offer(left, held)


def _stay(dice: random.Random) -> tuple[int, int] | None:
    first = dice.randint(0, 20)
    return None if dice.random() < 1 / 6 else (first, first + dice.choice((0, 1, 5, 10)))
