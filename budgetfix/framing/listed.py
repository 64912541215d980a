"""Listed faults as trees: each chosen relief works on what is left, in exact arithmetic."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from budgetfix.base.numbers import half_even
from budgetfix.brief.models import Brief, ListedFault, Person
from budgetfix.framing.exclusion import Exclusions
from budgetfix.optimize.problem import Asked, Tree

MOST = Fraction(2)
"""A listed fault never grows beyond twice what was typed."""


def remaining(fault: ListedFault, reliefs: Iterable[Fraction], brief: Brief, person: Person | None = None) -> int:
    """Points left: round(points x priority x clip(product of (1 - relief), 0, 2)), halves to even.

    `person`: in the eyes of somebody with priorities of their own.
    """
    left = fault.left
    for relief in reliefs:
        left *= 1 - relief
    clipped = min(max(left, Fraction(0)), MOST)
    mine = person.priority(fault.fault) if person is not None and not fault.safety else 1
    return half_even(fault.points * brief.priority(fault.fault) * mine * clipped)


def voiced(fault: ListedFault, reliefs: Iterable[Fraction], brief: Brief) -> tuple[int, ...]:
    """Points left in the eyes of each voice; hazards count for a voice only where they are counted as points."""
    if fault.safety and brief.hazards_first:
        return (0,) * len(brief.voices)
    factors = tuple(reliefs)
    return tuple(remaining(fault, factors, brief, person) for person in brief.voices)


@dataclass(frozen=True)
class ListedTree:
    """One listed fault. `reliefs`: option id to relief, only options that answer it, sorted by id."""

    fault: ListedFault
    brief: Brief
    reliefs: Mapping[str, Fraction]
    exclusions: Exclusions

    def _left(self, reliefs: Iterable[Fraction]) -> tuple[int, ...]:
        """Hazard points, points and the points of each voice that remain."""
        factors = tuple(reliefs)
        points = remaining(self.fault, factors, self.brief)
        pair = (points, 0) if self.fault.safety else (0, points)
        return *pair, *voiced(self.fault, factors, self.brief)

    def ask(self, chosen: frozenset[str], refused: frozenset[str]) -> Asked:
        """Exact once every option that answers the fault is decided."""
        decided = chosen | refused
        open_ids = [id for id in self.reliefs if id not in decided and not self.exclusions.any(id, chosen)]
        if open_ids:
            return Asked(0, 0, self.exclusions.clique(open_ids))
        hazards, points, *voices = self._left(self.reliefs[id] for id in sorted(chosen & set(self.reliefs)))
        return Asked(hazards, points, voices=tuple(voices))

    def bound(self, chosen: frozenset[str], refused: frozenset[str]) -> tuple[int, ...]:
        """The least that can remain: every undecided clique at its best relief (never below no relief)."""
        factors = [1 - self.reliefs[id] for id in sorted(chosen & set(self.reliefs))]
        decided = chosen | refused
        left = [id for id in self.reliefs if id not in decided and not self.exclusions.any(id, chosen)]
        cliques = self.exclusions.cliques(left)
        factors.extend(min(Fraction(1), *(1 - self.reliefs[id] for id in clique)) for clique in cliques)
        return self._left(1 - max(factor, Fraction(0)) for factor in factors)


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
