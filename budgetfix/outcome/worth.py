"""What a set is worth, and what each member of it is: by the same inspections that the chooser asked for."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from budgetfix.brief.models import ListedFault
from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.listed import remaining
from budgetfix.framing.measured import MeasuredTree
from budgetfix.framing.options import ERRAND


class Worth:
    """Remaining (hazard points, points) of any set of candidates of one framing."""

    def __init__(self, base: Ground, framed: Framed) -> None:
        self._base = base
        self._framed = framed
        self._trees: dict[str, list[int]] = {}
        for place, tree in enumerate(framed.trees):
            for id in sorted(tree.reach):
                self._trees.setdefault(id, []).append(place)
        self._answering: dict[str, list[tuple[str, Fraction]]] = {}
        for id, one in sorted(framed.candidates.items()):
            for fault, relief in one.answers:
                self._answering.setdefault(fault, []).append((id, relief))

    @property
    def hazards(self) -> bool:
        """Whether there is any hazard at all in the job."""
        listed = any(fault.safety for fault in self._base.faults)
        return listed or any(one.safety for seen in self._base.seen for one in seen.findings)

    def left(self, ids: Iterable[str]) -> tuple[int, int]:
        """(hazard points, points) that remain when these are chosen."""
        chosen = frozenset(id for id in ids if not id.startswith(ERRAND))
        hazards, points = self._measured(chosen)
        for fault in self._base.faults:
            left = self._listed(fault, chosen)
            hazards, points = (hazards + left, points) if fault.safety else (hazards, points + left)
        return hazards, points

    def gain(self, before: Iterable[str], after: Iterable[str]) -> int:
        """Hazard points and points together that fewer remain when the second set is chosen instead of the first.

        Only what the two sets answer otherwise is looked at, rooms and listed faults: a house has a thousand others.
        """
        old, new = (frozenset(id for id in ids if not id.startswith(ERRAND)) for ids in (before, after))
        touched = {fault for id in old ^ new for fault, _ in self._framed.candidates[id].answers}
        listed = sum(
            self._listed(fault, old) - self._listed(fault, new) for fault in self._base.faults if fault.fault in touched
        )
        places = sorted({place for id in old ^ new for place in self._trees.get(id, ())})
        trees = [self._framed.trees[place] for place in places]
        return sum(_together(tree, old) - _together(tree, new) for tree in trees) + listed

    def _measured(self, chosen: frozenset[str]) -> tuple[int, int]:
        seen = [tree.of(chosen) for tree in self._framed.trees]
        return sum(one.hazards for one in seen), sum(one.points for one in seen)

    def _listed(self, fault: ListedFault, chosen: frozenset[str]) -> int:
        reliefs = [relief for id, relief in self._answering.get(fault.fault, ()) if id in chosen]
        return remaining(fault, reliefs, self._base.brief)

    def worsens(self, ids: Iterable[str]) -> tuple[str, ...]:
        """Titles of findings that the guard forbids with this set: left more than a quarter worse than they were."""
        chosen = frozenset(id for id in ids if not id.startswith(ERRAND))
        found = []
        for tree in self._framed.trees:
            seen = tree.of(chosen)
            found += [f"{one.title} ({one.subject})" for one in tree.worse(seen)]
        return tuple(found)

    def answers(self, id: str, chosen: Iterable[str]) -> tuple[str, ...]:
        """Measured findings that this one makes better in this set: worse again if it alone were dropped.

        Findings of no interest to the household (priority 0) are answered by nothing.
        """
        whole = frozenset(one for one in chosen if not one.startswith(ERRAND))
        found = []
        for tree in (self._framed.trees[place] for place in self._trees.get(id, ())):
            without = tree.of(whole - {id})
            now = {one.id: one.severity for one in tree.of(whole).findings}
            found += [one.id for one in without.findings if one.raw and one.severity > now.get(one.id, 0)]
        return tuple(sorted(found))

    def of(self, id: str, chosen: Iterable[str]) -> int:
        """Points and hazard points that would come back if this one alone were dropped; never below 0."""
        whole = frozenset(chosen)
        return max(0, self.gain(whole - {id}, whole))


def _together(tree: MeasuredTree, chosen: frozenset[str]) -> int:
    seen = tree.of(chosen)
    return seen.hazards + seen.points
