"""One record of a file, read field by field: what cannot be read becomes a problem with its place."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from fractions import Fraction
from typing import TypeVar

from budgetfix.base.limits import LONGEST_NAME, MOST_HANDS, MOST_WHOLE
from budgetfix.base.money import read_money, read_number
from budgetfix.base.problems import FileProblem, Place
from budgetfix.intake.inside import Inside, each
from budgetfix.intake.raw_rows import RawCell, RawRow, close_to
from budgetfix.intake.yaml_lines import Key

T = TypeVar("T")

WANTED_MONEY = "a price such as 12.50"
WANTED_NUMBER = "a number such as 2.5"
WANTED_WHOLE = "a whole number, 0 or more"
WANTED_ID = "a short name, used once"
WANTED_LIST = "names separated by ;"
WANTED_MAP = "pairs such as name:1.5; other:2"
WANTED_YES = "yes or no"
WANTED_HANDS = "a number of people"


class Record:
    """The cells of one row. Every `read` returns the value, or the default after noting a problem."""

    def __init__(self, row: RawRow, problems: list[FileProblem]) -> None:
        self.row = row
        self.problems = problems
        self.sound = True

    def has(self, field: str) -> bool:
        """True where the field is filled in."""
        cell = self.row.cells.get(field)
        return cell is not None and cell.value is not None and cell.value != ""

    def place(self, field: str) -> Place:
        return self.row.place_of(field)

    def problem(self, field: str, wanted: str, todo: str = "", found: str | None = None) -> None:
        """Note a problem at a field."""
        cell = self.row.cells.get(field)
        shown = found or (cell.shown if cell is not None else "nothing")
        self.problems.append(FileProblem(self.place(field), shown, wanted, todo))
        self.sound = False

    def read(self, field: str, default: T, how: Callable[[object], T], wanted: str) -> T:
        """Read one field with a function that raises ValueError (its text is advice)."""
        if not self.has(field):
            return default
        cell = self.row.cells[field]
        if cell.trouble:
            self.problem(field, wanted)
            return default
        try:
            return how(cell.value)
        except Inside as inside:
            for part in inside.parts:
                place = cell.at(*part.keys) if cell.at is not None else cell.place
                found = "nothing" if part.found is None else RawCell(part.found, place).shown
                self.problems.append(FileProblem(place, found, wanted, part.advice))
            self.sound = False
        except ValueError as advice:
            self.problem(field, wanted, str(advice))
        return default

    def text(self, field: str, default: str = "") -> str:
        return self.read(field, default, as_text, "words")

    def id(self, field: str) -> str:
        """A needed name."""
        if not self.has(field):
            self.problem(field, WANTED_ID)
        return self.text(field)

    def money(self, field: str, currency: str, default: int | None = None) -> int | None:
        return self.read(field, default, lambda value: read_money(value, currency), WANTED_MONEY)

    def number(
        self, field: str, default: Fraction, *, least: Fraction | None = Fraction(0), most: int = MOST_WHOLE
    ) -> Fraction:
        def how(value: object) -> Fraction:
            number = Fraction(read_number(value))
            if least is not None and number < least:
                raise ValueError(f"it cannot be below {least}")
            return no_more(number, most)

        return self.read(field, default, how, WANTED_NUMBER)

    def whole(self, field: str, default: int, most: int = MOST_WHOLE) -> int:
        return self.read(field, default, lambda value: int(no_more(as_whole(value), most)), WANTED_WHOLE)

    def yes(self, field: str, default: bool = False) -> bool:
        return self.read(field, default, as_yes, WANTED_YES)

    def names(self, field: str) -> tuple[str, ...]:
        none: tuple[str, ...] = ()
        return self.read(field, none, as_names, WANTED_LIST)

    def pairs(self, field: str, *, negative: bool = False) -> tuple[tuple[str, Fraction], ...]:
        def how(value: object) -> tuple[tuple[str, Fraction], ...]:
            return as_pairs(value, None if negative else Fraction(0))

        none: tuple[tuple[str, Fraction], ...] = ()
        return self.read(field, none, how, WANTED_MAP)


def as_text(value: object) -> str:
    """Words; whole numbers are taken as they are written. Errors: ValueError."""
    if isinstance(value, (bool, list, dict)):
        raise ValueError("")
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    text = " ".join(str(value).split())
    if len(text) > LONGEST_NAME and ";" not in text:
        raise ValueError(f"{len(text):,} signs; {LONGEST_NAME} at most")
    return text


def name_of(row: RawRow, field: str) -> str:
    """The name in a field as others point to it; empty where there is none that can be read."""
    cell = row.cells.get(field)
    if cell is None or cell.trouble or cell.value is None:
        return ""
    try:
        return as_text(cell.value)
    except ValueError:
        return ""


def named_rows(rows: Iterable[RawRow], field: str) -> list[RawRow]:
    """The rows that have such a name: one for each record that was made of them, in the same order."""
    return [row for row in rows if name_of(row, field)]


def as_whole(value: object) -> int:
    """A whole number, 0 or more. Errors: ValueError."""
    number = read_number(value)
    if number < 0 or number != number.to_integral_value():
        raise ValueError("")
    return int(no_more(Fraction(number), MOST_WHOLE))


def no_more(number: Fraction | int, most: int) -> Fraction:
    """The number, where it is not above a limit. Errors: ValueError."""
    if number > most:
        raise ValueError(f"{most:,} at most")
    return Fraction(number)


def as_hands(value: object) -> int:
    """How many people at once, 1 or more. Errors: ValueError."""
    people = as_whole(value)
    if people < 1:
        raise ValueError("1 or more people")
    return int(no_more(people, MOST_HANDS))


def as_share(value: object) -> Fraction:
    """`8.25%` or 0.0825, exactly. Errors: ValueError."""
    text = as_text(value)
    percent = text.endswith("%")
    share = Fraction(read_number(text[:-1].strip() if percent else value)) / (100 if percent else 1)
    if not 0 <= share <= 1:
        raise ValueError("a share is from 0% to 100%")
    return share


def as_yes(value: object) -> bool:
    """Yes or no, in the ways people tick. Errors: ValueError."""
    from budgetfix.forms.column import NO, YES

    word = str(value).strip().lower().removesuffix(".0")
    if word in YES or word in NO:
        return word in YES
    raise ValueError("")


def as_names(value: object) -> tuple[str, ...]:
    """Names from a list, or from text separated by `;`. Errors: ValueError."""
    if isinstance(value, list):
        return tuple(each(enumerate(value), lambda _, item: as_text(item)))
    return tuple(part.strip() for part in as_text(value).split(";") if part.strip())


def as_pairs(
    value: object, least: Fraction | None = None, most: Fraction | None = None
) -> tuple[tuple[str, Fraction], ...]:
    """Exact numbers by name, from a mapping or from `name:1.5; other:2`. Errors: ValueError."""

    def how(name: Key, number: object) -> tuple[str, Fraction]:
        try:
            found = Fraction(read_number(number))
        except ValueError as advice:
            raise ValueError(f"{name}: {str(advice) or 'that is no number'}") from None
        if least is not None and found < least:
            raise ValueError(f"{name}: it cannot be below {least}")
        if most is not None and found > most:
            raise ValueError(f"{name}: it cannot be above {most}")
        if abs(found) > MOST_WHOLE:
            raise ValueError(f"{name}: {MOST_WHOLE:,} at most")
        return str(name), found

    typed = value.items() if isinstance(value, dict) else [_pair(part) for part in as_names(value)]
    found = each(typed, how)
    if len(dict(found)) < len(found):
        raise ValueError("a name stands twice")
    return tuple(sorted(found))


def _pair(part: str) -> tuple[str, str]:
    name, colon, number = part.rpartition(":")
    if not colon or not name.strip():
        raise ValueError(f"'{part}' has no colon")
    return name.strip(), number


def unknown_fields(
    record: Record, known: Iterable[str], cells: Mapping[str, RawCell], ignored: frozenset[str] = frozenset()
) -> None:
    """A key that nothing reads is a problem, with the nearest known one."""
    names = list(known)
    for field, cell in cells.items():
        if field not in names and field not in ignored:
            near = close_to(field, names)
            record.problems.append(FileProblem(cell.place, f"'{field}'", "a field that is known here", near))
