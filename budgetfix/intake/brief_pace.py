"""How quick the household is, known from earlier rooms: `pace: {all: 1.2, longer-rod: 1.5}`."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from budgetfix.base.problems import FileProblem
from budgetfix.brief.models import Brief
from budgetfix.intake.inside import place_in
from budgetfix.intake.raw_rows import RawRow, close_to
from budgetfix.intake.reader import as_pairs

WANTED_PACE = "times the usual minutes, from 0.5 to 2, such as {all: 1.2, longer-rod: 1.5}"


def read_pace(value: object) -> tuple[tuple[str, Fraction], ...]:
    """Times by kind, and `all` for the household. Errors: ValueError."""
    return as_pairs(value, Fraction(1, 2), Fraction(2))


def check_pace(row: RawRow, brief: Brief, kinds: Iterable[str], problems: list[FileProblem]) -> None:
    """Note every name that is no kind of remedy and not `all`."""
    known = ["all", *kinds]
    problems += [
        FileProblem(place_in(row, "pace", name), f"'{name}'", "a kind of remedy, or all", close_to(name, known))
        for name, _ in brief.pace
        if name not in known
    ]
