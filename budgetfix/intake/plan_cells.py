"""What people type into a plan's workbook: ticks, sums and minutes, in all the ways in which they are written."""

from __future__ import annotations

import re
from datetime import datetime, time, timedelta
from decimal import Decimal
from fractions import Fraction

from budgetfix.base.money import digits_of
from budgetfix.outcome.so_far import State

TICKS = frozenset({"✓", "✔", "☑", "✅", "🗹", "√", "x", "×", "yes", "y", "1", "true", "ok", "okay", "done", "bought"})
BLANKS = frozenset({"", "☐", "□", "no", "n", "0", "false", "-", "–", "—", "not yet"})
RETURNED = frozenset({"returned", "given back", "sent back", "taken back"})
SOLD_OUT = frozenset({"sold out", "sold-out", "soldout", "out of stock"})
WANTED_STATE = "✓, returned, sold out or nothing"
WANTED_TICK = "✓ or nothing"
WANTED_MINUTES = "minutes such as 45, or 1:15"
LONGEST_TEXT = 40
LONGEST_MINUTES = 10_000
"""A week of one's whole time: no step of a room takes longer."""
LARGEST_MINOR = 10**12
DAY_MINUTES = 24 * 60
SIGNIFICANT = 15
"""Digits that a spreadsheet's number is good for (Excel specifications and limits)."""
SIGNS = "€$£¥₹₩₪₫₱₺₽฿"
_HOURS = re.compile(r"(\d+(?:[.,]\d+)?) ?h(?:ours?|rs?|\.)? ?(?:(\d{1,2}) ?(?:m(?:in(?:ute)?s?)?\.?)?)?")
_MINUTES = re.compile(r"(\d+)(?:[.,]0+)? ?(?:'|m(?:in(?:ute)?s?)?\.?)?")
_CLOCK = re.compile(r"(\d{1,2}):([0-5]\d)(?::00)? ?(?:h|hours?)?")


def read_state(value: object) -> State | None:
    """What was said of goods; None for nothing. Errors: ValueError."""
    word = _word(value)
    if word in RETURNED:
        return "returned"
    if word in SOLD_OUT:
        return "sold out"
    return "bought" if read_tick(value) else None


def read_tick(value: object) -> bool:
    """Ticked or not. Errors: ValueError."""
    word = _word(value)
    if word in TICKS:
        return True
    if word in BLANKS:
        return False
    raise ValueError("")


def _word(value: object) -> str:
    """In lower letters, no picture's variation, no mark at the end; numbers and yes or no as words."""
    if value is None or isinstance(value, bool):
        return "true" if value else ""
    if isinstance(value, int | float):
        return f"{value:g}"
    if not isinstance(value, str):
        raise ValueError("")
    return " ".join(value.replace("\ufe0f", "").split()).lower().rstrip("!. ")


def read_sum(value: object, currency: str) -> int:
    """Minor units of a sum that was paid. Errors: ValueError with advice, which may be empty."""
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        raise ValueError("")
    number = _number(value) if not isinstance(value, str) else _sum_in_words(value, currency)
    if number < 0:
        raise ValueError("a sum cannot be below 0")
    scaled = Fraction(number) * 10 ** digits_of(currency)
    if scaled > LARGEST_MINOR:
        raise ValueError("nothing in a home costs that much")
    if scaled.denominator != 1:
        raise ValueError(f"{currency} has {_count(digits_of(currency))} after the point")
    return int(scaled)


def _count(digits: int) -> str:
    return f"{digits or 'no'} digit{'' if digits == 1 else 's'}"


def _number(value: int | float) -> Decimal:
    """A spreadsheet's number without the dust of its binary sums."""
    if value != value or value in (float("inf"), float("-inf")):
        raise ValueError("")
    return Decimal(f"{value:.{SIGNIFICANT}g}") if isinstance(value, float) else Decimal(value)


