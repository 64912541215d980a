"""Several jobs, one stock: which job goes without which piece, so that none stands in two places on one day.

Conflict-based branching (the idea is that of conflict-based search in the finding of paths for several agents; from
memory). Every job is first answered with every piece: jobs share nothing but pieces, so the sum of these answers is a
bound on all that can be done. Where more packs of a piece are held on one day than there are, there is a child for
each way to deal them out among those who hold it (or, where those are many, one for each of them that holds one pack
less), in which only who gets fewer is answered again. Pieces that are missed most are dealt out first. Nodes are
taken best first by their sums, so the first one without a conflict is the best there is; a dive from the root, and
each job taking what is left in the order of first days, give plans to stop with.

What jobs leave is compared as tuples of whole numbers, entry by entry, less is better, and added entry by entry; the
sum of the least tuples is then no more than any other sum. A job answered with fewer packs leaves no less.
"""

from __future__ import annotations

import heapq
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

from budgetfix.optimize.stock import Conflict, Packs, Stock, conflicts, deals, in_order, left_over, lower, within

Left = tuple[int, ...]
"""What a plan leaves, first wish first; every job of one search has as many entries."""


@dataclass(frozen=True, slots=True)
class Answered:
    """The best plan of one job within ceilings. `left` None: the clock ended before any plan was found.

    `floor`: no plan within these ceilings leaves less; `left` itself where that is proven.
    """

    left: Left | None
    floor: Left
    held: Packs = ()
    under: Packs = ()
    """The ceilings that it was asked under."""

    @property
    def proven(self) -> bool:
        return self.left == self.floor


Ask = Callable[[Sequence[tuple[int, Packs]]], Sequence[Answered | None]]
"""Answers several (job, ceilings) at once; None: no plan keeps that job's wishes. Pieces not named have no ceiling."""


@dataclass(frozen=True, slots=True)
class Shared:
    """Who holds what: an answer and ceilings for each job. `floor`: no allocation leaves less (in sum)."""

    answers: tuple[Answered, ...]
    ceilings: tuple[Packs, ...]
    left: Left
    floor: Left
    nodes: int = 1
    alone: tuple[Packs, ...] = ()
    """What each job would hold if it were the only one."""

    @property
    def proven(self) -> bool:
        return self.left == self.floor


@dataclass(frozen=True, slots=True)
class NoShare:
    """No allocation keeps every job's wishes; not proven: the clock ended before one was found.

    `alone`: jobs without a plan of their own. `conflicts`: what stands in the way of the rest.
    """

    proven: bool
    alone: tuple[int, ...] = ()
    conflicts: tuple[Conflict, ...] = ()


@dataclass
class Memory:
    """What every job was asked, and answered. Nothing is asked twice."""

    ask: Ask
    known: dict[int, list[tuple[Packs, Answered | None]]] = field(default_factory=dict)
    solves: int = 0

    def of(self, wanted: Sequence[tuple[int, Packs]]) -> list[Answered | None]:
        """Answers, known or fetched, in the order asked."""
        fresh = [one for one in dict.fromkeys(wanted) if self._known(*one) is None]
        for (job, ceilings), answer in zip(fresh, self.ask(fresh) if fresh else (), strict=True):
            self.solves += 1
            self.known.setdefault(job, []).append((ceilings, answer))
        return [self._told(job, ceilings) for job, ceilings in wanted]

    def _told(self, job: int, ceilings: Packs) -> Answered | None:
        found = self._known(job, ceilings)
        return found[0] if found is not None else None

    def _known(self, job: int, ceilings: Packs) -> tuple[Answered | None] | None:
        """An answer under the same ceilings, or under higher ones that it does not reach."""
        for over, answer in self.known.get(job, ()):
            if over == ceilings:
                return (answer,)
            fewer = all(most <= dict(over).get(piece, most) for piece, most in ceilings) and all(
                piece in dict(ceilings) for piece, _ in over
            )
            if fewer and (answer is None or (answer.proven and within(answer.held, ceilings))):
                return (answer,)
        return None


