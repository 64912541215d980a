"""Trees of what every set is worth, grown by asking: each answer says which options still have a say.

A node knows which options are chosen and which refused. Its answer either is exact (a leaf), or names options
of which at most one can be chosen: then it has one child for each of them and one for none of them.
Growing is shared by all solves of one job (three plans, the curve, "why not"): hand the same `Growth` in again.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from budgetfix.optimize.facts import Facts
from budgetfix.optimize.problem import Asked, Problem, Tree

if TYPE_CHECKING:
    from budgetfix.optimize.merging import Merged
    from budgetfix.optimize.worth_rows import Known

ASKS = 3000
"""Questions asked up front over all trees whose answers cost an inspection."""
ASKS_A_TREE = 4000
"""Questions asked up front in one tree."""
ASKS_A_NODE = 4
"""Questions asked at and below one node that a linear relaxation stands on."""
ASKS_A_ROUND = 24
"""Questions asked besides those along the chosen set, when a solve lands on an unknown leaf."""


@dataclass
class Node:
    """One state of knowledge. `asked` None: not asked yet; `floor` then holds the tree's bound, once known."""

    chosen: frozenset[str]
    refused: frozenset[str]
    asked: Asked | None = None
    floor: tuple[int, ...] | None = None
    children: dict[str | None, Node] = field(default_factory=dict)
    """By the member chosen; None: all refused."""

    @property
    def exact(self) -> bool:
        return self.asked is not None and not self.asked.branch


class GrownTree:
    """One tree, as far as it has been grown. `asks` counts the questions so far."""

    def __init__(self, tree: Tree, against: dict[str, frozenset[str]]) -> None:
        self.tree = tree
        self.asks = 0
        self._against = against
        self.root = Node(frozenset(), frozenset())

    def ask(self, node: Node) -> Asked:
        """Ask at a node once, and hang its children."""
        if node.asked is None:
            node.asked = self.tree.ask(node.chosen, node.refused)
            self.asks += 1
            branch = node.asked.branch
            for member in branch:
                refused = (node.refused | frozenset(branch) | self._against.get(member, frozenset())) - {member}
                node.children[member] = Node(node.chosen | {member}, refused - node.chosen)
            if branch:
                node.children[None] = Node(node.chosen, node.refused | frozenset(branch))
        return node.asked

    def floor(self, node: Node) -> tuple[int, ...]:
        """What no completion of an unasked node gets below."""
        if node.floor is None:
            node.floor = self.tree.bound(node.chosen, node.refused)
        return node.floor

    def find(self, chosen: frozenset[str]) -> Node:
        """The deepest known node that a set leads to: a leaf, or one not asked yet."""
        node = self.root
        while node.asked is not None and node.asked.branch:
            node = node.children[next((one for one in node.asked.branch if one in chosen), None)]
        return node

    def exact(self, chosen: frozenset[str]) -> Asked:
        """The exact answer for a set, asking as far as needed."""
        while True:
            node = self.find(chosen)
            asked = self.ask(node)
            if not asked.branch:
                return asked

    def leaves(self, possible: frozenset[str]) -> Iterator[Node]:
        """Leaves and unasked nodes that hold only possible options, in a fixed order."""
        stack = [self.root]
        while stack:
            node = stack.pop()
            if not node.children:
                yield node
                continue
            stack.extend(
                child for member, child in reversed(node.children.items()) if member is None or member in possible
            )

    def widen(self, start: Node, possible: frozenset[str], most: int) -> None:
        """Ask breadth first below a node, at most `most` questions."""
        until = self.asks + most
        waiting = deque([start])
        while waiting and self.asks < until:
            node = waiting.popleft()
            self.ask(node)
            waiting.extend(child for member, child in node.children.items() if member is None or member in possible)


class Growth:
    """All trees of a problem, grown as far as has been asked."""

    def __init__(
        self, problem: Problem, *, asks: int = ASKS, asks_a_tree: int = ASKS_A_TREE, asks_a_round: int = ASKS_A_ROUND
    ) -> None:
        against = Facts.of(problem).against
        self.trees = tuple(GrownTree(tree, against) for tree in problem.trees)
        self.version = 0
        """Goes up whenever something was asked: leaves read before are stale then."""
        self.read: dict[frozenset[str], tuple[Known, Merged]] = {}
        """Leaves as they were read for some options, so that no solve reads what another one has read."""
        self._asks, self._asks_a_tree, self._asks_a_round = asks, asks_a_tree, asks_a_round
        self._grown = False

    @property
    def asks(self) -> int:
        return sum(tree.asks for tree in self.trees)

    def grow_up_front(self, possible: frozenset[str], enough: Callable[[], bool] = lambda: False) -> bool:
        """Ask everything, or up to the caps: cheap trees whole, dear ones in even shares until `enough` says so.

        True where dear trees are whole, or were grown before: only the first solve of a job looks for a greedy plan.
        How far trees are grown changes how long the search takes, never what it finds.
        """
        if self._grown:
            return True
        self._grown = True
        self.version += 1
        dear = [tree for tree in self.trees if not tree.tree.cheap]
        for tree in self.trees:
            if tree.tree.cheap:
                tree.widen(tree.root, possible, self._asks_a_tree)
        share = 8
        while dear and (left := self._asks - sum(tree.asks for tree in self.trees if not tree.tree.cheap)) > 0:
            before = self.asks
            for tree in dear:
                if enough():
                    return False
                asked = tree.asks
                tree.widen(tree.root, possible, min(share, left, self._asks_a_tree - asked))
                left -= tree.asks - asked
            if self.asks == before:
                return True
            share *= 2
        return not dear

    def grow_along(
        self, chosen: frozenset[str], possible: frozenset[str], enough: Callable[[], bool] = lambda: False
    ) -> bool:
        """Ask along a set until it lands on an exact leaf in every tree. True where anything was asked.

        Beside the way to that leaf something more is asked until `enough` says so.
        """
        before = self.asks
        for tree in self.trees:
            node = tree.find(chosen)
            if node.asked is None:
                tree.exact(chosen)
                if not enough():
                    tree.widen(node, possible, self._asks_a_round)
        if self.asks != before:
            self.version += 1
        return self.asks != before

    def grow_at(self, nodes: Iterable[tuple[int, Node]], possible: frozenset[str]) -> bool:
        """Ask at some nodes, by tree, and a little below them. True where anything was asked."""
        before = self.asks
        for place, node in nodes:
            if node.asked is None:
                self.trees[place].widen(node, possible, ASKS_A_NODE)
        if self.asks != before:
            self.version += 1
        return self.asks != before

    def allowed(self, chosen: frozenset[str]) -> bool:
        """Whether no tree forbids the set."""
        return all(tree.exact(chosen).allowed for tree in self.trees)


def remaining(growth: Growth, chosen: Iterable[str]) -> tuple[int, ...]:
    """Exact hazard points, points and points of each voice that remain after a set; grows the trees where it must."""
    ids = frozenset(chosen)
    before = growth.asks
    answers = [tree.exact(ids) for tree in growth.trees]
    if growth.asks != before:
        growth.version += 1
    voices = zip(*(one.voices for one in answers), strict=True)
    return sum(one.hazards for one in answers), sum(one.points for one in answers), *map(sum, voices)


def value(growth: Growth, chosen: Iterable[str]) -> tuple[int, int]:
    """Exact (hazard points, points) that remain after a set."""
    hazards, points, *_ = remaining(growth, chosen)
    return hazards, points
