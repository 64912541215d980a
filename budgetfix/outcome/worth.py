"""What a set is worth, and what each member of it is: by the same inspections that the chooser asked for."""

from __future__ import annotations

from collections.abc import Iterable

from budgetfix.framing.frame import Framed, Ground
from budgetfix.framing.listed import remaining
from budgetfix.framing.measured import MeasuredTree
from budgetfix.framing.options import ERRAND
from budgetfix.inspection.guard import worse_than


class Worth:
    """Remaining (hazard points, points) of any set of candidates of one framing."""

    def __init__(self, base: Ground, framed: Framed) -> None:
        self._base = base
        self._framed = framed

    def left(self, ids: Iterable[str]) -> tuple[int, int]:
        """(hazard points, points) that remain when these are chosen."""
        chosen = frozenset(id for id in ids if not id.startswith(ERRAND))
        hazards = points = 0
        for tree in self._framed.trees:
            seen = tree.look(_that_matter(tree, chosen))
            hazards, points = hazards + seen.hazards, points + seen.points
        for fault in self._base.faults:
            reliefs = [
                relief
                for id in sorted(chosen)
                for name, relief in self._framed.candidates[id].answers
                if name == fault.fault
            ]
            left = remaining(fault, reliefs, self._base.brief)
            hazards, points = (hazards + left, points) if fault.safety else (hazards, points + left)
        return hazards, points

    def worsens(self, ids: Iterable[str]) -> tuple[str, ...]:
        """Titles of findings that the guard forbids with this set: left more than a quarter worse than they were."""
        chosen = frozenset(id for id in ids if not id.startswith(ERRAND))
        found = []
        for tree in self._framed.trees:
            seen = tree.look(_that_matter(tree, chosen))
            found += [
                f"{one.title} ({one.subject})" for one in worse_than(tree.before, seen, self._base.brief.may_worsen)
            ]
        return tuple(found)

    def answers(self, id: str, chosen: Iterable[str]) -> tuple[str, ...]:
        """Measured findings that this one makes better in this set: worse again if it alone were dropped."""
        whole = frozenset(one for one in chosen if not one.startswith(ERRAND))
        found = []
        for tree in self._framed.trees:
            without = tree.look(_that_matter(tree, whole - {id}))
            now = {one.id: one.severity for one in tree.look(_that_matter(tree, whole)).findings}
            found += [one.id for one in without.findings if one.severity > now.get(one.id, 0)]
        return tuple(sorted(found))

    def of(self, id: str, chosen: Iterable[str]) -> int:
        """Points and hazard points that would come back if this one alone were dropped; never below 0."""
        whole = frozenset(chosen)
        with_hazards, with_points = self.left(whole)
        hazards, points = self.left(whole - {id})
        return max(0, hazards - with_hazards + points - with_points)


def _that_matter(tree: MeasuredTree, chosen: frozenset[str]) -> frozenset[str]:
    """The chosen that this block asks about, found by growing from nothing."""
    taken: frozenset[str] = frozenset()
    while True:
        more = [id for id in tree.touching(taken, frozenset()) if id in chosen]
        if not more:
            return taken
        taken |= {more[0]}
