"""Part 4: trees grown along the chosen sets, against asking everything first; on rooms where all is one knot.

Six groups of pieces with three other places each, so 4,096 rooms; four points (three doors and the main seat) with a
way between each two, so that every piece has a say in all six findings. Taking a piece away never narrows a way. The
rooms are made up; an inspection is counted, not waited for, and its usual time is added.
"""

from __future__ import annotations

import random
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import combinations

from budgetfix.base.numbers import half_even
from budgetfix.optimize import Growth, solve
from budgetfix.optimize.problem import Answer, Asked, Option, Problem, Session, Step, Tree
from budgetfix.pipeline.planning import ASKS
from tests.benchmarks.figures import Line, Part, timed
from tests.optimize.worlds import TableTree, against

GROUPS, PLACES, CORRIDORS = 6, 3, 3
ROOMS = (PLACES + 1) ** GROUPS
OTHERS = 39
INSPECTION_SECONDS = 0.0015
SHARE, ROUNDS, TIME = 0.05, 12, 0.35
SOUND_MM, GLARING_MM = 900, 600
SEEDS, FEW = range(2), 100
SHARES = (Fraction(1), Fraction(2, 3), Fraction(1, 3))


@dataclass
class Ways:
    """The ways of one room as a tree. `juts`: how far a piece at a place juts into a corridor, by side.

    `inspected` holds every room looked at, `lifted` every one looked at with undecided pieces taken away.
    """

    juts: dict[str, tuple[tuple[int, int], ...]]
    stays: tuple[str, ...]
    widths: tuple[tuple[int, ...], ...]
    groups: dict[str, str]
    inspected: dict[frozenset[str], int] = field(default_factory=dict)
    lifted: dict[frozenset[str], int] = field(default_factory=dict)

    def ask(self, chosen: frozenset[str], refused: frozenset[str]) -> Asked:
        """One look at the room; whatever stands on its floor and is undecided has a say."""
        if chosen not in self.inspected:
            moved = {self.groups[id] for id in chosen}
            there = [*chosen, *(stay for stay in self.stays if self.groups[stay] not in moved)]
            self.inspected[chosen] = self._points(there)
        taken = {self.groups[id] for id in chosen}
        open_ids = [id for id in self.groups if self._open(id, chosen | refused, taken)]
        if not open_ids:
            return Asked(0, self.inspected[chosen])
        return Asked(0, 0, tuple(id for id in open_ids if self.groups[id] == self.groups[open_ids[0]]))

    def bound(self, chosen: frozenset[str], refused: frozenset[str]) -> tuple[int, int]:
        """A look at the room with all undecided pieces taken away: no completion leaves fewer points in these ways."""
        taken = {self.groups[id] for id in chosen}
        undecided = {self.groups[id] for id in self.groups if self._open(id, chosen | refused, taken)}
        there = [*chosen, *(stay for stay in self.stays if self.groups[stay] not in taken | undecided)]
        key = frozenset(there)
        if key not in self.lifted:
            self.lifted[key] = self._points(there)
        return 0, self.lifted[key]

    def _open(self, id: str, decided: frozenset[str], taken: set[str]) -> bool:
        return id not in self.stays and id not in decided and self.groups[id] not in taken

    def _points(self, there: list[str]) -> int:
        """Six ways, each as wide as its best corridor; the narrowest counts whole, the others by their share."""
        severities = sorted((self._severity(way, there) for way in range(len(self.widths))), reverse=True)
        shares = (*SHARES, *(SHARES[-1] for _ in severities[len(SHARES) :]))
        return half_even(sum((100 * share * one for share, one in zip(shares, severities, strict=True)), Fraction()))

    def _severity(self, way: int, there: list[str]) -> Fraction:
        clear = max(
            width - sum(max((self.juts[id][way * CORRIDORS + at][side] for id in there), default=0) for side in (0, 1))
            for at, width in enumerate(self.widths[way])
        )
        return min(Fraction(3), max(Fraction(0), Fraction(SOUND_MM - clear, SOUND_MM - GLARING_MM)))


