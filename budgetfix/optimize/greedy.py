"""A first plan of a large house by a plain rule: what takes most away for its share of money and minutes goes first.

Each tree is asked along the set in hand alone, and an option is tried in those trees only that would ask about it next.
No proof stands on what is found: it is a plan to begin with where the clock or the caps stop the growth of the trees.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from budgetfix.optimize import recount
from budgetfix.optimize.problem import Asked
from budgetfix.optimize.search import Search

Worth = tuple[int, int]
"""Hazard points and points that remain; where hazards are counted as points: 0 and both."""


@dataclass
class Greedy:
    """One pass over the options of a search. `with_needs`: an option and what it needs; `until`: told when to end."""

    search: Search
    with_needs: Callable[[str], frozenset[str]]
    until: Callable[[], bool]
    _mine: list[frozenset[str]] = field(init=False)
    _known: list[Asked] = field(init=False)
    """What each tree leaves after the set so far."""
    _matter: list[frozenset[str]] = field(init=False)
    """Options that would change that, each by itself."""

    def __post_init__(self) -> None:
        everything = frozenset(self.search.facts.by_id)
        trees = self.search.growth.trees
        self._mine = [tree.tree.members or everything for tree in trees]

    def add(self, chosen: frozenset[str]) -> frozenset[str]:
        """The set with all that still helps and finds time and money, the most for its share first."""
        places = range(len(self._mine))
        self._known = [self._answer(at, chosen) for at in places]
        self._matter = [self._mattering(at, chosen) for at in places]
        found: list[tuple[float, str]] = []
        for one in self.search.facts.options:
            if one.id not in chosen and not self.until():
                less = self._less(chosen, chosen | self.with_needs(one.id))
                if less is not None:
                    found.append((-sum(less) / self._share(one.id), one.id))
        for _, id in sorted(found):
            more = chosen | self.with_needs(id)
            if id in chosen or self.until() or self.search.wrong(more) or self._less(chosen, more) is None:
                continue
            if self.search.placer.quick(more, self.search.horizon, self.search.money) is not None:
                for at in self._at(more - chosen):
                    self._known[at], self._matter[at] = self._answer(at, more), self._mattering(at, more)
                chosen = more
        return chosen

    def _at(self, ids: frozenset[str]) -> list[int]:
        """Trees that these may change: where each is on its own, those that said so."""
        matter = self._matter if len(ids) == 1 else self._mine
        return [at for at, those in enumerate(matter) if not ids.isdisjoint(those)]

    def _answer(self, at: int, chosen: frozenset[str]) -> Asked:
        """What one tree leaves after a set, asked along the set alone: nothing of the rest is looked at."""
        return self._along(at, chosen)[1]

    def _mattering(self, at: int, chosen: frozenset[str]) -> frozenset[str]:
        """All options that a tree asks about after a set, one group after the other refused."""
        taken, refused = self._along(at, chosen)[0], frozenset[str]()
        while branch := self.search.growth.trees[at].tree.ask(taken, refused).branch:
            refused |= frozenset(branch)
        return refused

    def _along(self, at: int, chosen: frozenset[str]) -> tuple[frozenset[str], Asked]:
        """Those of a set that a tree asks about, and what it leaves with all others refused."""
        ask, mine = self.search.growth.trees[at].tree.ask, self._mine[at]
        taken, rest = frozenset[str](), mine - chosen
        while True:
            asked = ask(taken, rest)
            if not asked.branch:
                return taken, asked
            taken |= {next(id for id in asked.branch if id in chosen)}

    def _less(self, chosen: frozenset[str], more: frozenset[str]) -> Worth | None:
        """What a larger set takes away beside the one so far; None where that is nothing, or forbidden."""
        before, after = (0, 0), (0, 0)
        for at in self._at(more - chosen):
            asked = self._answer(at, more)
            if not asked.allowed:
                return None
            before, after = self._sum(before, self._known[at]), self._sum(after, asked)
        return (before[0] - after[0], before[1] - after[1]) if after < before else None

    def _sum(self, so_far: Worth, asked: Asked) -> Worth:
        if self.search.facts.problem.hazards_first:
            return so_far[0] + asked.hazards, so_far[1] + asked.points
        return 0, so_far[1] + asked.hazards + asked.points

    def _share(self, id: str) -> float:
        """The part of all money and minutes that an option takes; a little for one that takes nothing."""
        facts, ids = self.search.facts, self.with_needs(id)
        minutes = recount.minutes_of(facts, ids) / max(1, sum(map(sum, facts.minutes)))
        money = recount.bill(facts, ids, ()).spent_minor / max(1, self.search.money or 0)
        return 0.001 + minutes + (money if self.search.money is not None else 0)
