"""One record per field of a form: it makes the form, the reader, the messages and the docs."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from typing import Literal

from budgetfix.base.limits import LONGEST_NAME
from budgetfix.base.tape import WANTED_LENGTH, NotALength, read_length
from budgetfix.base.twin import Twin

Kind = Literal[
    "text", "length", "choice", "suggestion", "yes-no", "yes-no-unknown", "count", "number", "percent",
    "turn", "wall", "name",
]  # fmt: skip
Cell = str | float | int | bool | Fraction | None

YES = ("yes", "y", "true", "x", "✓", "✔", "☑", "1", "on")
NO = ("no", "n", "false", "-", "–", "☐", "0", "off", "none")
UNKNOWN = ("not sure", "unknown", "don't know", "?")
_NUMBER = re.compile(r"[-+]?(\d{1,15}(\.\d{0,15})?|\.\d{1,15})")
FIRST_DATE, LAST_DATE = 36526, 58440
"""Day numbers of 2000 and 2059 in a spreadsheet: what is left of a date that lost its format."""


class Unread(ValueError):
    """A cell that cannot be read; the text is advice, or empty where `wanted` says it all."""


@dataclass(frozen=True, slots=True)
class Default:
    """What is taken when a cell is empty, for the sorts `whats` (none = for all). It makes findings uncertain.

    `low` and `high`: between these it lies in nearly every home (common practice); what hangs on it is told.
    """

    value: Twin | float
    low: Twin | float
    high: Twin | float
    whats: tuple[str, ...] = ()

    def usual(self, metric: bool) -> tuple[float, float, float]:
        """(low, taken, high); lengths in mm."""
        low, value, high = (
            one.in_mm(metric) if isinstance(one, Twin) else one for one in (self.low, self.value, self.high)
        )
        return low, value, high


@dataclass(frozen=True, slots=True)
class Column:
    """One field of one table.

    `needed_for`: needed only where the row's `what` is one of these. `unless`: not needed where that field is
    filled. `names`: the tables whose names may stand here. `positive`: must be above 0. `negative`: may be
    below 0. `wide`: the column's width in characters.
    """

    field: str
    heading: str
    hint: str = ""
    kind: Kind = "text"
    needed: bool = False
    choices: tuple[str, ...] = ()
    defaults: tuple[Default, ...] = ()
    needed_for: tuple[str, ...] = ()
    names: tuple[str, ...] = ()
    unless: str = ""
    positive: bool = False
    negative: bool = False
    wide: int = 11
    model: bool = True
    """False: helps to fill in the form, is no field of the thing itself."""

    @property
    def wanted(self) -> str:
        """The one sentence that says what may stand here."""
        match self.kind:
            case "length":
                return WANTED_LENGTH + (" above 0" if self.positive else "")
            case "choice":
                return "one of: " + ", ".join(self.choices)
            case "yes-no":
                return "yes or no"
            case "yes-no-unknown":
                return "yes, no or not sure"
            case "count":
                return "a whole number, 0 or more"
            case "number":
                return "a number such as 2.5"
            case "percent":
                return "a share such as 10%"
            case "turn":
                return "right, left, or degrees to the right such as 45"
            case "wall":
                return "the letter of a wall on the sheet Walls"
            case "name":
                return f"a name from {' or '.join(self.names)}"
            case _:
                return f"{self.heading.lower()}, in words"

    def default_for(self, what: str, metric: bool) -> float | None:
        """The value for an empty cell (lengths in mm); None where there is none."""
        usual = self.usual_for(what, metric)
        return None if usual is None else usual[1]

    def usual_for(self, what: str, metric: bool) -> tuple[float, float, float] | None:
        """(low, taken, high) for an empty cell (lengths in mm); None where nothing is taken."""
        return next((one.usual(metric) for one in self.defaults if not one.whats or what in one.whats), None)

    def needs(self, what: str) -> bool:
        """True where a row of this sort cannot do without it."""
        return self.needed or what in self.needed_for

    def read(self, raw: object, unit: str) -> Cell:
        """The value of a cell: lengths in mm, None when empty. Errors: `Unread`, with advice."""
        if raw is None or (isinstance(raw, str) and not raw.strip()):
            return None
        if isinstance(raw, date):
            raise Unread("found a date; if you typed 5/8, write 0 5/8" if self.kind == "length" else "")
        if self.kind == "length":
            return self._length(raw, unit)
        if isinstance(raw, (int, float, str)):
            return self._plain(raw)
        raise Unread("write one value, not a list" if isinstance(raw, (list, dict)) else "")

    def _length(self, raw: object, unit: str) -> float:
        if isinstance(raw, (int, float)) and not isinstance(raw, bool) and FIRST_DATE <= raw <= LAST_DATE:
            raise Unread("the spreadsheet made a date of it; if you typed 5/8, write 0 5/8")
        try:
            mm = read_length(raw, unit, negative=self.negative)
        except NotALength:
            raise Unread("") from None
        except ValueError as error:
            raise Unread(str(error)) from None
        if self.positive and mm <= 0:
            raise Unread("")
        return mm

    def _plain(self, raw: str | float | int | bool) -> Cell:
        text = " ".join(str(raw).split())
        match self.kind:
            case "choice":
                return _picked(text, self.choices)
            case "suggestion":
                return next((choice for choice in self.choices if choice == text.lower()), text)
            case "yes-no" | "yes-no-unknown":
                return _yes_no(text, self.kind == "yes-no-unknown")
            case "count" | "number" | "percent":
                return _counted(raw, text, self.kind)
            case "turn":
                return _turn(text)
            case "wall":
                return text.upper()
        if isinstance(raw, bool):
            raise Unread("")
        if len(text) > LONGEST_NAME:
            raise Unread(f"{len(text):,} signs; {LONGEST_NAME} at most")
        return text[:-2] if isinstance(raw, float) and text.endswith(".0") else text


def _picked(text: str, choices: tuple[str, ...]) -> str:
    for choice in choices:
        if choice.lower() == text.lower():
            return choice
    raise Unread("")


def _yes_no(text: str, unknown: bool) -> Cell:
    word = text.lower().removesuffix(".0")
    if word in YES or word in NO:
        return word in YES
    if unknown and word in UNKNOWN:
        return "not sure"
    raise Unread("")


def _counted(raw: object, text: str, kind: str) -> Cell:
    if isinstance(raw, bool):
        raise Unread("")
    if "," in text:
        raise Unread(f"write a point, not a comma: {text.replace(',', '.')}")
    percent = kind == "percent" and text.endswith("%")
    number = text[:-1].strip() if percent else text
    if not _NUMBER.fullmatch(number):
        raise Unread("")
    value = Fraction(number)
    if value < 0 or (kind == "count" and value.denominator != 1):
        raise Unread("")
    if kind == "percent":
        return value / 100 if percent else value
    return int(value) if kind == "count" else float(value)


def _turn(text: str) -> float:
    if text.lower() in ("right", "left"):
        return 90.0 if text.lower() == "right" else -90.0
    number = text.lower().removesuffix("degrees").removesuffix("°").strip()
    if not _NUMBER.fullmatch(number) or not -180 < float(number) < 180:
        raise Unread("")
    return float(number)
