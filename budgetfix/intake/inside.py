"""Lists and blocks read piece by piece: every piece that cannot be read is told, with its own words and place."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import TypeVar

from budgetfix.base.problems import Place
from budgetfix.intake.raw_rows import RawRow, close_to
from budgetfix.intake.yaml_lines import Key, KeyPath

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Part:
    """What was found somewhere inside a value, what to do about it, and the keys that lead there."""

    found: object
    advice: str
    keys: KeyPath = ()


class Inside(ValueError):
    """Raised by readers for what stands inside a list or a block, all of it at once."""

    def __init__(self, *parts: Part) -> None:
        super().__init__("; ".join(part.advice for part in parts))
        self.parts = parts


def each(items: Iterable[tuple[Key, object]], how: Callable[[Key, object], T]) -> list[T]:
    """Read every item with `how`. Errors: Inside, with all that failed; a plain ValueError's text is the advice."""
    made: list[T] = []
    wrong: list[Part] = []
    for key, item in items:
        try:
            made.append(how(key, item))
        except Inside as inside:
            wrong += [Part(part.found, part.advice, (key, *part.keys)) for part in inside.parts]
        except ValueError as advice:
            wrong.append(Part(item, str(advice), (key,)))
    if wrong:
        raise Inside(*wrong)
    return made


def at(key: Key, value: object, how: Callable[[object], T]) -> T:
    """Read one value that stands at `key`. Errors: Inside."""
    return each([(key, value)], lambda _, item: how(item))[0]


class Gathered:
    """Reads the parts of a block one after the other: what cannot be read is kept, and told together at the end."""

    def __init__(self) -> None:
        self.wrong: list[Part] = []
        self.strange = False

    def at(self, key: Key, value: object, otherwise: T, how: Callable[[object], T]) -> T:
        """One value that stands at `key`; `otherwise` where it cannot be read.

        Beside a key that is not known, a value that is missing is not told: it stands there, most likely.
        """
        if value is None and self.strange:
            return otherwise
        return self.of(lambda: at(key, value, how), otherwise)

    def of(self, how: Callable[[], T], otherwise: T) -> T:
        """What tells its own keys; `otherwise` where it cannot be read."""
        try:
            return how()
        except Inside as inside:
            self.wrong += inside.parts
            return otherwise

    def only(self, given: Mapping[str, object], known: tuple[str, ...]) -> None:
        """Every key that is not `known` is wrong."""
        self.strange = any(key not in known for key in given)
        self.of(lambda: only(given, known), None)

    def end(self) -> None:
        """Errors: Inside, where anything was wrong."""
        if self.wrong:
            raise Inside(*self.wrong)


def only(given: Mapping[str, object], known: tuple[str, ...]) -> None:
    """Errors: Inside, for each key that is not `known`."""
    strange = [
        Part(key, close_to(str(key), list(known)) or f"known here: {', '.join(known)}", (key,))
        for key in given
        if key not in known
    ]
    if strange:
        raise Inside(*strange)


def named_place(row: RawRow, field: str, name: str) -> Place:
    """Where a name stands in a list or block of `field`: its own line where the file tells, else the field's place."""
    cell = row.cells.get(field)
    if cell is None or cell.at is None:
        return row.place_of(field)
    listed = isinstance(cell.value, list) and name in cell.value
    return cell.at(cell.value.index(name) if listed and isinstance(cell.value, list) else name)


def place_in(row: RawRow, field: str, *keys: Key) -> Place:
    """Where something stands inside a block of `field`, by its keys; a name in a list there stands on its own line."""
    cell = row.cells.get(field)
    if cell is None or cell.at is None:
        return row.place_of(field)
    inside: object = cell.value
    for key in keys[:-1]:
        inside = inside.get(key) if isinstance(inside, dict) else None
    last = inside.index(keys[-1]) if isinstance(inside, list) and keys[-1] in inside else keys[-1]
    return cell.at(*keys[:-1], last)
