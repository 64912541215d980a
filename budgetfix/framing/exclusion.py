"""Which options cannot be chosen together, worked out once and asked often."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Exclusions:
    """Pairs that exclude each other (both ways), groups included."""

    against: dict[str, frozenset[str]]

    @classmethod
    def of(cls, ids: Iterable[str], groups: Iterable[Sequence[str]], pairs: Iterable[tuple[str, str]]) -> Exclusions:
        """`groups`: ids of which at most one is chosen; `pairs`: two that cannot both be."""
        found: dict[str, set[str]] = {id: set() for id in ids}
        for group in groups:
            for id in group:
                found[id] |= set(group) - {id}
        for one, other in pairs:
            if one in found and other in found and one != other:
                found[one].add(other)
                found[other].add(one)
        return cls({id: frozenset(others) for id, others in found.items()})

    def any(self, id: str, chosen: frozenset[str]) -> bool:
        """True where something chosen excludes it."""
        return not self.against[id].isdisjoint(chosen)

    def clique(self, ids: Sequence[str]) -> tuple[str, ...]:
        """The first of the ids, and every later one that excludes all taken so far."""
        if not ids:
            return ()
        taken, fitting = [ids[0]], self.against[ids[0]]
        for id in ids[1:] if fitting else ():
            if id in fitting:
                taken.append(id)
                fitting &= self.against[id]
        return tuple(taken)

    def cliques(self, ids: Sequence[str]) -> list[tuple[str, ...]]:
        """The ids in such cliques, those first that exclude no other one of them."""
        all_of_them = frozenset(ids)
        found: list[tuple[str, ...]] = [(id,) for id in ids if not self.any(id, all_of_them)]
        left = [id for id in ids if self.any(id, all_of_them)]
        while left:
            found.append(self.clique(left))
            left = [id for id in left if id not in found[-1]]
        return found
