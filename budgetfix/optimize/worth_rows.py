"""Rows that tie leaves of the trees to the chosen options: `l[tree,leaf]` is the share of a leaf.

Once the options are whole, the rows leave each tree exactly one leaf, the one that the set leads to.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from budgetfix.optimize.choice_rows import x
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.growth import GrownTree, Growth, Node
from budgetfix.optimize.solver import Row, Terms


@dataclass(frozen=True, slots=True)
class Leaf:
    """A leaf, or an unasked node with its floor, as a column. `hazards`, `points`: what remains at least."""

    name: str
    chosen: frozenset[str]
    refused: frozenset[str]
    hazards: int
    points: int
    unknown: tuple[tuple[int, Node], ...] = ()
    """(tree, node) that were not asked yet: the figures are floors."""
    voices: tuple[int, ...] = ()


@dataclass(frozen=True, eq=False)
class Family:
    """The leaves of one tree that a plan may stand on, and the branches met on the way."""

    place: int
    leaves: tuple[Leaf, ...]
    branches: tuple[tuple[str, ...], ...]

    @cached_property
    def unknown(self) -> tuple[Leaf, ...]:
        """Leaves with nodes that were not asked yet."""
        return tuple(leaf for leaf in self.leaves if leaf.unknown)

    @cached_property
    def rows(self) -> tuple[Row, ...]:
        """All rows of this family."""
        mine = (self,)
        return (*one_leaf(mine), *leaf_needs_its_options(mine), *leaf_without_its_refused(mine))


Known = dict[int, tuple[int, Family]]
"""Families as they were read, by place, with the questions asked until then."""


def families(facts: Facts, growth: Growth, known: Known | None = None) -> tuple[Family, ...]:
    """Leaves of every tree, for the options that can be chosen. A tree with one leaf for all is kept: it counts.

    `known` is read and kept up to date: what has not grown since is not read again.
    """
    possible = frozenset(facts.by_id)
    kept: Known = {} if known is None else known
    for place, tree in enumerate(growth.trees):
        if place not in kept or kept[place][0] != tree.asks:
            kept[place] = (tree.asks, _family(place, tree, possible))
    return tuple(kept[place][1] for place in range(len(growth.trees)))


def _family(place: int, tree: GrownTree, possible: frozenset[str]) -> Family:
    nodes = list(tree.leaves(possible))
    found = (_leaf(f"l[{place},{index}]", place, tree, node) for index, node in enumerate(nodes))
    leaves = [leaf for leaf in found if leaf is not None]
    branches: dict[tuple[str, ...], None] = {}
    stack = [tree.root]
    while stack:
        node = stack.pop()
        if node.children and node.asked is not None:
            members = tuple(one for one in node.asked.branch if one in possible)
            if members:
                branches[members] = None
            stack.extend(child for member, child in node.children.items() if member is None or member in possible)
    return Family(place, tuple(leaves), tuple(sorted(branches)))


def _leaf(name: str, place: int, tree: GrownTree, node: Node) -> Leaf | None:
    if node.asked is None:
        hazards, points, *voices = tree.floor(node)
        return Leaf(name, node.chosen, node.refused, hazards, points, ((place, node),), tuple(voices))
    if not node.asked.allowed:
        return None
    return Leaf(name, node.chosen, node.refused, node.asked.hazards, node.asked.points, (), node.asked.voices)


def one_leaf(found: tuple[Family, ...]) -> Iterator[Row]:
    """Every tree stands on one of its leaves that are allowed."""
    for family in found:
        yield Row(f"leaf_{family.place}", tuple((1, leaf.name) for leaf in family.leaves), "=", 1)


def leaf_needs_its_options(found: tuple[Family, ...]) -> Iterator[Row]:
    """A leaf on which an option is chosen is stood on only if that option is chosen."""
    for family in found:
        holders: dict[str, list[str]] = {}
        for leaf in family.leaves:
            for id in leaf.chosen:
                holders.setdefault(id, []).append(leaf.name)
        for id in sorted(holders):
            yield Row(f"leaf_{family.place}_{id}", (*((1, name) for name in holders[id]), (-1, x(id))), "<=", 0)


def leaf_without_its_refused(found: tuple[Family, ...]) -> Iterator[Row]:
    """A leaf on which options that exclude each other are all refused is stood on only if none of them is chosen."""
    for family in found:
        for index, branch in enumerate(family.branches):
            members = frozenset(branch)
            names = [leaf.name for leaf in family.leaves if members <= leaf.refused]
            if names:
                terms = (*((1, name) for name in names), *((1, x(id)) for id in branch))
                yield Row(f"leaf_{family.place}_none_{index}", terms, "<=", 1)


def hazard_terms(found: tuple[Family, ...]) -> Terms:
    """Hazard points that remain."""
    return tuple((leaf.hazards, leaf.name) for family in found for leaf in family.leaves if leaf.hazards)


def point_terms(found: tuple[Family, ...]) -> Terms:
    """Points that remain."""
    return tuple((leaf.points, leaf.name) for family in found for leaf in family.leaves if leaf.points)


def voice_terms(found: tuple[Family, ...], voice: int) -> Terms:
    """Points that remain in the eyes of one voice."""
    return tuple((leaf.voices[voice], leaf.name) for family in found for leaf in family.leaves if leaf.voices[voice])


def floors(found: tuple[Family, ...]) -> tuple[int, int]:
    """(hazard points, points) that no plan gets below, tree by tree; no solver needed."""
    hazards = sum(min((leaf.hazards for leaf in family.leaves), default=0) for family in found)
    points = sum(min((leaf.points for leaf in family.leaves), default=0) for family in found)
    return hazards, points


def most_hazards(found: tuple[Family, ...]) -> int:
    """Hazard points that no plan gets above on what is known."""
    return sum(max((leaf.hazards for leaf in family.leaves), default=0) for family in found)
