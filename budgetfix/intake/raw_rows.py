"""What stands in a survey file before anything is believed: cells with their places, by table and field."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date

from budgetfix.base.limits import LONGEST_TEXT
from budgetfix.base.problems import FileProblem, Place
from budgetfix.base.signs import forbidden, shortened, tidied


@dataclass(frozen=True, slots=True)
class RawCell:
    """A value as the file holds it. `trouble`: a found-text of its own, where the file spoilt the value."""

    value: object
    place: Place
    trouble: str = ""
    at: Callable[..., Place] | None = None
    """The place of what stands inside the value, by its keys, where the file tells."""

    def __post_init__(self) -> None:
        """Text comes without signs that nobody sees; one that would do something spoils it, as does too much of it."""
        if isinstance(self.value, str):
            object.__setattr__(self, "value", tidied(self.value))
            object.__setattr__(self, "trouble", self.trouble or spoilt(self.value))

    @property
    def shown(self) -> str:
        """The user's own words, for `found ...`."""
        if self.trouble:
            return self.trouble
        if isinstance(self.value, str):
            return f"'{shortened(self.value)}'"
        if isinstance(self.value, date):
            return "a date"
        if isinstance(self.value, (list, dict)):
            return "a list" if isinstance(self.value, list) else "a block of keys"
        if isinstance(self.value, float) and self.value.is_integer() and abs(self.value) < 1e15:
            return str(int(self.value))
        return {True: "yes", False: "no"}[self.value] if isinstance(self.value, bool) else str(self.value)


def spoilt(text: str) -> str:
    """What is wrong with a text, for `found ...`; empty where nothing is."""
    if len(text) > LONGEST_TEXT:
        return f"{len(text):,} signs"
    sign = forbidden(text)
    return f"text with the sign {sign}" if sign else ""


@dataclass
class RawRow:
    """One line of a table: the filled cells by field, and where empty ones would stand."""

    table: str
    place: Place
    cells: dict[str, RawCell] = field(default_factory=dict)
    empty: dict[str, Place] = field(default_factory=dict)

    def place_of(self, name: str) -> Place:
        return self.cells[name].place if name in self.cells else self.empty.get(name, self.place)


@dataclass
class RawSurvey:
    """A whole file: the home's facts, rows by table (`rooms`, `walls`, ... `faults`), and the brief's fields."""

    file: str
    home: RawRow
    rows: dict[str, list[RawRow]] = field(default_factory=dict)
    brief: dict[str, tuple[object, Place]] = field(default_factory=dict)
    problems: list[FileProblem] = field(default_factory=list)


def close_to(word: str, known: list[str]) -> str:
    """`did you mean X?` for the nearest known word, or nothing."""
    from difflib import get_close_matches

    lowered = {name.lower(): name for name in sorted(known, reverse=True)}
    near = get_close_matches(word.lower(), sorted(lowered), n=1, cutoff=0.7)
    return f"did you mean {lowered[near[0]]}?" if near else ""
