"""Programs whose numbers are too large for a solver's tolerances, written with small ones.

A solver takes x = 0.999999 for 1, and a row that is broken by a millionth for kept. With a sum of 10^12 in that row
this is a million minor units. So what is large is written in digits to a base B, as sums are done by hand:

    sum a x <= b becomes sum a_0 x - b_0 <= B k_1, sum a_1 x - b_1 + k_1 <= B k_2, ..., sum a_n x - b_n + k_n <= 0

with a = a_0 + a_1 B + a_2 B^2 ... and whole carries k. Whoever keeps the last row keeps the first: multiply each by its
power of B and add them up. Whoever keeps the first finds the carries by rounding up. Large variables are split as well.
An objective becomes its digits, and the most significant one is as small as can be first. All of this is exact where
every variable in what is large is whole; shares of leaves and running totals of worth are, once the options are.

The bounds of a carry cut no solution off as long as every variable stays between its own low and its end: a carry is
then the lower digits of its sum less those of its side, divided by B and rounded up, and lies between what that gives
at the least and at the most that the sum can be. An end is the one that is stated, or follows from a row without
negative coefficients (`ends`). A variable with neither is taken to be below B^6, more than all money that is taken on.

Digits alone go on to the next power of B: what is declared of a variable in digits is a row of its own. No variable in
digits is below 0.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from itertools import count

from budgetfix.optimize.program import Program, Row, Solved, Terms, Variable

BASE = 4096
"""Of the digits: a millionth of it is far from a whole unit."""
LARGE = 10**6
"""The largest coefficient, side or value that a solver is given as it is: about 10,000 in a currency of two digits."""
PLACES = 6
"""Digits of a variable without a known end: 4096^6 is more than all the money that is taken on."""

Sums = dict[str, int]
"""Coefficient by variable."""
Columns = Mapping[str, Sequence[int]]
"""Digits by variable, the least significant first."""
Runner = Callable[[Program, Terms, float], Solved]
"""Solves a program in small numbers, in at most so many seconds."""
Range = tuple[int, int]


@dataclass(frozen=True)
class Digits:
    """A program in small numbers. `split`: the digits of each large variable, the least significant first.

    `objective`: the digits of the objective, the most significant first; the objective itself where it is small.
    """

    program: Program
    split: Mapping[str, tuple[str, ...]]
    objective: tuple[Terms, ...]

    def value(self, name: str, values: Mapping[str, float]) -> float:
        """The value of a variable of the program as it was."""
        parts = self.split.get(name)
        if parts is None:
            return values[name]
        return float(number_of([round(values[part]) for part in parts]))


def large(program: Program, objective: Terms) -> bool:
    """Whether any number in a program is too large to be handed over as it is."""
    return _heavy(objective) or any(_large(row) for row in program.rows)


def _large(row: Row) -> bool:
    return abs(row.right) > LARGE or _heavy(row.terms)


def _heavy(terms: Terms) -> bool:
    return any(by > LARGE or -by > LARGE for by, _ in terms)


def names(terms: Terms) -> set[str]:
    """The variables of a sum."""
    return {name for _, name in terms}


def by_digits(program: Program, objective: Terms, seconds: float, run: Runner) -> Solved:
    """Solve a large program through small ones, a digit of the objective at a time."""
    made = in_digits(program, objective)
    small, found, known, floor, left = made.program.copy(), None, 0, -math.inf, seconds
    for place, terms in enumerate(made.objective):
        weight = BASE ** (len(made.objective) - 1 - place)
        solved = run(small, terms, left)
        if solved.status == "infeasible" and found is None:
            return solved
        left -= solved.took
        if math.isfinite(solved.bound):
            floor = known + math.ceil(solved.bound - 1e-6) * weight
        found = solved.values or found
        if solved.status != "optimal" or solved.values is None:
            return _read(program, objective, made, found, floor, seconds - left)
        reached = sum(by * round(solved.values[name]) for by, name in terms)
        known += reached * weight
        small.add([Row(f"digit_{place}", terms, "<=", reached)])
    return _read(program, objective, made, found, None, seconds - left)


def _read(
    program: Program,
    objective: Terms,
    made: Digits,
    found: Mapping[str, float] | None,
    floor: float | None,
    took: float,
) -> Solved:
    """What came out, in the variables of the program as it was. `floor` None: it is the best."""
    if found is None:
        return Solved("stopped", None, math.inf, -math.inf if floor is None else floor, took)
    values = {name: made.value(name, found) for name in program.variables}
    total = sum(by * round(values[name]) for by, name in objective)
    if floor is None:
        return Solved("optimal", values, total, total - 0.5, took)
    return Solved("stopped", values, total, floor, took)


def in_digits(program: Program, objective: Terms) -> Digits:
    """The same program in small numbers."""
    return _Writer(program).written(objective)


class _Writer:
    """Writes one program anew, row by row."""

    def __init__(self, program: Program) -> None:
        self.old = program
        self.ends = ends(program)
        self.new = Program()
        self.split: dict[str, tuple[str, ...]] = {}
        self.numbers = count()

    def written(self, objective: Terms) -> Digits:
        wide = self._wide(objective)
        for name, one in self.old.variables.items():
            self._variable(name, one, name in wide)
        for name in self.split:
            self._bounds(name, self.old.variables[name])
        for row in self.old.rows:
            self._row(row)
        return Digits(self.new, self.split, self._objective(self._sums(objective)))

    def _wide(self, objective: Terms) -> set[str]:
        """Variables in anything large: a large coefficient, or another variable that goes into digits."""
        waiting = [row.terms for row in self.old.rows if not _large(row)]
        wide = {name for row in self.old.rows if _large(row) for _, name in row.terms}
        waiting, wide = ([*waiting, objective], wide) if not _heavy(objective) else (waiting, wide | names(objective))
        while True:
            parted = {name for name in wide if self._parted(name)}
            more = [terms for terms in waiting if not parted.isdisjoint(names(terms))]
            if not more:
                return wide
            wide = wide.union(*map(names, more))
            waiting = [terms for terms in waiting if parted.isdisjoint(names(terms))]

    def _parted(self, name: str) -> bool:
        up = self.ends[name]
        return up is None or up > LARGE

    def _variable(self, name: str, one: Variable, wide: bool) -> None:
        """A variable, whole where it is in anything large, in digits where it can be large itself."""
        up = self.ends[name]
        if not (wide and self._parted(name)):
            self.new.variables[name] = Variable(one.low, up if wide else one.up, one.whole or wide)
            return
        most = BASE**PLACES - 1 if up is None else up
        parts: list[str] = []
        while most:
            parts.append(f"{name}.{len(parts)}")
            self.new.integer(parts[-1], min(most, BASE - 1))
            most //= BASE
        self.split[name] = tuple(parts)

    def _bounds(self, name: str, one: Variable) -> None:
        """What is declared of a variable in digits, as rows; not where its digits cannot pass it anyway."""
        parts = self.split[name]
        if one.low == one.up:
            for place, part in enumerate(parts):
                digit = one.low // BASE**place % BASE
                self.new.variables[part] = Variable(digit, digit, True)
            return
        most = number_of([self.new.variables[part].up or 0 for part in parts])
        if one.up is not None and one.up < most:
            self._row(Row(f"up[{name}]", ((1, name),), "<=", one.up))
        if one.low > 0:
            self._row(Row(f"low[{name}]", ((1, name),), ">=", one.low))

    def _sums(self, terms: Terms) -> Sums:
        """Coefficients of the new variables."""
        sums: Sums = {}
        for by, name in terms:
            for place, part in enumerate(self.split.get(name, (name,))):
                sums[part] = sums.get(part, 0) + by * BASE**place
        return {name: by for name, by in sums.items() if by}

    def _row(self, row: Row) -> None:
        sums, right = self._sums(row.terms), row.right
        if row.sense == ">=":
            sums, right = {name: -by for name, by in sums.items()}, -right
        if not sums:
            right = min(1, max(-1, right))
        if max(map(abs, sums.values()), default=0) <= LARGE and abs(right) <= LARGE:
            self.new.add([Row(row.name, _terms(sums), "=" if row.sense == "=" else "<=", right)])
            return
        part = math.gcd(*sums.values()) if row.sense != "=" else 1
        sums, side = {name: by // part for name, by in sums.items()}, math.floor(right) // part
        self._chain(row.name, sums, side, equal=row.sense == "=")

    def _chain(self, name: str, sums: Sums, right: int, *, equal: bool) -> None:
        """A row in digits, with what is carried from each to the next."""
        columns, sides = {one: digits_of(by) for one, by in sums.items()}, digits_of(right)
        places = max(len(sides), *map(len, columns.values()))
        carried: Sums = {}
        for place in range(places):
            here = {**_digit(columns, place), **carried}
            if place < places - 1:
                low, up = self._range(_lowest(columns, place + 1))
                side, unit = number_of(sides[: place + 1]), BASE ** (place + 1)
                over = self._carry(-((side - low) // unit), -((side - up) // unit))
                here[over], carried = -BASE, {over: 1}
            side = sides[place] if place < len(sides) else 0
            self.new.add([Row(f"{name}.{place}", _terms(here), "=" if equal else "<=", side)])

    def _objective(self, sums: Sums) -> tuple[Terms, ...]:
        """The digits of an objective: what is left of it over each power of BASE is a variable of its own."""
        if max(map(abs, sums.values()), default=0) <= LARGE:
            return (_terms(sums),)
        columns = {name: digits_of(by) for name, by in sums.items()}
        places = max(map(len, columns.values()))
        found: list[Terms] = []
        carried: Sums = {}
        for place in range(places - 1):
            low, up = self._range(_lowest(columns, place + 1))
            unit = BASE ** (place + 1)
            rest, over = f"r[{place}]", self._carry(low // unit, up // unit)
            self.new.integer(rest, BASE - 1)
            here = {**_digit(columns, place), **carried, rest: -1, over: -BASE}
            self.new.add([Row(f"digit[{place}]", _terms(here), "=", 0)])
            found.append(((1, rest),))
            carried = {over: 1}
        return (_terms({**_digit(columns, places - 1), **carried}), *reversed(found))

    def _carry(self, low: int, up: int) -> str:
        name = f"k[{next(self.numbers)}]"
        self.new.variables[name] = Variable(low, max(low, up), True)
        return name

    def _range(self, sums: Sums) -> Range:
        """Between what and what a sum can be."""
        low = up = 0
        for name, by in sums.items():
            one = self.new.variables[name]
            most = BASE**PLACES if one.up is None else one.up
            low += by * (one.low if by > 0 else most)
            up += by * (most if by > 0 else one.low)
        return low, up


def _terms(sums: Sums) -> Terms:
    return tuple((by, name) for name, by in sums.items())


def _digit(columns: Columns, place: int) -> Sums:
    """One digit of each coefficient, where it is not 0."""
    return {name: digits[place] for name, digits in columns.items() if place < len(digits) and digits[place]}


def _lowest(columns: Columns, places: int) -> Sums:
    """What the lowest digits of each coefficient come to."""
    return {name: number_of(digits[:places]) for name, digits in columns.items()}


def number_of(digits: Sequence[int]) -> int:
    """The number that digits, the least significant first, come to."""
    return sum(BASE**place * digit for place, digit in enumerate(digits))


def digits_of(number: int) -> list[int]:
    """Digits between -BASE / 2 and BASE / 2, the least significant first; none for 0."""
    found = []
    while number:
        digit = number % BASE
        digit -= BASE if digit > BASE // 2 else 0
        found.append(digit)
        number = (number - digit) // BASE
    return found


def ends(program: Program) -> dict[str, int | None]:
    """The largest value of each variable, as far as it is told or follows from a row; None: unknown."""
    known = {name: one.up for name, one in program.variables.items()}
    for row in program.rows:
        for side in {"<=": (1,), ">=": (-1,), "=": (1, -1)}[row.sense]:
            _tell(program, known, [(side * by, name) for by, name in row.terms], math.floor(side * row.right))
    return known


def _tell(program: Program, known: dict[str, int | None], terms: list[tuple[int, str]], right: int) -> None:
    """Ends that follow from a sum that is at most `right`, for the variables without one."""
    open_ends = [(by, name) for by, name in terms if known[name] is None]
    if not open_ends or any(by < 0 for by, _ in open_ends):
        return
    least = sum(by * (program.variables[name].low if by > 0 else known[name] or 0) for by, name in terms)
    for by, name in open_ends:
        up = (right - least) // by + program.variables[name].low
        known[name] = max(up, program.variables[name].low)
