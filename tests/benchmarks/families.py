"""Synthetic choices on which choose-and-place is measured: what is hard in each is in its name.

Every problem has fifteen faults (or more) with four alternatives each; some alternatives also help or harm another
fault, as in the houses. Money and hours are scarce. Same name and number, same problem, on every machine.
"""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import combinations, product

from budgetfix.optimize.problem import Limit, Option, Problem, Product, Session, Shop, Step, Tool, Tree
from tests.optimize.worlds import TableTree, against

QUARTER = 15
ALTERNATIVES = 4


@dataclass(frozen=True)
class Shape:
    """What makes a family: how long steps and sessions are, who there is, what else is in it.

    `steps`, `hours`: shortest and longest, in quarters of an hour. `waits`, `joint`: share of options with a second
    step, of steps for two. `uneven`: minutes up to seven off the quarter.
    """

    name: str
    steps: tuple[int, int]
    hours: tuple[int, int]
    faults: int = 15
    sessions: int = 4
    people: int = 1
    waits: float = 0.0
    joint: float = 0.0
    uneven: bool = False
    everything: bool = False


FAMILIES = (
    Shape("big steps, 60 candidates", (6, 10), (11, 14)),
    Shape("big steps of uneven minutes, 60", (6, 10), (11, 14), uneven=True),
    Shape("waits, 60", (1, 6), (12, 20), waits=0.6),
    Shape("two people, 60", (1, 6), (6, 10), people=2, joint=0.3),
    Shape("two people and long steps, 60", (4, 10), (11, 14), sessions=3, people=2, joint=0.3),
    Shape("everything, 60", (1, 6), (7, 12), people=2, waits=0.3, joint=0.2, everything=True),
    Shape("big steps, 230", (6, 10), (11, 14), faults=58, sessions=8),
    Shape("waits, 230", (1, 6), (12, 20), faults=58, sessions=8, waits=0.6),
    Shape("two people, 230", (1, 6), (9, 14), faults=58, sessions=8, people=2, joint=0.3),
)


def made(shape: Shape, number: int) -> Problem:
    """One problem of a family."""
    dice = random.Random(f"{shape.name} {number}")
    options = tuple(
        _option(shape, dice, fault, place) for fault in range(shape.faults) for place in range(ALTERNATIVES)
    )
    if shape.everything:
        options = _with_needs(dice, options)
    spend = sum(min(one.cost_minor for one in options if one.group == f"g{fault:02}") for fault in range(shape.faults))
    dear = sum(max(one.cost_minor for one in options if one.group == f"g{fault:02}") for fault in range(shape.faults))
    whole = Problem(
        options,
        _trees(dice, options, shape.faults),
        people=("ann", "ben")[: shape.people],
        sessions=tuple(_session(shape, dice, day) for day in range(shape.sessions)),
        budget_minor=spend + (dear - spend) // 4,
    )
    return _with_shops(whole) if shape.everything else whole


def _option(shape: Shape, dice: random.Random, fault: int, place: int) -> Option:
    several = dice.random() < shape.waits
    everything = shape.everything
    return Option(
        f"m{fault:02}{'abcd'[place]}",
        group=f"g{fault:02}",
        steps=tuple(_step(shape, dice, index) for index in range(2 if several else 1)),
        cost_minor=dice.choice((0, 5, 10, 20, 35, 60, 80)) * 100 + dice.randint(0, 99),
        uses=(("paint", dice.randint(20, 200)),) if everything and dice.random() < 0.2 else (),
        tools=(dice.choice(("drill", "saw", "ladder")),) if everything and dice.random() < 0.3 else (),
        spends=(("holes", dice.randint(1, 3)),) if everything and dice.random() < 0.4 else (),
        first_session=1 if everything and dice.random() < 0.15 else 0,
    )


def _step(shape: Shape, dice: random.Random, index: int) -> Step:
    minutes = dice.randint(*shape.steps) * QUARTER + (dice.randint(-7, 7) if shape.uneven else 0)
    people = 2 if dice.random() < shape.joint else 1
    barred = ("ben",) if shape.people > 1 and people == 1 and dice.random() < 0.2 else ()
    waits = index > 0 and shape.waits
    return Step(minutes, people, barred, wait_sessions=dice.choice((0, 1, 1)) if waits else 0)


def _session(shape: Shape, dice: random.Random, day: int) -> Session:
    start = day * 1440 + 540
    minutes = tuple(dice.randint(*shape.hours) * QUARTER for _ in range(shape.people))
    return Session(start, start + max(minutes), minutes)


def _with_needs(dice: random.Random, options: tuple[Option, ...]) -> tuple[Option, ...]:
    """Every tenth option needs one of an earlier group."""
    return tuple(
        replace(one, needs=(options[dice.randrange(place - place % ALTERNATIVES)].id,))
        if place >= ALTERNATIVES and dice.random() < 0.1
        else one
        for place, one in enumerate(options)
    )


def _with_shops(plain: Problem) -> Problem:
    return replace(
        plain,
        products=(Product("paint", 2200, 250, 30, "mill"),),
        tools=(Tool("drill", False, 5900, 1400), Tool("saw", False, None, 900), Tool("ladder", False, 4000, 1600)),
        shops=(Shop("mill", 590, 6000, 33, 400),),
        limits=(Limit("holes", 9),),
        setup_minutes=QUARTER,
    )


def _trees(dice: random.Random, options: tuple[Option, ...], faults: int) -> tuple[Tree, ...]:
    """One table a fault: its own alternatives by most of it, some others by a little, or for the worse."""
    foes = against(options)
    trees = []
    for fault in range(faults):
        points = dice.randint(50, 300)
        own = [one.id for one in options if one.group == f"g{fault:02}"]
        strangers = dice.sample([one.id for one in options if one.id not in own], dice.choice((0, 1, 1, 2)))
        reliefs = {id: dice.randint(40, 100) for id in own} | {id: dice.choice((-10, 5, 15, 25)) for id in strangers}
        table = dict(_rows(points, own, strangers, reliefs, foes))
        tree = TableTree((*own, *strangers), table, foes)
        trees.append(Tree(f"f{fault:02}", tree.ask, tree.bound, cheap=True))
    return tuple(trees)


def _rows(
    points: int, own: list[str], strangers: list[str], reliefs: Mapping[str, int], foes: Mapping[str, frozenset[str]]
) -> list[tuple[frozenset[str], tuple[int, int]]]:
    """What is left of a fault for each set of its options that go together, reliefs in percent."""
    some = [ids for size in range(len(strangers) + 1) for ids in combinations(strangers, size)]
    found = []
    for mine, others in product([(), *((id,) for id in own)], some):
        ids = frozenset((*mine, *others))
        if all(foes[id].isdisjoint(ids) for id in ids):
            left = points * 100 ** len(ids)
            for id in sorted(ids):
                left = left * (100 - reliefs[id]) // 100
            found.append((ids, (0, left // 100 ** len(ids))))
    return found


def seeds(shape: Shape) -> range:
    """So many problems of a family: fewer of the large ones, which the one big program is long about."""
    return range(3) if shape.faults <= 15 else range(1)
