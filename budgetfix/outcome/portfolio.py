"""Several jobs planned together, as every output of the portfolio shows them: exports only lay it out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from budgetfix.base.readable import readable
from budgetfix.outcome.book import PlanBook


@dataclass(frozen=True, slots=True)
class House:
    """One job. `folder`: the name of its folder; `files`: its paths as typed. Days are those of its stay, if any."""

    folder: str
    name: str
    book: PlanBook
    files: tuple[str, ...]
    first: date | None = None
    until: date | None = None
    stock: tuple[str, ...] = ()
    """Products that come from the stock."""

    @property
    def said(self) -> str:
        """The folder's name, as text that every output can hold."""
        return readable(self.folder)


@dataclass(frozen=True, slots=True)
class Standing:
    """Packs of one piece in a house. `first` and `until` None: it says no days, so they stand there all the time."""

    house: str
    packs: int
    first: date | None
    until: date | None


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece of the stock: packs that there are, where they are kept, and where they stand when."""

    piece: str
    name: str
    place: str
    weight_kg: Fraction | None
    packs: int
    stands: tuple[Standing, ...]
    missed: tuple[str, ...] = ()
    """Houses that would hold more of it if they were the only ones."""


@dataclass(frozen=True, slots=True)
class Run:
    """One slot of a van: minutes of its day, the house, which way, and what it carries, as far as weights are known."""

    on: date
    start_minute: int
    end_minute: int
    van: str
    house: str
    way: str
    """`brings` or `takes back`."""
    carried: tuple[tuple[str, int, str], ...]
    """(name, packs, place in the store)."""
    weight_kg: Fraction
    unweighed: int
    """Packs of which nobody knows the weight."""
    load_kg: Fraction | None


@dataclass(frozen=True, slots=True)
class Portfolio:
    """All jobs of a folder. `bound`: no allocation takes away more points (see `plan --json`)."""

    name: str
    folder: str
    currency: str
    ordered: date | None
    houses: tuple[House, ...]
    pieces: tuple[Piece, ...]
    runs: tuple[Run, ...]
    proven: bool
    bound: int
    seconds_limit: float
    files: tuple[str, ...] = ()
    """Paths of the portfolio's own files."""
    notes: tuple[str, ...] = ()

    @property
    def budget_minor(self) -> int | None:
        """All budgets together; None where one job has no limit."""
        budgets = [house.book.budget_minor for house in self.houses]
        return None if None in budgets else sum(one for one in budgets if one is not None)

    @property
    def spent_minor(self) -> int:
        return sum(house.book.spent_minor for house in self.houses)

    @property
    def improvement(self) -> int:
        return sum(house.book.improvement for house in self.houses)


def house_name(folder: str) -> str:
    """A folder's name as people say it: `elm-street` is Elm Street."""
    words = readable(folder).replace("-", " ").replace("_", " ").split()
    return " ".join(word[:1].upper() + word[1:] for word in words) or readable(folder)


def house_names(folders: Sequence[str]) -> list[str]:
    """The names of all houses, in order; folders that people would say alike keep the names that they have."""
    said = [house_name(folder) for folder in folders]
    many = Counter(said)
    return [readable(folder) if many[name] > 1 else name for folder, name in zip(folders, said, strict=True)]
