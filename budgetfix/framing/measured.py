"""Measured findings as trees: the room is inspected with what is chosen so far, and asked what it looked at."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from budgetfix.base.numbers import half_even
from budgetfix.brief.models import Brief
from budgetfix.framing.exclusion import Exclusions
from budgetfix.inspection.again import moved_between
from budgetfix.inspection.eyes import points_to
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.guard import worse_than
from budgetfix.inspection.inspect import Seen, look_again, look_at
from budgetfix.inspection.judging import Block, Judge
from budgetfix.inspection.look import Question
from budgetfix.optimize.problem import Asked, Tree
from budgetfix.remedies.candidate import Candidate
from budgetfix.room.items import TABLES, Item, Piece, Table
from budgetfix.room.places import WallLine, wall_lines
from budgetfix.room.survey import Change, Survey, moved_to

ANCHORS = ("bed",)


def changed_by(survey: Survey, candidates: Mapping[str, Candidate], chosen: Iterable[str]) -> Survey:
    """The survey with all changes of the chosen candidates, in the order of their ids; what is needed comes first."""
    return survey.changed(change for id in in_order(candidates, chosen) for change in candidates[id].changes)


def in_order(candidates: Mapping[str, Candidate], chosen: Iterable[str]) -> tuple[str, ...]:
    """The chosen ids, sorted, but each after those that it needs."""
    waiting, done = sorted(chosen), dict[str, None]()
    while waiting:
        ready = [id for id in waiting if not any(need in waiting for need in candidates[id].needs)]
        done.update(dict.fromkeys(ready))
        waiting = [id for id in waiting if id not in done]
    return tuple(done)


def voices_of(findings: Iterable[Finding], brief: Brief) -> tuple[int, ...]:
    """The points that these leave in the eyes of each voice of a brief."""
    kept = tuple(findings) if brief.voices else ()
    return tuple(points_to(person, kept, hazards_too=not brief.hazards_first) for person in brief.voices)


def gone(before: Survey, after: Survey, room: str) -> tuple[tuple[Table, Item], ...]:
    """The things of a room of the old survey that are not in the new one."""
    changed = [table for table in TABLES if before.table(table) is not after.table(table)]
    there = ((table, item) for table in changed for item in before.things(table, room))
    return tuple((table, item) for table, item in there if item.name not in after.named)


@dataclass
class MeasuredTree:
    """One block of findings over all candidates that change the room."""

    block: Block
    survey: Survey
    brief: Brief
    candidates: Mapping[str, Candidate]
    exclusions: Exclusions
    absences: Mapping[str, Judge]
    before: Seen
    memory: dict[frozenset[str], Seen] = field(default_factory=dict)
    origin: Survey | None = None
    """The rooms before anything was done, where that is not `survey`; `first`: the block as it was then."""
    first: Seen | None = None
    _said: dict[Question, frozenset[str]] = field(default_factory=dict)
    _mattering: dict[frozenset[str], frozenset[str]] = field(default_factory=dict)
    _names: dict[str, frozenset[str]] = field(default_factory=dict)

    def look(self, chosen: frozenset[str]) -> Seen:
        """The block with these candidates, inspected once."""
        if chosen not in self.memory:
            after = changed_by(self.survey, self.candidates, chosen)
            start, first = self.origin or self.survey, self.first or self.before
            moved, away = moved_between(start, after, self.block.room), gone(start, after, self.block.room)
            self.memory[chosen] = look_again(self.block, after, self.brief, first, away, self.absences, moved)
        return self.memory[chosen]

    def of(self, chosen: frozenset[str]) -> Seen:
        """The block with those of a set that it asks about, whatever else is in the set."""
        mine = chosen & self.reach
        if mine not in self._mattering:
            self._mattering[mine] = self._that_matter(mine)
        return self.look(self._mattering[mine])

    def _that_matter(self, chosen: frozenset[str]) -> frozenset[str]:
        """Found by growing from nothing."""
        taken: frozenset[str] = frozenset()
        while True:
            more = [id for id in self.touching(taken, frozenset()) if id in chosen]
            if not more:
                return taken
            taken |= {more[0]}

    def ask(self, chosen: frozenset[str], refused: frozenset[str]) -> Asked:
        """Exact where no undecided candidate touches anything that was asked."""
        seen = self.look(chosen)
        touching = self.touching(chosen, refused)
        if touching:
            return Asked(0, 0, self.exclusions.clique(touching))
        allowed = not self.worse(seen)
        return Asked(seen.hazards, seen.points, (), allowed, voices_of(seen.findings, self.brief))

    def worse(self, after: Seen) -> tuple[Finding, ...]:
        """The findings for which the guard forbids what is left."""
        return worse_than(self.first or self.before, after, self.brief.may_worsen, self.before)

    def bound(self, chosen: frozenset[str], refused: frozenset[str]) -> tuple[int, ...]:
        """What cannot be got below: with every undecided piece lifted out, where lifting never hurts; else 0."""
        nothing = (0, 0, *(0 for _ in self.brief.voices))
        if not all(judge.rule.lifting_helps for judge in self.block.judges):
            return nothing
        after = changed_by(self.survey, self.candidates, chosen)
        lifted: set[str] = set()
        for id in self.touching(chosen, refused):
            for change in self.candidates[id].changes:
                item = after.named.get(change.item, (None, None))[1]
                if item is None and change.add is not None:
                    continue
                if not isinstance(item, Piece) or item.seat is not None or item.what in ANCHORS:
                    return nothing
                lifted.add(item.name)
        seen = look_at(self.block, after, self.brief, frozenset(lifted))
        return (_worst(seen, safety=True), _worst(seen, safety=False), *nothing[2:])

    def touching(self, chosen: frozenset[str], refused: frozenset[str]) -> list[str]:
        """Undecided candidates that change the answer of something that was asked, by id."""
        asked = self.look(chosen).asked
        plainly = frozenset[str]().union(*(self._by_question(question) for question in asked))
        names = {change.item for id in chosen for change in self.candidates[id].changes}
        after: Survey | None = None
        found = []
        for id, candidate in self._within_reach.items():
            apart = names.isdisjoint(self._items(id))
            if (apart and id not in plainly) or id in chosen or id in refused or not candidate.changes:
                continue
            if self.exclusions.any(id, chosen):
                continue
            touches = apart
            if not apart:
                after = after or changed_by(self.survey, self.candidates, chosen)
                touches = touched(after, candidate.changes, asked, self.block.room)
            if touches:
                found.append(id)
        return found

    def _items(self, id: str) -> frozenset[str]:
        if id not in self._names:
            self._names[id] = frozenset(change.item for change in self.candidates[id].changes)
        return self._names[id]

    def _by_question(self, question: Question) -> frozenset[str]:
        """Candidates that touch a question from the survey as it is."""
        if question not in self._said:
            lines = wall_lines(self.survey, self.block.room)
            self._said[question] = frozenset(
                id for id in self._near if covered(self.survey, self.candidates[id].changes, (question,), lines)
            )
        return self._said[question]

    @cached_property
    def _within_reach(self) -> dict[str, Candidate]:
        """Candidates that change anything in this room, or a thing that one of those changes too."""
        names = frozenset[str]().union(*(self._items(id) for id in self._near))
        return {id: one for id, one in self.candidates.items() if not names.isdisjoint(self._items(id))}

    @cached_property
    def reach(self) -> frozenset[str]:
        """Their ids: no other candidate has a say in this block."""
        return frozenset(self._within_reach)

    @cached_property
    def _near(self) -> tuple[str, ...]:
        """Candidates that change anything in this room: no question asks beyond its own."""
        room = self.block.room
        return tuple(
            id
            for id, one in self.candidates.items()
            if any(_in_room(self.survey, change, room) for change in one.changes)
        )


def _in_room(survey: Survey, change: Change, room: str) -> bool:
    if change.add is not None:
        return change.add.room == room
    known = survey.named.get(change.item)
    return known is not None and (known[1].room == room or ("room", room) in change.set)


def touched(survey: Survey, changes: Iterable[Change], asked: Iterable[Question], room: str) -> bool:
    """True where a change alters the answer of a question: the thing is in it before or after."""
    return covered(survey, changes, asked, wall_lines(survey, room))


def covered(survey: Survey, changes: Iterable[Change], asked: Iterable[Question], lines: dict[str, WallLine]) -> bool:
    """The same, with the wall lines of the room at hand."""
    questions = tuple(asked)
    return any(
        question.covers(change.table, item, lines)
        for change in changes
        for item in _before_and_after(survey, change)
        for question in questions
    )


def _before_and_after(survey: Survey, change: Change) -> tuple[Item, ...]:
    if change.add is not None:
        return (change.add,)
    if change.item not in survey.named:
        return ()
    item = survey.named[change.item][1]
    return (item,) if change.remove else (item, moved_to(item, change.set))


def _worst(seen: Seen, *, safety: bool) -> int:
    """The worst single finding: shares may shift between findings when pieces go, so their sum is no bound."""
    return max((half_even(finding.raw) for finding in seen.findings if finding.safety == safety), default=0)


def measured_tree(tree: MeasuredTree) -> Tree:
    """The tree of one block, for the chooser."""
    return Tree(f"{tree.block.room}/{tree.block.name}", tree.ask, tree.bound, members=tree.reach)
