"""Text as wide as it shows: columns on a screen, points on paper, and words for dates, minutes and signs."""

from __future__ import annotations

import unicodedata
from datetime import date

from budgetfix.base.days import DAYS, MONTHS

SIGNS = {"fixed": "✓", "better": "◐", "still there": "○", "worse": "▼", "new": "▲"}
SHORT = 3
"""Letters of a day or month where room is short."""
UNITS = {"in": "inches", "cm": "centimetres", "mm": "millimetres"}

_NARROW = frozenset("ijlftrI.,;:'|!()[]/- ")
_BROAD = frozenset("mwMWQOG@%✓✗█")


def columns_of(text: str) -> int:
    """Columns that a text takes on a terminal: none for a combining mark, two for a wide letter."""
    return sum(_columns(letter) for letter in text)


def _columns(letter: str) -> int:
    if unicodedata.combining(letter) or unicodedata.category(letter) in ("Cf", "Cc"):
        return 0
    return 2 if unicodedata.east_asian_width(letter) in "WF" else 1


def cut(text: str, columns: int, mark: str = "…") -> str:
    """At most that many columns, with `mark` where something is missing. One line: breaks become spaces."""
    line = " ".join(text.split())
    if columns_of(line) <= columns:
        return line
    kept, room = "", columns - len(mark)
    for letter in line:
        room -= _columns(letter)
        if room < 0:
            break
        kept += letter
    return kept.rstrip() + mark


def filled(text: str, columns: int, mark: str = "…", right: bool = False) -> str:
    """Cut, and filled with spaces to exactly that many columns."""
    line = cut(text, columns, mark)
    blank = " " * (columns - columns_of(line))
    return blank + line if right else line + blank


def lines_on_paper(text: str, width: float) -> int:
    """Lines that a text takes in a spreadsheet column of `width` characters, ten points high; rather one too many."""
    return sum(_wrapped(line, width) for line in text.split("\n")) if text else 1


def _wrapped(line: str, width: float) -> int:
    lines, at = 1, 0.0
    for word in line.split(" "):
        wide = sum(map(_share, word))
        if at and at + wide > width:
            lines, at = lines + 1, 0.0
        while wide > width:
            lines, wide = lines + 1, wide - width
        at += wide + _share(" ")
    return lines


def _share(letter: str) -> float:
    """Width of a letter in characters of a spreadsheet's width, on the generous side."""
    if _columns(letter) != 1:
        return 2.0 * (_columns(letter) > 0)
    if letter in _NARROW:
        return 0.55
    return 1.4 if letter in _BROAD else 1.15 if letter.isupper() else 0.98


def span(minutes: int) -> str:
    """`3 h 25 min`, `45 min`, `2 h`."""
    hours, rest = divmod(minutes, 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def day(on: date) -> str:
    """`Sat 6 Jun`, the same in every locale."""
    return f"{DAYS[on.weekday()][:SHORT]} {on.day} {MONTHS[on.month - 1][:SHORT]}"


def month_day(on: date) -> str:
    """`4 July`, the same in every locale."""
    return f"{on.day} {MONTHS[on.month - 1]}"


def long_day(on: date) -> str:
    """`Saturday 6 June`, the same in every locale."""
    return f"{DAYS[on.weekday()]} {on.day} {MONTHS[on.month - 1]}"


def clock(minute: int) -> str:
    """`09:00` for a minute of the day."""
    return f"{minute // 60 % 24:02d}:{minute % 60:02d}"


def clocks(start: int, end: int | None) -> str:
    """`09:00`, or `09:00–11:00` where the end is known."""
    return clock(start) if end is None else f"{clock(start)}–{clock(end)}"


def count(amount: int, one: str, many: str = "") -> str:
    """`1 fault`, `2 faults`."""
    return f"{amount:,} {one if amount == 1 else many or one + 's'}"