def _sum_in_words(text: str, currency: str) -> Decimal:
    """`EUR 43.50`, `43,50 €`, `1,200.00`, `1.200,00`. Errors: ValueError."""
    if len(text) > LONGEST_TEXT:
        raise ValueError("")
    plain = "".join(text.split()).upper().replace("−", "-").removeprefix(currency).removesuffix(currency)
    plain = plain.strip(SIGNS).replace("'", "").replace("’", "")
    if plain.startswith("-"):
        raise ValueError("a sum cannot be below 0")
    if not re.fullmatch(r"[0-9.,]*[0-9][0-9.,]*", plain, re.ASCII):
        raise ValueError("")
    return Decimal(_with_point(plain, digits_of(currency)))


def _with_point(plain: str, digits: int) -> str:
    """Digits with one point at most: the last of `.` and `,` is the point where both are there."""
    marks = [mark for mark in plain if mark in ".,"]
    if not marks:
        return plain
    last = marks[-1]
    whole, after = plain.rsplit(last, 1)
    if len(set(marks)) == 2:
        thousands = marks[0]
        if marks.count(last) > 1 or not _grouped(whole, thousands):
            raise ValueError("")
        return f"{whole.replace(thousands, '')}.{after}"
    if len(marks) > 1:
        if not _grouped(plain, last):
            raise ValueError("")
        return plain.replace(last, "")
    if len(after) == 3 and whole and _grouped(plain, last):
        return _thousands_or_point(whole, after, last, digits)
    return f"{whole or '0'}.{after or '0'}"


def _thousands_or_point(whole: str, after: str, mark: str, digits: int) -> str:
    """`1,200` can be thousands or a part, by the country; told apart where the currency allows for one only."""
    if digits == 0 or (digits < len(after) and mark == ","):
        return whole + after
    if digits == len(after) and mark == ".":
        return f"{whole}.{after}"
    raise ValueError(f"write {whole}{after}, or {_count(digits)} after a point")


def _grouped(text: str, mark: str) -> bool:
    first, *groups = text.split(mark)
    return 1 <= len(first) <= 3 and all(len(group) == 3 for group in groups)


def read_minutes(value: object) -> int:
    """Whole minutes. Errors: ValueError with advice, which may be empty."""
    if isinstance(value, (bool, datetime)):
        raise ValueError("")
    if isinstance(value, time):
        return _of_clock(value.hour * 60 + value.minute, value.second or value.microsecond)
    if isinstance(value, timedelta):
        whole, rest = divmod(value, timedelta(minutes=1))
        return _of_clock(whole, rest)
    if isinstance(value, int | float):
        return _of_number(value)
    if isinstance(value, str):
        return _within(_of_text(" ".join(value.lower().split())))
    raise ValueError("")


def _of_clock(minutes: int, rest: object) -> int:
    if rest:
        raise ValueError("leave the seconds out")
    if not 0 <= minutes < DAY_MINUTES:
        raise ValueError("hours come first, as in 1:15, and make less than a day")
    return minutes


def _of_number(value: int | float) -> int:
    """A part of a day is what a spreadsheet makes of 0:45 in a cell for numbers; a quarter may be one of an hour."""
    number = _number(value)
    if number < 0:
        raise ValueError("minutes cannot be below 0")
    if number == int(number):
        return _within(int(number))
    minutes = float(number) * DAY_MINUTES
    if number < 1 and number * 100 != int(number * 100) and abs(minutes - round(minutes)) < 1e-6:
        return round(minutes)
    raise ValueError("write whole minutes")


def _of_text(text: str) -> int:
    if len(text) > LONGEST_TEXT:
        raise ValueError("")
    clock, hours, minutes = (pattern.fullmatch(text) for pattern in (_CLOCK, _HOURS, _MINUTES))
    if clock is not None:
        return _of_clock(int(clock[1]) * 60 + int(clock[2]), 0)
    if minutes is not None:
        return int(minutes[1])
    if hours is not None:
        exact = Fraction(hours[1].replace(",", ".")) * 60 + int(hours[2] or 0)
        if exact.denominator == 1:
            return int(exact)
    raise ValueError("minutes cannot be below 0" if re.fullmatch(r"[-−] ?\d.*", text) else "")


def _within(minutes: int) -> int:
    if minutes > LONGEST_MINUTES:
        raise ValueError("no step takes that long")
    return minutes
