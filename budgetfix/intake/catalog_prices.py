"""Prices of which only a range is known: low, likely and high, planned on the mean of the three, half up."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from budgetfix.base.money import read_money
from budgetfix.base.numbers import half_up
from budgetfix.base.three_point import triangular_mean
from budgetfix.intake.inside import Inside, Part, each, only
from budgetfix.intake.reader import WANTED_MONEY, Record

THREE = ("low", "likely", "high")
WANTED_THREE = f"{WANTED_MONEY}, or {{low: 20, likely: 22, high: 30}}"


@dataclass(frozen=True, slots=True)
class Price:
    """What is planned, in minor units; the three figures behind it, None where one price is known."""

    planned: int = 0
    low: int | None = None
    likely: int | None = None
    high: int | None = None


def read_price(record: Record, field: str, currency: str) -> Price:
    """One price, or three: in one value, or with `<field>_low` and `<field>_high` beside it. 0 where there is none."""
    ends = [name for name in (f"{field}_low", f"{field}_high") if record.has(name)]
    value = record.row.cells[field].value if record.has(field) else None
    if isinstance(value, dict):
        for name in ends:
            record.problem(name, f"nothing: `{field}` says it already")
        three = record.read(field, (0, 0, 0), lambda given: _three(given, currency), WANTED_THREE)
    elif ends:
        three = _beside(record, field, currency)
    else:
        return Price(record.money(field, currency) or 0)
    low, likely, high = three
    planned = half_up(triangular_mean(Fraction(low), Fraction(likely), Fraction(high)))
    return Price(planned) if low == high else Price(planned, low, likely, high)


def _three(value: object, currency: str) -> tuple[int, int, int]:
    """Errors: ValueError."""
    given = value if isinstance(value, dict) else {}
    only(given, THREE)
    missing = [Part(None, "all three: low, likely, high", (name,)) for name in THREE if given.get(name) is None]
    if missing:
        raise Inside(*missing)
    low, likely, high = each(((name, given[name]) for name in THREE), lambda _, one: read_money(one, currency))
    if likely < low:
        raise Inside(Part(given["likely"], "no less than low", ("likely",)))
    if high < likely:
        raise Inside(Part(given["high"], "no less than likely", ("high",)))
    return low, likely, high


def _beside(record: Record, field: str, currency: str) -> tuple[int, int, int]:
    """The three cells of a row: the likely one is the price itself."""
    names = (f"{field}_low", field, f"{field}_high")
    for name in names:
        if not record.has(name):
            record.problem(name, f"all three: {', '.join(names)}")
    sound = record.sound
    low, likely, high = (record.money(name, currency) or 0 for name in names)
    if not sound or not record.sound:
        return likely, likely, likely
    if likely < low:
        record.problem(names[0], f"no more than {field}")
    elif high < likely:
        record.problem(names[2], f"no less than {field}")
    else:
        return low, likely, high
    return likely, likely, likely
