"""Small worlds for the optimiser's tests: tables as trees, random jobs, a clock that stands still."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from itertools import combinations

from budgetfix.optimize.problem import (
    Asked,
    Limit,
    Load,
    Option,
    Problem,
    Product,
    Session,
    Shop,
    Step,
    Tool,
    Tree,
)

Table = Mapping[frozenset[str], tuple[int, int]]
"""(hazard points, points) that remain, by chosen set; a set that is not there must not be chosen."""


def still() -> float:
    """A clock on which no time passes."""
    return 0.0


def ticking(step: float) -> Callable[[], float]:
    """A clock that moves on by `step` seconds whenever it is read."""
    now = [0.0]

    def read() -> float:
        now[0] += step
        return now[0]

    return read


def against(options: Iterable[Option]) -> dict[str, frozenset[str]]:
    """Who excludes whom, by group and by name."""
    ones = list(options)
    return {
        one.id: frozenset(
            other.id
            for other in ones
            if other.id != one.id
            and (
                (one.group is not None and one.group == other.group)
                or other.id in one.excludes
                or one.id in other.excludes
            )
        )
        for one in ones
    }


@dataclass(frozen=True)
class TableTree:
    """A tree over a few options, read from a table of all their subsets."""

    ids: tuple[str, ...]
    table: Table
    foes: Mapping[str, frozenset[str]]

    def ask(self, chosen: frozenset[str], refused: frozenset[str]) -> Asked:
        """Branch over the first undecided option and all that exclude it and one another."""
        open_ids = [
            id for id in self.ids if id not in chosen and id not in refused and self.foes[id].isdisjoint(chosen)
        ]
        if not open_ids:
            mine = chosen & frozenset(self.ids)
            return Asked(*self.table.get(mine, (0, 0)), (), mine in self.table)
        clique: list[str] = []
        for id in open_ids:
            if all(id in self.foes[other] for other in clique):
                clique.append(id)
        return Asked(0, 0, tuple(clique))

    def bound(self, chosen: frozenset[str], refused: frozenset[str]) -> tuple[int, int]:
        """The least of each over all completions."""
        mine = chosen & frozenset(self.ids)
        fitting = [left for ids, left in self.table.items() if mine <= ids and ids.isdisjoint(refused)]
        return min((h for h, _ in fitting), default=0), min((p for _, p in fitting), default=0)


def table_tree(name: str, options: Iterable[Option], table: Table, ids: tuple[str, ...]) -> Tree:
    """A table as a tree."""
    made = TableTree(ids, table, against(options))
    return Tree(name, made.ask, made.bound)


def single(option: str, left: int, without: int, *, hazard: bool = False) -> tuple[Table, tuple[str, ...]]:
    """One option that leaves `left` where it is chosen and `without` where it is not."""
    pair: Callable[[int], tuple[int, int]] = (lambda n: (n, 0)) if hazard else (lambda n: (0, n))
    return {frozenset({option}): pair(left), frozenset(): pair(without)}, (option,)


def points_problem(options: tuple[Option, ...], gains: Mapping[str, int], **more: object) -> Problem:
    """Options that each take away points of their own."""
    trees = tuple(table_tree(f"of {id}", options, *single(id, 0, gain)) for id, gain in sorted(gains.items()))
    return Problem(options, trees, **more)  # type: ignore[arg-type]


@dataclass(frozen=True)
class World:
    """A random job and the tables behind its trees."""

    problem: Problem
    tables: tuple[tuple[tuple[str, ...], Table], ...]

    def left(self, chosen: frozenset[str]) -> tuple[int, int] | None:
        """(hazard points, points) that remain; None where a table forbids the set."""
        hazards = points = 0
        for ids, table in self.tables:
            found = table.get(chosen & frozenset(ids))
            if found is None:
                return None
            hazards, points = hazards + found[0], points + found[1]
        return hazards, points

    def left_anyway(self, chosen: frozenset[str]) -> tuple[int, int]:
        """The same, a forbidden row counting nothing: what a set is worth that was only made by dropping an option."""
        rows = [table.get(chosen & frozenset(ids), (0, 0)) for ids, table in self.tables]
        return sum(hazards for hazards, _ in rows), sum(points for _, points in rows)


def random_world(number: int, *, people: int = 1, options: int = 5, sessions: int = 3, long: bool = False) -> World:
    """A job with everything in it: groups, needs, excludes, goods, tools, shops, waits, limits, musts."""
    dice = random.Random(f"{number} {people} {options} {sessions} {long}")
    names = tuple(f"{letter}{dice.randint(1, 9)}" for letter in "bdacehfg"[:options])
    ones = tuple(_option(dice, index, names, people, sessions, long) for index in range(options))
    tables = _tables(dice, names)
    trees = tuple(table_tree(f"t{place}", ones, table, ids) for place, (ids, table) in enumerate(tables))
    hours = tuple(_session(dice, day, people, long) for day in range(sessions))
    charge = (23, 20) if number % 3 == 0 else (1, 1)
    must = ((dice.choice(names), dice.choice(names)),) if dice.random() < 0.2 else ()
    if number % 4 == 1:
        ones, hours = _hushed(ones, hours)
    if number % 4 == 3:
        ones, hours = _windowed(ones, hours)
    return World(
        Problem(
            ones,
            trees,
            products=(
                Product("paint", 700, 3, dice.choice((0, 0, 2)), "mill", most=1 if number % 5 == 2 else None),
                Product("tape", 230, 1, 0, "mill", *charge, most=3 if number % 7 == 3 else None),
                Product("rug", 900, 1, 0, None, *charge, most=number % 4 if number % 5 == 2 else None),
            ),
            tools=(Tool("drill", False, 900, 400), Tool("saw", False, None, 300), Tool("iron", True, 10, 10)),
            shops=(Shop("mill", 450, dice.choice((None, 1500)), dice.choice((0, 33)), 400),),
            limits=(Limit("holes", dice.randint(2, 6)),),
            people=("ann", "ben", "cem")[:people],
            sessions=hours,
            budget_minor=dice.choice((None, 1500, 3000, 5000)),
            must=must,
            must_all=dice.random() < 0.2,
            last_session=sessions - 2 if sessions > 2 and dice.random() < 0.2 else None,
            setup_minutes=dice.choice((0, 0, 10)),
            hazards_first=dice.random() < 0.8,
            loads=(Load("van", 40, (("paint", 9), ("rug", 14))),) if number % 6 == 4 else (),
        ),
        tables,
    )


def helped(world: World, number: int) -> World:
    """The same job with some steps of one person done by one and a helper, who may be somebody who bars the rest."""
    dice = random.Random(f"helped {number}")
    ones = tuple(
        replace(one, steps=tuple(_with_help(dice, step, world.problem.people) for step in one.steps))
        for one in world.problem.options
    )
    return _with_options(world, ones)


def _with_help(dice: random.Random, step: Step, people: tuple[str, ...]) -> Step:
    if step.people > 1 or not step.minutes or dice.random() < 0.4:
        return step
    return replace(
        step,
        help=dice.choice((5, 10, 20, step.minutes)),
        no_help=(dice.choice(people),) if dice.random() < 0.2 else (),
    )


def whole_days(world: World, number: int) -> World:
    """The same job with two sessions a day, some options of which are done within a day, waits of hours among them."""
    dice = random.Random(f"days {number}")
    ones = tuple(
        replace(
            one,
            one_day=dice.random() < 0.7,
            steps=tuple(_waiting(dice, step) if place else step for place, step in enumerate(one.steps * 2)),
        )
        for one in world.problem.options
    )
    halves = tuple(
        replace(session, start_minute=start, end_minute=start + 120)
        for place, session in enumerate(world.problem.sessions or ())
        for start in (place // 2 * 1440 + (540 if place % 2 == 0 else 840),)
    )
    found = _with_options(world, ones)
    return World(replace(found.problem, sessions=halves), world.tables)


def _waiting(dice: random.Random, step: Step) -> Step:
    return replace(step, wait_sessions=dice.choice((0, 0, 1)), wait_minutes=dice.choice((0, 0, 120, 180, 240)))


def _with_options(world: World, ones: tuple[Option, ...]) -> World:
    trees = tuple(table_tree(f"t{place}", ones, table, ids) for place, (ids, table) in enumerate(world.tables))
    return World(replace(world.problem, options=ones, trees=trees), world.tables)


def marked(world: World, number: int) -> World:
    """The same job whose options leave something behind; any option of a tree does as much there as all of them."""
    dice = random.Random(number)
    options = tuple(replace(one, marks=dice.choice((0, 0, 1, 4, 9))) for one in world.problem.options)
    tables = tuple(
        (ids, {chosen: (hazards, 0 if chosen else 60) for chosen, (hazards, _) in table.items()})
        for ids, table in world.tables
    )
    trees = tuple(table_tree(f"t{place}", options, table, ids) for place, (ids, table) in enumerate(tables))
    return World(replace(world.problem, options=options, trees=trees), tables)


def _hushed(ones: tuple[Option, ...], hours: tuple[Session, ...]) -> tuple[tuple[Option, ...], tuple[Session, ...]]:
    """The second session quiet, and the first step of every other option loud."""
    loud = tuple(
        replace(one, steps=tuple(replace(step, loud=not index) for index, step in enumerate(one.steps)))
        if place % 2
        else one
        for place, one in enumerate(ones)
    )
    return loud, tuple(replace(session, quiet=place == 1) for place, session in enumerate(hours))


def _windowed(ones: tuple[Option, ...], hours: tuple[Session, ...]) -> tuple[tuple[Option, ...], tuple[Session, ...]]:
    """The second session a part of the first; second steps whose goods come later, and an option with a window."""
    first = hours[0]
    begun = replace(first, end_minute=first.end_minute, minutes=first.minutes)
    rest = replace(hours[1], start_minute=first.end_minute, end_minute=first.end_minute + 60, continues=True)
    late = tuple(
        replace(one, steps=tuple(replace(step, first_session=index) for index, step in enumerate(one.steps)))
        for one in ones
    )
    return (replace(late[0], last_session=1), *late[1:]), (begun, rest, *hours[2:])


def _session(dice: random.Random, day: int, people: int, long: bool) -> Session:
    length = dice.choice((100, 120) if long else (120, 180))
    minutes = tuple(dice.choice((length, length // 2)) for _ in range(people))
    start = day * 1440 + 540
    return Session(start, start + length, minutes)


def _option(dice: random.Random, index: int, names: tuple[str, ...], people: int, sessions: int, long: bool) -> Option:
    others = names[:index]
    return Option(
        names[index],
        group=dice.choice((None, None, "g1", "g2")),
        steps=tuple(_step(dice, place, people, long) for place in range(dice.choice((0, 1, 1, 2)))),
        cost_minor=dice.choice((0, 100, 250, 1200)),
        uses=tuple((id, dice.randint(1, 4)) for id in ("paint", "rug", "tape") if dice.random() < 0.25),
        tools=tuple(id for id in ("drill", "iron", "saw") if dice.random() < 0.25),
        needs=(dice.choice(others),) if others and dice.random() < 0.2 else (),
        excludes=(dice.choice(others),) if others and dice.random() < 0.15 else (),
        spends=(("holes", dice.randint(1, 3)),) if dice.random() < 0.5 else (),
        first_session=dice.choice((0, 0, 0, 1, sessions)) if dice.random() < 0.3 else 0,
    )


def _step(dice: random.Random, place: int, people: int, long: bool) -> Step:
    waits = place or dice.random() < 0.2
    return Step(
        dice.choice((50, 60, 70) if long else (0, 20, 30, 60)),
        2 if people > 1 and dice.random() < 0.3 else 1,
        ("ann",) if dice.random() < 0.15 else (),
        dice.choice((0, 0, 1)) if waits else 0,
        dice.choice((0, 0, 0, 120, 1800)) if waits else 0,
    )


def _tables(dice: random.Random, names: tuple[str, ...]) -> tuple[tuple[tuple[str, ...], Table], ...]:
    found = []
    for _ in range(3):
        ids = tuple(sorted(dice.sample(names, min(len(names), dice.choice((1, 2, 3))))))
        table: dict[frozenset[str], tuple[int, int]] = {}
        for size in range(len(ids) + 1):
            for some in combinations(ids, size):
                if not some or dice.random() < 0.95:
                    hazards = dice.choice((0, 0, 10)) if not some or dice.random() < 0.3 else 0
                    table[frozenset(some)] = (hazards, max(0, 60 - 20 * size) + 10 * dice.randint(0, 2))
        found.append((ids, table))
    return tuple(found)
