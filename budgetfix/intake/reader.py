"""One record of a file, read field by field: what cannot be read becomes a problem with its place."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from fractions import Fraction
from typing import TypeVar

from budgetfix.base.money import read_money, read_number
from budgetfix.base.problems import FileProblem, Place
from budgetfix.intake.raw_rows import RawCell, RawRow, close_to

T = TypeVar("T")

WANTED_MONEY = "a price such as 12.50"
WANTED_NUMBER = "a number such as 2.5"
WANTED_WHOLE = "a whole number, 0 or more"
WANTED_ID = "a short name, used once"
WANTED_LIST = "names separated by ;"
WANTED_MAP = "pairs such as name:1.5; other:2"
WANTED_YES = "yes or no"


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

    def number(self, field: str, default: Fraction, *, least: Fraction | None = Fraction(0)) -> Fraction:
        def how(value: object) -> Fraction:
            number = Fraction(read_number(value))
            if least is not None and number < least:
                raise ValueError(f"it cannot be below {least}")
            return number

        return self.read(field, default, how, WANTED_NUMBER)

    def whole(self, field: str, default: int) -> int:
        return self.read(field, default, as_whole, WANTED_WHOLE)

    def yes(self, field: str, default: bool = False) -> bool:
        return self.read(field, default, as_yes, WANTED_YES)

    def names(self, field: str) -> tuple[str, ...]:
        none: tuple[str, ...] = ()
        return self.read(field, none, as_names, WANTED_LIST)

    def pairs(self, field: str) -> tuple[tuple[str, Fraction], ...]:
        none: tuple[tuple[str, Fraction], ...] = ()
        return self.read(field, none, as_pairs, WANTED_MAP)


def as_text(value: object) -> str:
    """Words; whole numbers are taken as they are written. Errors: ValueError."""
    if isinstance(value, bool) or isinstance(value, (list, dict)):
        raise ValueError("")
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    return str(value).strip()


def as_whole(value: object) -> int:
    """A whole number, 0 or more. Errors: ValueError."""
    number = read_number(value)
    if number < 0 or number != number.to_integral_value():
        raise ValueError("")
    return int(number)


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
        return tuple(as_text(item) for item in value)
    return tuple(part.strip() for part in as_text(value).split(";") if part.strip())


def as_pairs(value: object) -> tuple[tuple[str, Fraction], ...]:
    """Exact numbers by name, from a mapping or from `name:1.5; other:2`. Errors: ValueError."""
    if isinstance(value, dict):
        found = [(str(name), _pair_number(str(name), number)) for name, number in value.items()]
    else:
        found = []
        for part in as_names(value):
            name, colon, number = part.rpartition(":")
            if not colon or not name.strip():
                raise ValueError(f"'{part}' has no colon")
            found.append((name.strip(), _pair_number(name.strip(), number)))
    if len(dict(found)) < len(found):
        raise ValueError("a name stands twice")
    return tuple(sorted(found))


def _pair_number(name: str, value: object) -> Fraction:
    try:
        return Fraction(read_number(value))
    except ValueError as advice:
        raise ValueError(f"{name}: {str(advice) or 'no number'}") from None


def unknown_fields(
    record: Record, known: Iterable[str], cells: Mapping[str, RawCell], ignored: frozenset[str] = frozenset()
) -> None:
    """A key that nothing reads is a problem, with the nearest known one."""
    names = list(known)
    for field, cell in cells.items():
        if field not in names and field not in ignored:
            near = close_to(field, names)
            record.problems.append(FileProblem(cell.place, f"'{field}'", "a field that is known here", near))
