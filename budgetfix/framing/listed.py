"""Listed faults as trees: each chosen relief works on what is left, in exact arithmetic."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from budgetfix.base.numbers import half_even
from budgetfix.brief.models import Brief, ListedFault
from budgetfix.framing.exclusion import Exclusions
from budgetfix.optimize.problem import Asked, Tree

MOST = Fraction(2)
"""A listed fault never grows beyond twice what was typed."""


def remaining(fault: ListedFault, reliefs: Iterable[Fraction], brief: Brief) -> int:
    """Points left: round(points x priority x clip(product of (1 - relief), 0, 2)), halves to even."""
    left = Fraction(1)
    for relief in reliefs:
        left *= 1 - relief
    clipped = min(max(left, Fraction(0)), MOST)
    return half_even(fault.points * brief.priority(fault.fault) * clipped)


@dataclass(frozen=True)
class ListedTree:
    """One listed fault. `reliefs`: option id to relief, only options that answer it, sorted by id."""

    fault: ListedFault
    brief: Brief
    reliefs: Mapping[str, Fraction]
    exclusions: Exclusions

    def _asked(self, points: int, branch: tuple[str, ...] = ()) -> Asked:
        return Asked(points, 0, branch) if self.fault.safety else Asked(0, points, branch)

    def ask(self, chosen: frozenset[str], refused: frozenset[str]) -> Asked:
        """Exact once every option that answers the fault is decided."""
        decided = chosen | refused
        open_ids = [id for id in self.reliefs if id not in decided and not self.exclusions.any(id, chosen)]
        if open_ids:
            return self._asked(0, self.exclusions.clique(open_ids))
        return self._asked(
            remaining(self.fault, (self.reliefs[id] for id in sorted(chosen & set(self.reliefs))), self.brief)
        )

    def bound(self, chosen: frozenset[str], refused: frozenset[str]) -> tuple[int, int]:
        """The least that can remain: every undecided clique at its best relief (never below no relief)."""
        factors = [1 - self.reliefs[id] for id in sorted(chosen & set(self.reliefs))]
        left = [id for id in self.reliefs if id not in chosen | refused and not self.exclusions.any(id, chosen)]
        while left:
            clique = self.exclusions.clique(left)
            factors.append(min(Fraction(1), *(1 - self.reliefs[id] for id in clique)))
            left = [id for id in left if id not in clique]
        points = remaining(self.fault, (1 - max(factor, Fraction(0)) for factor in factors), self.brief)
        return (points, 0) if self.fault.safety else (0, points)


def listed_tree(
    fault: ListedFault,
    brief: Brief,
    answers: Iterable[tuple[str, Fraction]],
    exclusions: Exclusions,
    name: Callable[[str], str] = "listed/{}".format,
) -> Tree:
    """The tree of one listed fault. `answers`: (option id, relief) of all options that answer it."""
    made = ListedTree(fault, brief, dict(sorted(answers)), exclusions)
    return Tree(name(fault.fault), made.ask, made.bound, cheap=True)