def room(number: int) -> tuple[Problem, Ways]:
    """A made-up room as a choice: 18 places for six pieces, 46 other candidates, an evening and a half."""
    dice = random.Random(f"room {number}")
    ways = _ways(dice)
    movers = tuple(
        Option(id, group=group, steps=(Step(15 * dice.randint(1, 3)),))
        for id, group in sorted(ways.groups.items())
        if id not in ways.stays
    )
    others = tuple(
        Option(f"z{at:02}", group=f"other {at % OTHERS}", steps=(Step(15 * dice.randint(1, 5)),),
               cost_minor=100 * dice.randint(0, 60))
        for at in range(46)
    )  # fmt: skip
    options = (*movers, *others)
    hours = (Session(0, 240, (240,)), Session(1440, 1680, (180,)))
    trees = (Tree("ways", ways.ask, ways.bound), *_others(dice, options, others))
    return Problem(options, trees, sessions=hours, budget_minor=30_000), ways


def _ways(dice: random.Random) -> Ways:
    ways = len(list(combinations(range(4), 2)))
    stays = tuple(f"p{group}-stay" for group in range(GROUPS))
    groups = {f"p{group}-{place}": f"p{group}" for group in range(GROUPS) for place in range(PLACES)}
    groups |= {stay: stay[:2] for stay in stays}
    juts = {
        id: tuple(
            (dice.randint(100, 500), 0) if dice.random() < 0.25 else (0, dice.randint(0, 200))
            for _ in range(ways * CORRIDORS)
        )
        for id in sorted(groups)
    }
    widths = tuple(tuple(dice.randint(850, 1250) for _ in range(CORRIDORS)) for _ in range(ways))
    return Ways(juts, stays, widths, groups)


def _others(dice: random.Random, options: tuple[Option, ...], others: tuple[Option, ...]) -> list[Tree]:
    """39 plain findings, each answered by one or two candidates."""
    foes = against(options)
    trees = []
    for at in range(OTHERS):
        ids = tuple(one.id for one in others if one.group == f"other {at}")
        points = dice.randint(20, 150)
        table = {frozenset[str](): (0, points)}
        table |= {frozenset({id}): (0, points * dice.randint(0, 60) // 100) for id in ids}
        tree = TableTree(ids, table, foes)
        trees.append(Tree(f"other {at}", tree.ask, tree.bound, cheap=True))
    return trees


@dataclass(frozen=True)
class Run:
    """One solve: inspections, rounds, seconds with the time of the inspections added, and points that remain."""

    inspections: int
    rounds: int
    seconds: float
    points: int


def lines() -> Iterator[Line]:
    """Questions up front as `plan` asks them, and fewer, against the full table; the best plan is the same."""
    full = [run(number, asks=10**6) for number in SEEDS]
    for asks in (ASKS, FEW):
        grown = [run(number, asks) for number in SEEDS]
        assert [one.points for one in grown] == [one.points for one in full]
        yield from _three(f"{asks} questions first", grown, full)


def _three(how: str, grown: list[Run], full: list[Run]) -> Iterator[Line]:
    looks = [one.inspections / ROOMS for one in grown]
    times = [one.seconds / other.seconds for one, other in zip(grown, full, strict=True)]
    rounds = [one.rounds for one in grown]
    shares = ", ".join(f"{share:.1%}" for share in looks)
    counts = ", ".join(map(str, rounds))
    seconds = ", ".join(f"{ratio:.2f}" for ratio in times)
    yield Line(f"{how}: inspections ÷ full table's {ROOMS:,}", f"≤ {SHARE:.0%}", shares, max(looks) <= SHARE)
    yield Line(f"{how}: rounds", f"≤ {ROUNDS}", counts, max(rounds) <= ROUNDS)
    yield Line(f"{how}: time ÷ full table's", f"≤ {TIME}", seconds, max(times) <= TIME)


def run(number: int, asks: int) -> Run:
    """One room, with so many questions before the first solve."""
    problem, ways = room(number)
    growth = Growth(problem, asks=asks, asks_a_tree=10**6)
    took, answer = timed(lambda: solve(problem, seconds=100.0, clock=time.perf_counter, growth=growth, depth="figures"))
    assert isinstance(answer, Answer)
    assert answer.proven
    looks = len(ways.inspected) + len(ways.lifted)
    return Run(looks, answer.rounds.inspections, took + looks * INSPECTION_SECONDS, answer.plan.points)


PART = Part(
    "Trees grown along the chosen sets ÷ the full table",
    f"{len(SEEDS)} made-up rooms: six groups of pieces, each with a say in all six ways, {ROOMS:,} rooms in all; 39 "
    f"plain findings beside them. An inspection is counted, and {INSPECTION_SECONDS * 1000} ms added for it. "
    f"`plan` asks {ASKS} questions first.",
    lines,
)
