"""Part 8: what someone reaches who takes the best value first, weighing anew after every step."""

from __future__ import annotations

from collections.abc import Iterator

from budgetfix.optimize import impossible
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import GrownTree, Growth
from budgetfix.optimize.listing import listed
from budgetfix.optimize.problem import Problem
from budgetfix.optimize.recount import bill, choice_broken, minutes_of
from tests.benchmarks.figures import Line, Part
from tests.benchmarks.house_jobs import house_job, names, short

NOTHING = 1e-9


class Hand:
    """A set that grows by the candidate with the most points for its share of the money and the hours."""

    def __init__(self, problem: Problem) -> None:
        self.facts = Facts.of(problem, without=impossible(problem))
        self.money = problem.budget_minor or 1
        self.minutes = sum(map(sum, self.facts.minutes)) or 1
        growth = Growth(problem)
        growth.grow_up_front(frozenset(self.facts.by_id))
        self.trees = growth.trees
        self.about: dict[str, list[GrownTree]] = {id: [] for id in self.facts.by_id}
        for tree in self.trees:
            for id in sorted(_watched(tree) & self.about.keys()):
                self.about[id].append(tree)
        self.chosen: frozenset[str] = frozenset()

    def left(self) -> int:
        """Points that remain."""
        return sum(tree.exact(self.chosen).points for tree in self.trees)

    def fill(self) -> int:
        """Take the best value until nothing more fits; points that remain then."""
        waiting = sorted(self.facts.by_id)
        while waiting:
            worths = {id: self.worth(id) for id in waiting}
            waiting = [id for id in waiting if worths[id] > 0]
            if waiting:
                best = max(waiting, key=lambda id: worths[id])
                waiting.remove(best)
                if listed(self.facts.only(self.chosen | {best})) is not None:
                    self.chosen |= {best}
        return self.left()

    def worth(self, id: str) -> float:
        """Points for each share of all money and all hours; 0 where it does not fit or help."""
        more = self.chosen | {id}
        if choice_broken(self.facts, more):
            return 0.0
        spent = bill(self.facts, more, ()).spent_minor
        minutes = minutes_of(self.facts, more)
        if spent > self.money or minutes > self.minutes:
            return 0.0
        gain = sum(tree.exact(self.chosen).points - tree.exact(more).points for tree in self.about[id])
        spent -= bill(self.facts, self.chosen, ()).spent_minor
        minutes -= minutes_of(self.facts, self.chosen)
        return gain / (spent / self.money + minutes / self.minutes + NOTHING)


def _watched(tree: GrownTree) -> frozenset[str]:
    """Every candidate that has a say in a tree."""
    found: set[str] = set()
    stack = [tree.root]
    while stack:
        node = stack.pop()
        if node.asked is not None:
            found.update(node.asked.branch)
        stack.extend(node.children.values())
    return frozenset(found)


def lines() -> Iterator[Line]:
    """Houses in percent of their optimum."""
    shares = []
    for name in names(1, 4, 8):
        house = house_job(name)
        share = (house.points - Hand(house.problem).fill()) / house.best
        shares.append((share, name))
    worst, where = min(shares)
    mean = sum(share for share, _ in shares) / len(shares)
    measured = f"mean {mean:.1%}, worst {worst:.1%} ({short(where)})"
    yield Line(f"{len(shares)} houses of 1, 4 and 8 rooms", "for the reader", measured)


PART = Part(
    "Best value first, by hand",
    "The most points for each share of the money and the hours, weighed anew after every step, as long as it can be "
    "placed: points in percent of the optimum.",
    lines,
)
