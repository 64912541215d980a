"""Part 5: findings that watch the same groups, as one table and as tables apart."""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import Growth
from budgetfix.optimize.merging import MOST_LEAVES, merged
from budgetfix.optimize.model import add_worth, choosing
from budgetfix.optimize.problem import Asked, Extra, Option, Problem, Session, Step, Tree
from budgetfix.optimize.solver import Program, Terms, run
from budgetfix.optimize.worth_rows import Family, families, point_terms
from tests.benchmarks.figures import Line, Part, steady, timed

FINDINGS, ALTERNATIVES = 4, 5
MOST = 0.3
NO_CAP = 10**6


@dataclass(frozen=True)
class Knot:
    """One finding on which every alternative of every group has a say: points by a table of all combinations."""

    groups: tuple[tuple[str, ...], ...]
    table: dict[frozenset[str], int]

    def ask(self, chosen: frozenset[str], refused: frozenset[str]) -> Asked:
        """Branch over the first undecided group."""
        for members in self.groups:
            if chosen.isdisjoint(members) and not refused.issuperset(members):
                return Asked(0, 0, members)
        return Asked(0, self.table[chosen])

    def bound(self, chosen: frozenset[str], refused: frozenset[str]) -> tuple[int, int]:
        """Nothing better is known."""
        return (0, 0) if chosen or refused else (0, min(self.table.values()))


def knot(groups: int, findings: int = FINDINGS) -> Problem:
    """Some findings over the same groups of five alternatives, money and hours for about half of them."""
    dice = random.Random(f"{groups} groups")
    names = tuple(tuple(f"g{group}-{place}" for place in range(ALTERNATIVES)) for group in range(groups))
    options = tuple(
        Option(id, group=id[:2], steps=(Step(15 * dice.randint(1, 4)),), cost_minor=100 * dice.randint(5, 60))
        for members in names
        for id in members
    )
    rooms = [frozenset(id for id in room if id) for room in product(*(("", *members) for members in names))]
    trees = []
    for number in range(findings):
        reliefs = {one.id: dice.randint(0, 60) for one in options}
        table = {room: _left(room, reliefs) for room in rooms}
        finding = Knot(names, table)
        trees.append(Tree(f"finding {number}", finding.ask, finding.bound, cheap=True))
    return Problem(options, tuple(trees), sessions=(Session(0, 90, (90,)),), budget_minor=2_000 * groups)


def _left(room: frozenset[str], reliefs: dict[str, int]) -> int:
    left = 300 * 100 ** len(room)
    for id in sorted(room):
        left = left * (100 - reliefs[id]) // 100
    return int(left // 100 ** len(room))


def lines() -> Iterator[Line]:
    """Time to solve with the tables merged, over the time with them apart."""
    for groups in (3, 5):
        yield from lines_for(groups)


def lines_for(groups: int) -> Iterator[Line]:
    """Without the cap on merging, and as `plan` merges."""
    problem = knot(groups)
    facts = Facts.of(problem)
    growth = Growth(problem, asks_a_tree=10**6)
    growth.grow_up_front(frozenset(facts.by_id))
    apart = families(facts, growth)
    seconds, whole = timed(lambda: merged(facts, apart, NO_CAP))
    capped = merged(facts, apart)
    slow, value = _solved(facts, apart)
    fast, again = _solved(facts, whole)
    assert value == again
    what = f"{groups} groups of {ALTERNATIVES}"
    columns = sum(len(family.leaves) for family in apart), sum(len(family.leaves) for family in whole)
    measured = (
        f"{fast / slow:.2f}: {fast:.3f} s with {columns[1]:,} columns against {slow:.3f} s with {columns[0]:,}; "
        f"merging itself took {seconds:.2f} s"
    )
    yield Line(what, f"≤ {MOST}", measured, fast / slow <= MOST)
    usual = 1.0 if len(capped) == len(apart) else _solved(facts, capped)[0] / slow
    count = f"{len(capped)} table{'s' if len(capped) > 1 else ''} of {len(apart)} left"
    said = f"{usual:.2f}: {count} by a cap of {MOST_LEAVES} leaves"
    yield Line(f"{what}, as `plan` merges them", f"≤ {MOST}", said, usual <= MOST)


def _solved(facts: Facts, found: tuple[Family, ...]) -> tuple[float, int]:
    program, objective = _program(facts, found)
    seconds, solved = steady(lambda: run(program, objective, 60.0))
    return seconds, round(solved.objective)


def _program(facts: Facts, found: tuple[Family, ...]) -> tuple[Program, Terms]:
    program = choosing(facts, Extra(), facts.problem.budget_minor)
    add_worth(program, found)
    return program, point_terms(found)


PART = Part(
    "Merged tables ÷ separate ones",
    f"{FINDINGS} findings that all watch the same groups, solved as one table and as tables apart; the same optimum.",
    lines,
)
