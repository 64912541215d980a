"""A first plan of a large house by a plain rule: what takes most away for its share of money and minutes goes first.

Each tree is asked along the set in hand alone, and an option is tried in those trees only that would ask about it next.
No proof stands on what is found: it is a plan to begin with where the clock or the caps stop the growth of the trees.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from budgetfix.optimize import recount
from budgetfix.optimize.facts import with_needs
from budgetfix.optimize.problem import Asked
from budgetfix.optimize.search import Search

Worth = tuple[int, int]
"""Hazard points and points that remain; where hazards are counted as points: 0 and both."""


@dataclass
class Greedy:
    """A set that takes in, swaps and lets go while that helps. `until`: whether its time is over."""

    search: Search
    until: Callable[[], bool]
    _mine: list[frozenset[str]] = field(init=False)
    _known: list[Asked] = field(init=False)
    """What each tree leaves after the set so far."""
    _concern: list[frozenset[str]] = field(init=False)
    """Options that have a say in that: chosen and asked about, or asked about next."""

    def __post_init__(self) -> None:
        everything = frozenset(one.id for one in self.search.facts.problem.options)
        trees = self.search.growth.trees
        self._mine = [everything if (members := tree.tree.members) is None else members for tree in trees]

    def add(self, chosen: frozenset[str]) -> frozenset[str]:
        """The set with all that still helps and finds time and money, the most for its share first.

        Then, until nothing is won any more: what does nothing goes, and each that is left is tried in the place of what
        excludes it. The set given is no larger than what must be in any plan.
        """
        places = range(len(self._mine))
        self._known = [self._answer(at, chosen) for at in places]
        self._concern = [self._concerned(at, chosen) for at in places]
        found: list[tuple[float, str]] = []
        for one in self.search.facts.options:
            if one.id not in chosen and not self.until():
                less = self._less(chosen, chosen | with_needs(self.search.facts, one.id))
                if less is not None and less > (0, 0):
                    found.append((-sum(less) / self._share(one.id), one.id))
        now, start = self._in_turn(chosen, [id for _, id in sorted(found)]), chosen
        while now != start and not self.until():
            start, now = now, self._in_turn(self._without_idle(now), [one.id for one in self.search.facts.options])
        return now

    def _in_turn(self, chosen: frozenset[str], ids: list[str]) -> frozenset[str]:
        """The set after each of these was tried, in the place of what excludes it."""
        for id in ids:
            if id in chosen or self.until():
                continue
            more = self._instead(chosen, id)
            less = self._less(chosen, more)
            if less is None or less <= (0, 0) or self.search.wrong(more):
                continue
            if self.search.placer.quick(more, self.search.horizon, self.search.money) is not None:
                chosen = self._taken(chosen, more)
        return chosen

    def _without_idle(self, chosen: frozenset[str]) -> frozenset[str]:
        """The set without what can go, with all that needs it, and nothing is left more for it."""
        for id in sorted(chosen):
            fewer = self._alone(chosen, frozenset({id}))
            less = None if self.until() else self._less(chosen, fewer)
            if less is not None and less >= (0, 0) and not self.search.wrong(fewer):
                chosen = self._taken(chosen, fewer)
        return chosen

    def _taken(self, chosen: frozenset[str], other: frozenset[str]) -> frozenset[str]:
        """The other set, with what is known of its trees."""
        for at in self._at(chosen ^ other):
            self._known[at], self._concern[at] = self._answer(at, other), self._concerned(at, other)
        return other

    def _instead(self, chosen: frozenset[str], id: str) -> frozenset[str]:
        """A set with one more and its needs, without what these exclude."""
        more = with_needs(self.search.facts, id)
        foes = frozenset[str]().union(*(self.search.facts.against[one] for one in more))
        return self._alone(chosen, chosen & foes) | more

    def _alone(self, chosen: frozenset[str], gone: frozenset[str]) -> frozenset[str]:
        """A set without some, and without all that needs one of these."""
        needs = self.search.facts.needs
        while more := frozenset(id for id in chosen - gone if not gone.isdisjoint(needs[id])):
            gone |= more
        return chosen - gone

    def _at(self, ids: frozenset[str]) -> list[int]:
        """Trees in which any of these has a say as things stand."""
        return [at for at, concern in enumerate(self._concern) if not ids.isdisjoint(concern)]

    def _answer(self, at: int, chosen: frozenset[str]) -> Asked:
        """What one tree leaves after a set, asked along the set alone: nothing of the rest is looked at."""
        return self._along(at, chosen)[1]

    def _concerned(self, at: int, chosen: frozenset[str]) -> frozenset[str]:
        """Those of a set that a tree asks about, and all that it would ask about next, one group after the other."""
        taken, refused = self._along(at, chosen)[0], frozenset[str]()
        while branch := self.search.growth.trees[at].tree.ask(taken, refused).branch:
            refused |= frozenset(branch)
        return taken | refused

    def _along(self, at: int, chosen: frozenset[str]) -> tuple[frozenset[str], Asked]:
        """Those of a set that a tree asks about, and what it leaves with all others refused."""
        ask, mine = self.search.growth.trees[at].tree.ask, self._mine[at]
        taken, rest = frozenset[str](), mine - chosen
        while True:
            asked = ask(taken, rest)
            if not asked.branch:
                return taken, asked
            taken |= {next(id for id in asked.branch if id in chosen)}

    def _less(self, chosen: frozenset[str], other: frozenset[str]) -> Worth | None:
        """What another set takes away beside the one so far; None where that is forbidden."""
        before, after = (0, 0), (0, 0)
        for at in self._at(chosen ^ other):
            asked = self._answer(at, other)
            if not asked.allowed:
                return None
            before, after = self._sum(before, self._known[at]), self._sum(after, asked)
        return before[0] - after[0], before[1] - after[1]

    def _sum(self, so_far: Worth, asked: Asked) -> Worth:
        if self.search.facts.problem.hazards_first:
            return so_far[0] + asked.hazards, so_far[1] + asked.points
        return 0, so_far[1] + asked.hazards + asked.points

    def _share(self, id: str) -> float:
        """The part of all money and minutes that an option takes; a little for one that takes nothing."""
        facts, ids = self.search.facts, with_needs(self.search.facts, id)
        minutes = recount.minutes_of(facts, ids) / max(1, sum(map(sum, facts.minutes)))
        money = recount.bill(facts, ids, ()).spent_minor / max(1, self.search.money or 0)
        return 0.001 + minutes + (money if self.search.money is not None else 0)
