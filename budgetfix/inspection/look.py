"""The only window a rule has onto the room: it hands things out and records what was asked."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import TypeVar, cast

from shapely.geometry import Polygon

from budgetfix.base.twin import Twin
from budgetfix.room.items import Curtain, Hung, Item, Light, Opening, Piece, Rug, Socket, Table, Thing
from budgetfix.room.places import WallLine, bounds, outline, wall_lines
from budgetfix.room.survey import Household, RoomFacts, Survey, Wall

Box = tuple[float, float, float, float]
T = TypeVar("T", bound=Thing)
V = TypeVar("V")


@dataclass(frozen=True, slots=True)
class Question:
    """What was asked: things of one table in one room, narrowed by name, sort, wall or a box of floor."""

    table: Table
    room: str
    names: tuple[str, ...] | None = None
    whats: tuple[str, ...] | None = None
    wall: str | None = None
    box: Box | None = None

    def covers(self, table: Table, item: Item, lines: dict[str, WallLine]) -> bool:
        """True where the thing belongs to the answer of this question."""
        if table != self.table or (self.names is not None and item.name not in self.names) or item.room != self.room:
            return False
        if self.whats is not None and getattr(item, "what", None) not in self.whats:
            return False
        if self.wall is not None and getattr(item, "wall", None) != self.wall:
            return False
        return self.box is None or _meets(bounds(item, lines), self.box)


def _meets(one: Box | None, other: Box) -> bool:
    if one is None:
        return False
    return one[0] <= other[2] and other[0] <= one[2] and one[1] <= other[3] and other[1] <= one[3]


@dataclass(frozen=True)
class Look:
    """One room of one survey, seen by one rule. Every call that hands out things that can change is recorded.

    The household, the walls, the ceiling and the floor never change: asking for them is not recorded.
    """

    survey: Survey
    room: str
    lifted: frozenset[str] = frozenset()
    asked: dict[Question, None] = field(default_factory=dict)
    known: dict[Question, tuple[Item, ...]] = field(default_factory=dict, repr=False)
    """Answers given before, shared by all looks at one state of the room."""

    made: dict[str, tuple[object, tuple[Question, ...]]] = field(default_factory=dict, repr=False)

    def again(self) -> Look:
        """A fresh look at the same state of the room: nothing is asked yet, what was answered is known."""
        fresh = Look(self.survey, self.room, self.lifted, {}, self.known, self.made)
        fresh.__dict__["lines"] = self.lines
        return fresh

    def once(self, name: str, make: Callable[[Look], V]) -> V:
        """What several subjects work out alike is worked out once; what it asks counts as asked each time."""
        if name not in self.made:
            fresh = self.again()
            self.made[name] = (make(fresh), tuple(fresh.asked))
        value, asked = self.made[name]
        self.asked.update(dict.fromkeys(asked))
        return cast("V", value)

    @property
    def household(self) -> Household:
        return self.survey.household

    @property
    def facts(self) -> RoomFacts:
        return self.survey.facts(self.room)

    @property
    def walls(self) -> tuple[Wall, ...]:
        return self.survey.walls_of(self.room)

    @cached_property
    def lines(self) -> dict[str, WallLine]:
        return wall_lines(self.survey, self.room)

    @cached_property
    def outline(self) -> Polygon:
        return outline(self.survey, self.room)

    def mm(self, twin: Twin) -> float:
        """A length of the trade as it holds in this survey's unit."""
        return twin.in_mm(self.household.metric)

    def _ask(
        self,
        table: Table,
        kind: type[T],
        names: Sequence[str] | None,
        whats: Sequence[str] | None,
        wall: str | None,
        box: Box | None,
    ) -> tuple[T, ...]:
        question = Question(
            table,
            self.room,
            None if names is None else tuple(names),
            None if whats is None else tuple(whats),
            wall,
            box,
        )
        self.asked[question] = None
        if question not in self.known:
            self.known[question] = tuple(
                item
                for item in self.survey.things(table, self.room)
                if isinstance(item, kind) and item.name not in self.lifted and question.covers(table, item, self.lines)
            )
        return cast("tuple[T, ...]", self.known[question])

    def openings(
        self, *, names: Sequence[str] | None = None, whats: Sequence[str] | None = None, wall: str | None = None
    ) -> tuple[Opening, ...]:
        return self._ask("openings", Opening, names, whats, wall, None)

    def curtains(self, *, names: Sequence[str] | None = None) -> tuple[Curtain, ...]:
        return self._ask("curtains", Curtain, names, None, None, None)

    def pieces(
        self,
        *,
        names: Sequence[str] | None = None,
        whats: Sequence[str] | None = None,
        wall: str | None = None,
        box: Box | None = None,
    ) -> tuple[Piece, ...]:
        """What stands on the floor. `box` (min x, min y, max x, max y): whose footprint meets it."""
        return self._ask("furniture", Piece, names, whats, wall, box)

    def hung(
        self,
        *,
        names: Sequence[str] | None = None,
        whats: Sequence[str] | None = None,
        wall: str | None = None,
    ) -> tuple[Hung, ...]:
        return self._ask("pictures", Hung, names, whats, wall, None)

    def rugs(self, *, names: Sequence[str] | None = None, box: Box | None = None) -> tuple[Rug, ...]:
        return self._ask("rugs", Rug, names, None, None, box)

    def lights(self, *, names: Sequence[str] | None = None, whats: Sequence[str] | None = None) -> tuple[Light, ...]:
        return self._ask("lights", Light, names, whats, None, None)

    def sockets(self) -> tuple[Socket, ...]:
        return self._ask("sockets", Socket, None, None, None, None)

    def piece(self, name: str) -> Piece | None:
        found = self.pieces(names=(name,))
        return found[0] if found else None

    def opening(self, name: str) -> Opening | None:
        found = self.openings(names=(name,))
        return found[0] if found else None

    def curtain(self, name: str) -> Curtain | None:
        found = self.curtains(names=(name,))
        return found[0] if found else None

    def hung_one(self, name: str) -> Hung | None:
        found = self.hung(names=(name,))
        return found[0] if found else None

    def rug(self, name: str) -> Rug | None:
        found = self.rugs(names=(name,))
        return found[0] if found else None

    def light(self, name: str) -> Light | None:
        found = self.lights(names=(name,))
        return found[0] if found else None

    def guessed(self, item: str, *fields: str) -> bool:
        """True where one of these figures was not measured but filled in by a default."""
        return any((item, name) in self.survey.guessed for name in fields)
