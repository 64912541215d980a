"""One integer program as plain data: variables by name, rows of whole numbers, readable as `.lp` text."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal

Terms = tuple[tuple[int, str], ...]


@dataclass(frozen=True, slots=True)
class Variable:
    """A column between two bounds; whole numbers only, or anything between."""

    low: int
    up: int | None
    whole: bool


@dataclass(frozen=True, slots=True)
class Row:
    """One condition: the sum of coefficient x variable stands in `sense` to `right`."""

    name: str
    terms: Terms
    sense: Literal["<=", ">=", "="]
    right: float


@dataclass
class Program:
    """Variables by name and rows, all of whole numbers; every objective is minimised."""

    variables: dict[str, Variable] = field(default_factory=dict)
    rows: list[Row] = field(default_factory=list)

    def binary(self, name: str) -> None:
        """A yes or no."""
        self.variables.setdefault(name, Variable(0, 1, True))

    def integer(self, name: str, up: int | None = None) -> None:
        """A whole number from 0 on."""
        self.variables.setdefault(name, Variable(0, up, True))

    def share(self, name: str) -> None:
        """A number from 0 on that need not be whole."""
        self.variables.setdefault(name, Variable(0, None, False))

    def fix(self, name: str, value: int) -> None:
        """Pin a variable to one value."""
        self.variables[name] = Variable(value, value, self.variables[name].whole)

    def loosen(self, name: str) -> None:
        """A variable need no longer be whole."""
        one = self.variables[name]
        self.variables[name] = Variable(one.low, one.up, False)

    def add(self, rows: Iterable[Row]) -> None:
        """Take in more rows."""
        self.rows.extend(rows)

    def copy(self) -> Program:
        """Another program with the same rows, to be added to."""
        return Program(dict(self.variables), list(self.rows))


@dataclass(frozen=True, slots=True)
class Solved:
    """What came out. `values` None: no solution known. `bound`: no solution has a smaller objective."""

    status: Literal["optimal", "infeasible", "stopped"]
    values: dict[str, float] | None
    objective: float
    bound: float
    took: float = 0.0
    """Seconds."""


def holds(row: Row) -> bool:
    """Whether a row without columns holds."""
    return {"<=": row.right >= 0, ">=": row.right <= 0, "=": row.right == 0}[row.sense]


def lp_text(program: Program, objective: Terms = ()) -> str:
    """The program in the `.lp` format, in the order in which it was built."""
    lines = ["Minimize", f" obj: {_words(objective) or '0'}", "Subject To"]
    lines += [f" {row.name}: {_words(row.terms) or '0'} {row.sense} {row.right:g}" for row in program.rows]
    lines += ["Bounds"]
    for name, one in program.variables.items():
        lines.append(f" {one.low} <= {name}" + ("" if one.up is None else f" <= {one.up}"))
    lines += ["Generals", *(f" {name}" for name, one in program.variables.items() if one.whole), "End"]
    return "\n".join(lines) + "\n"


def _words(terms: Terms) -> str:
    words = ""
    for coefficient, name in terms:
        sign = "-" if coefficient < 0 else "+"
        size = "" if abs(coefficient) == 1 else f"{abs(coefficient)} "
        words += f" {sign} {size}{name}" if words else f"{'-' if coefficient < 0 else ''}{size}{name}"
    return words
