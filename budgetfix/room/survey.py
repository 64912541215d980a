"""A survey: the household, its rooms, and the things in them. A changed survey is a new survey."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Literal, TypeVar, cast

from pydantic import BaseModel, ConfigDict, Field

from budgetfix.room.items import (
    ITEM_OF,
    TABLES,
    Curtain,
    Hung,
    Item,
    Light,
    Opening,
    Piece,
    Rug,
    Socket,
    Table,
    Thing,
)

Value = str | float | int | bool | None
T = TypeVar("T", bound=Thing)


class Household(BaseModel):
    """Facts that no remedy changes."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    unit: Literal["in", "mm", "cm"] = "mm"
    rent: bool = False
    before_1978: bool | None = None
    children: bool = False
    toddlers: bool = False
    walkers: bool = False
    step_free: bool = False

    @property
    def metric(self) -> bool:
        return self.unit != "in"


class Wall(BaseModel):
    """One wall: `turn` is how you turn at its right end: right (90), left (-90), or degrees to the right."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    room: str = ""
    wall: str
    length: float
    turn: float = 90.0
    solid: bool | None = None
    """Masonry (True), plasterboard (False), not known (None)."""
    outside: bool = False


class RoomFacts(BaseModel):
    """One room: its kind, ceiling and floor."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    room: str = ""
    kind: Literal["living room", "bedroom", "dining room", "kitchen", "hall", "study", "living-dining room"] = (
        "living room"
    )
    ceiling: float = 2400.0
    floor: Literal["hard", "carpet"] = "hard"


def moved(item: T, **new: Value) -> T:
    """A copy of a thing with other fields, checked like a new one."""
    return type(item).model_validate({**dict(item), **new})


@lru_cache(maxsize=4096)
def moved_to(item: Item, fields: tuple[tuple[str, Value], ...]) -> Item:
    """The same for fields as a change holds them, remembered: choosing asks for the same few over and over."""
    return moved(item, **dict(fields))


@dataclass(frozen=True, slots=True)
class Change:
    """One thing changed: fields set, or the thing added (`add`), or taken away (`remove`)."""

    table: Table
    item: str
    set: tuple[tuple[str, Value], ...] = ()
    add: Item | None = None
    remove: bool = False


class Survey(BaseModel):
    """The rooms as measured. `guessed` holds (item, field) pairs that were filled in by a default."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    household: Household = Household()
    rooms: tuple[RoomFacts, ...] = Field(default=(), strict=False)
    walls: tuple[Wall, ...] = Field(default=(), strict=False)
    openings: tuple[Opening, ...] = Field(default=(), strict=False)
    curtains: tuple[Curtain, ...] = Field(default=(), strict=False)
    furniture: tuple[Piece, ...] = Field(default=(), strict=False)
    pictures: tuple[Hung, ...] = Field(default=(), strict=False)
    rugs: tuple[Rug, ...] = Field(default=(), strict=False)
    lights: tuple[Light, ...] = Field(default=(), strict=False)
    sockets: tuple[Socket, ...] = Field(default=(), strict=False)
    guessed: frozenset[tuple[str, str]] = Field(default=frozenset(), strict=False)

    def table(self, table: Table) -> tuple[Item, ...]:
        return cast(tuple[Item, ...], getattr(self, table))

    @cached_property
    def named(self) -> dict[str, tuple[Table, Item]]:
        """Every thing by its name."""
        return {item.name: (table, item) for table in TABLES for item in self.table(table)}

    @cached_property
    def _by_room(self) -> dict[str, tuple[tuple[Item | Wall, ...], dict[str, tuple[Item | Wall, ...]]]]:
        """Tables by room, as far as they were asked for, each beside the rows that it was made of."""
        return {}

    def _in_room(self, table: str, rows: tuple[Item | Wall, ...], room: str) -> tuple[Item | Wall, ...]:
        """A copy with other rows may have come by what was kept of these: then it is made anew."""
        kept = self._by_room.get(table)
        if kept is None or kept[0] is not rows:
            found: dict[str, list[Item | Wall]] = {}
            for row in rows:
                found.setdefault(row.room, []).append(row)
            kept = self._by_room[table] = rows, {name: tuple(items) for name, items in found.items()}
        return kept[1].get(room, ())

    def things(self, table: Table, room: str) -> tuple[Item, ...]:
        """The things of a table in one room, in the order of the table."""
        return cast(tuple[Item, ...], self._in_room(table, self.table(table), room))

    def facts(self, room: str) -> RoomFacts:
        """The room of that name. Errors: KeyError."""
        for facts in self.rooms:
            if facts.room == room:
                return facts
        raise KeyError(room)

    def walls_of(self, room: str) -> tuple[Wall, ...]:
        return cast(tuple[Wall, ...], self._in_room("walls", self.walls, room))

    def changed(self, changes: Iterable[Change]) -> Survey:
        """The survey after the changes, in order. Setting a field of a thing that is gone is an error of ours."""
        tables: dict[Table, dict[str, Item]] = {}
        for change in changes:
            things = tables.setdefault(change.table, {item.name: item for item in self.table(change.table)})
            if change.add is not None:
                things[change.add.name] = change.add
            elif change.remove:
                things.pop(change.item, None)
            else:
                things[change.item] = moved_to(things[change.item], change.set)
        fresh = {str(table): tuple(things.values()) for table, things in tables.items()}
        kept = {name: getattr(self, name) for name in type(self).model_fields}
        after = Survey.model_construct(**{**kept, **fresh})
        after.__dict__["_by_room"] = dict(self._by_room)
        return after


__all__ = [
    "ITEM_OF",
    "Change",
    "Household",
    "Item",
    "RoomFacts",
    "Survey",
    "Table",
    "Value",
    "Wall",
    "moved",
    "moved_to",
]
