"""What a change moves: the things of a room as they were and as they are, held against what was asked."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property

from budgetfix.inspection.look import Question
from budgetfix.room.items import TABLES, Item, Table
from budgetfix.room.places import WallLine, wall_lines
from budgetfix.room.survey import Survey


@dataclass(frozen=True)
class Moved:
    """Every thing of a room that differs between two of its states, in both its versions."""

    things: tuple[tuple[Table, Item], ...]
    lines: dict[str, WallLine]
    _told: dict[Question, bool] = field(default_factory=dict, repr=False)

    @cached_property
    def tables(self) -> frozenset[Table]:
        return frozenset(table for table, _ in self.things)

    def touches(self, asked: Iterable[Question]) -> bool:
        """True where the answer of one of these questions may be another one now."""
        tables = self.tables
        return any(question.table in tables and self._touched(question) for question in asked)

    def _touched(self, question: Question) -> bool:
        if question not in self._told:
            self._told[question] = any(question.covers(table, item, self.lines) for table, item in self.things)
        return self._told[question]


def moved_between(before: Survey, after: Survey, room: str) -> Moved:
    """What a changed survey moved in a room. Household, rooms and walls never change."""
    things: list[tuple[Table, Item]] = []
    for table in TABLES:
        if before.table(table) is after.table(table):
            continue
        old, new = before.things(table, room), after.things(table, room)
        was, now = {item.name: item for item in old}, {item.name: item for item in new}
        for name in dict.fromkeys((*was, *now)):
            one, other = was.get(name), now.get(name)
            if one is not other and one != other:
                things += [(table, item) for item in (one, other) if item is not None]
    return Moved(tuple(things), wall_lines(before, room))
