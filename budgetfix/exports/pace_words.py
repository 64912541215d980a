"""How quick the household is, in words: the arithmetic of each pace, and the line for the next brief."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from budgetfix.base.numbers import half_up
from budgetfix.exports.lettering import count
from budgetfix.outcome.paces import ALL, Learnt, Paces
from budgetfix.remedies.registry import KINDS

HOUSEHOLD = "All work"


@dataclass(frozen=True, slots=True)
class PaceRow:
    """One pace as a row: `times` its usual minutes; `minutes` really taken, None where nothing was learnt of it."""

    kind: str
    name: str
    times: str
    minutes: int | None
    words: str


def times_words(times: Fraction) -> str:
    """`1.38`, halves up."""
    return f"{half_up(times * 100) / 100:.2f}"


def copied(paces: Paces) -> str:
    """`pace: {all: 1.21, longer-rod: 1.38}`: what a next brief may begin with."""
    return f"pace: {{{', '.join(f'{kind}: {times_words(times)}' for kind, times in _ordered(paces))}}}"


def _ordered(paces: Paces) -> list[tuple[str, Fraction]]:
    return [(ALL, paces.household), *paces.kinds]


def pace_rows(paces: Paces) -> tuple[PaceRow, ...]:
    """The household first, then kinds by name."""
    known = {row.kind: row for row in paces.learnt}
    return tuple(_row(kind, times, known.get(kind)) for kind, times in _ordered(paces))


def _row(kind: str, times: Fraction, row: Learnt | None) -> PaceRow:
    if row is None:
        return PaceRow(kind, kind_name(kind), times_words(times), None, "As the brief says.")
    return PaceRow(kind, kind_name(kind), times_words(times), row.real_minutes, arithmetic(row))


def kind_name(kind: str) -> str:
    """A kind as people call it."""
    return HOUSEHOLD if kind == ALL else next((one.name for one in KINDS if one.kind == kind), kind)


def arithmetic(row: Learnt) -> str:
    """`3 steps, planned 90, real 135: 1.50 times; counted as (2 × 1.21 + 3 × 1.50) / 5 = 1.38`."""
    took = f"{count(row.steps, 'step')}, planned {row.planned_minutes}, real {row.real_minutes}"
    ratio, believed = times_words(row.ratio), times_words(row.believed)
    whole = (row.weight * row.believed + row.steps * row.ratio) / (row.weight + row.steps)
    sum_ = f"({row.weight} × {believed} + {row.steps} × {ratio}) / {row.weight + row.steps} = {times_words(whole)}"
    kept = "" if whole == row.counted else f", kept at {times_words(row.counted)}"
    return f"{took}: {ratio} times; counted as {sum_}{kept}."


def pace_line(paces: Paces) -> str:
    """One sentence for the screen."""
    usual = f"Minutes are {times_words(paces.household)} times the usual ones"
    kinds = ", ".join(f"{kind_name(kind)} {times_words(times)}" for kind, times in paces.kinds)
    learnt = f", learnt from {count(paces.learnt[0].steps, 'done step')}" if paces.learnt else ", as the brief says"
    return f"{usual}{f' ({kinds})' if kinds else ''}{learnt}. For the next room: {copied(paces)}"