@dataclass(order=True, slots=True)
class _Node:
    """Ordered by what it leaves at least, then by how much is in conflict, then by age."""

    floor: Left
    many: int
    age: int
    ceilings: tuple[Packs, ...] = field(compare=False)
    answers: tuple[Answered, ...] = field(compare=False)
    clashes: tuple[Conflict, ...] = field(compare=False)

    @property
    def left(self) -> Left | None:
        """What it leaves; None where a job has no plan yet."""
        each = [one.left for one in self.answers]
        return _sum([one for one in each if one is not None]) if None not in each else None


def _lifted(answer: Answered, floor: Left) -> Answered:
    """An answer without proof has at least the floor that it had with more pieces."""
    return answer if answer.proven or answer.floor >= floor else replace(answer, floor=floor)


def _sum(each: Sequence[Left]) -> Left:
    return tuple(map(sum, zip(*each, strict=True)))


class _Search:
    """Nodes best first."""

    def __init__(self, stock: Stock, memory: Memory) -> None:
        self.stock = stock
        self.memory = memory
        self.best: _Node | None = None
        self.open: list[_Node] = []
        self.seen: set[tuple[Packs, ...]] = set()
        self.made = 0
        self.needed: set[str] = set()
        """Pieces of which some job cannot do with fewer."""
        self.ranks: dict[str, int] = {}
        self.expanded: set[tuple[Packs, ...]] = set()

    def node(self, ceilings: tuple[Packs, ...], answers: Sequence[Answered]) -> _Node:
        self.made += 1
        clashes = tuple(conflicts(self.stock, [one.held for one in answers]))
        floor = _sum([one.floor for one in answers])
        return _Node(floor, len(clashes), self.made, ceilings, tuple(answers), clashes)

    def keep(self, node: _Node) -> None:
        """Remember a node without conflict, where it is the best so far."""
        left = node.left
        if left is not None and (self.best is None or self.best.left is None or left < self.best.left):
            self.best = node

    def push(self, node: _Node) -> None:
        """Leave out what was met before, and what can be no better than the best in hand."""
        if node.ceilings in self.seen or self.done(node):
            return
        self.seen.add(node.ceilings)
        heapq.heappush(self.open, node)

    def done(self, node: _Node) -> bool:
        """True where the best in hand is as good as a node can be."""
        return self.best is not None and self.best.left is not None and self.best.left <= node.floor

    def greedy(self, root: _Node) -> None:
        """Jobs in the order of their first day; each takes what is left."""
        held: dict[int, Packs] = {}
        ceilings, answers = list(root.ceilings), list(root.answers)
        for at in in_order(self.stock):
            ceilings[at] = left_over(self.stock, held, at)
            found = self.memory.of([(at, ceilings[at])])[0]
            if found is None or found.left is None:
                return
            held[at], answers[at] = found.held, found
        self.keep(self.node(tuple(ceilings), answers))

    def branch(self, node: _Node, clash: Conflict) -> list[_Node]:
        """A child for each way to deal out the piece on that day; only those who get fewer packs are answered again."""
        held = [dict(node.answers[at].held)[clash.piece] for at in clash.jobs]
        ways = [self._lowered(node, clash, way) for way in deals(self.stock.packs[clash.piece], held)]
        wanted = [(at, ceilings[at]) for ceilings in ways for at in clash.jobs if ceilings[at] != node.ceilings[at]]
        told = dict(zip(wanted, self.memory.of(wanted), strict=True))
        children = []
        for ceilings in ways:
            answers = list(node.answers)
            fresh = [(at, told[at, ceilings[at]]) for at in clash.jobs if ceilings[at] != node.ceilings[at]]
            for at, found in fresh:
                answers[at] = _lifted(found, answers[at].floor) if found is not None else answers[at]
            if any(found is None for _, found in fresh):
                self.needed.add(clash.piece)
            else:
                children.append(self.node(ceilings, answers))
        return children

    def _lowered(self, node: _Node, clash: Conflict, way: tuple[int, ...]) -> tuple[Packs, ...]:
        most = dict(zip(clash.jobs, way, strict=True))
        there = self.stock.packs[clash.piece]
        return tuple(
            lower(mine, clash.piece, most[at]) if most.get(at, there) < there else mine
            for at, mine in enumerate(node.ceilings)
        )

    def take_in(self, children: list[_Node]) -> None:
        """Keep what is without conflict, and put all of them into the queue."""
        for child in children:
            if not child.clashes:
                self.keep(child)
            self.push(child)

    def rank(self, root: _Node) -> None:
        """Pieces by how much the jobs lose that have to do without: what matters most is decided first."""
        clashes = {one.piece: one for one in reversed(root.clashes)}
        asked = [
            (piece, at, lower((), piece, dict(root.answers[at].held)[piece] - 1))
            for piece, clash in sorted(clashes.items())
            for at in clash.jobs
        ]
        told = self.memory.of([(at, ceilings) for _, at, ceilings in asked])
        loss: dict[str, list[Left]] = {}
        for (piece, at, _), found in zip(asked, told, strict=True):
            before = root.answers[at].floor
            after = found.floor if found is not None else tuple(1 << 40 for _ in before)
            loss.setdefault(piece, []).append(tuple(then - now for then, now in zip(after, before, strict=True)))
        order = sorted(loss, key=lambda piece: tuple(-part for part in (*min(loss[piece]), *_sum(loss[piece]))))
        self.ranks = {piece: place for place, piece in enumerate(order)}

    def first(self, node: _Node) -> Conflict:
        """The conflict that is decided next: the piece that matters most, then the earliest day."""
        return min(node.clashes, key=lambda one: self.ranks.get(one.piece, len(self.ranks)))

    def dive(self, node: _Node, stopped: Callable[[], bool]) -> None:
        """From a node down to one without conflict, child by best child."""
        while node.clashes and node.left is not None and not stopped() and not self.done(node):
            self.expanded.add(node.ceilings)
            children = self.branch(node, self.first(node))
            self.take_in(children)
            if not children:
                return
            node = min(children)


def share(stock: Stock, memory: Memory, stopped: Callable[[], bool]) -> Shared | NoShare:
    """The best allocation of pieces to jobs; `stopped` is asked before every node."""
    jobs = range(len(stock.stays))
    first = memory.of([(at, ()) for at in jobs])
    answers = [one for one in first if one is not None]
    if len(answers) < len(first):
        return NoShare(True, tuple(at for at in jobs if first[at] is None))
    search = _Search(stock, memory)
    root = search.node(((),) * len(first), answers)
    if not root.clashes:
        search.keep(root)
        return _result(search, root, root.floor)
    search.greedy(root)
    search.push(root)
    if not stopped() and not search.done(root):
        search.rank(root)
        search.dive(root, stopped)
    floor = _best_first(search, stopped)
    return _result(search, root, floor)


def _best_first(search: _Search, stopped: Callable[[], bool]) -> Left | None:
    """Take nodes until one is the best; returns what nothing can get below, None where there is nothing at all."""
    while search.open:
        node = search.open[0]
        if search.done(node):
            break
        if node.ceilings in search.expanded:
            heapq.heappop(search.open)
            continue
        if stopped() or node.left is None or not node.clashes:
            return node.floor
        heapq.heappop(search.open)
        search.take_in(search.branch(node, search.first(node)))
    return search.best.left if search.best is not None else None


def _result(search: _Search, root: _Node, floor: Left | None) -> Shared | NoShare:
    best, alone = search.best, tuple(one.held for one in root.answers)
    if best is None or best.left is None:
        pressing = tuple(one for one in root.clashes if one.piece in search.needed)
        return NoShare(floor is None, (), pressing or root.clashes)
    return Shared(best.answers, best.ceilings, best.left, min(floor or best.left, best.left), search.made, alone)


def settled(stock: Stock, memory: Memory, found: Shared, stopped: Callable[[], bool]) -> Shared:
    """The same sums, each job with every piece that the others leave to it: no ceiling stands for nothing.

    Job by job, in the order of their first days; a job may come by another plan that is as good.
    """
    answers, ceilings = list(found.answers), list(found.ceilings)
    for at in in_order(stock) if found.proven else ():
        most = left_over(stock, {other: one.held for other, one in enumerate(answers)}, at)
        again = None if stopped() else memory.of([(at, most)])[0]
        if again is not None and again.proven and again.left == answers[at].left:
            answers[at], ceilings[at] = again, most
    held = {at: one.held for at, one in enumerate(answers)}
    for at in range(len(answers)):
        for piece, most_packs in left_over(stock, held, at):
            ceilings[at] = lower(ceilings[at], piece, most_packs)
    return replace(found, answers=tuple(answers), ceilings=tuple(ceilings))
