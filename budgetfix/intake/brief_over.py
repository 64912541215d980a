"""What the command line says over a brief: other values, so much more money, one session more."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path

from budgetfix.base.money import read_number
from budgetfix.base.problems import FileProblem, Place
from budgetfix.intake.brief_hours import as_day, as_hours
from budgetfix.intake.raw_rows import RawCell, RawRow
from budgetfix.intake.yaml_lines import Key

WANTED_MORE = "a sum such as +100, over a budget that the brief names"
WANTED_SESSION = "hours such as 4, or a date and hours such as 2026-06-14=4"
WANTED_LIST = "a list of hours in the brief, to which a session can be added"


@dataclass(frozen=True)
class Over:
    """What the command line says, as typed. `brief`: another file instead of the job's own."""

    budget: str | None = None
    hours: str | None = None
    catalog: str | None = None
    brief: Path | None = None
    session: str | None = None


def typed_over(row: RawRow, over: Over, problems: list[FileProblem]) -> None:
    """Puts what was typed over the wishes of a brief; a budget that begins with + is added to the brief's."""
    typed = {"budget": over.budget, "hours": over.hours, "catalog": over.catalog}
    for field, words in typed.items():
        if words is not None:
            place = Place(f"--{field}")
            more = field == "budget" and words.startswith("+")
            value = _more(row, words, place, problems) if more else words
            if value is not None:
                row.cells[field] = RawCell(value, place)
    if over.session is not None:
        _session(row, over.session, problems)


def _more(row: RawRow, words: str, place: Place, problems: list[FileProblem]) -> str | None:
    """The brief's budget and the sum together; None, and a problem, where one of the two is no sum."""
    cell = row.cells.get("budget")
    if cell is None or cell.value is None:
        problems.append(FileProblem(place, f"'{words}'", WANTED_MORE, "give the whole sum instead"))
        return None
    try:
        was = read_number(cell.value)
    except ValueError:
        return None  # the brief's own problem is told where the brief is read
    try:
        return str(was + read_number(words[1:]))
    except ValueError as advice:
        problems.append(FileProblem(place, f"'{words}'", WANTED_MORE, str(advice)))
        return None


def _session(row: RawRow, words: str, problems: list[FileProblem]) -> None:
    """One session more for everybody: by its date among those of the brief, else after them."""
    place, cell = Place("--session"), row.cells.get("hours")
    on, _, hours = words.rpartition("=")
    try:
        day = as_day(on.strip()) if on else None
        as_hours(hours.strip())
    except ValueError as advice:
        problems.append(FileProblem(place, f"'{words}'", WANTED_SESSION, str(advice)))
        return
    there = _listed(cell.value if cell is not None else None)
    if there is None:
        problems.append(FileProblem(place, f"'{words}'", WANTED_LIST))
        return
    more: object = {"hours": hours.strip()} if day is None else {"date": day, "hours": hours.strip()}
    behind = [at for at, item in enumerate(there) if day is not None and (_day(item) or day) > day]
    here = min(behind, default=len(there))
    whole = [*there[:here], more, *there[here:]]
    was = cell if cell is not None else RawCell(None, place)
    row.cells["hours"] = RawCell(whole, was.place, at=partial(_place, was, here, place))


def _place(was: RawCell, here: int, mine: Place, *keys: Key) -> Place:
    """Where something of the longer list was typed: what stands behind the new session is one place further on."""
    first, rest = (keys[0], keys[1:]) if keys else (None, ())
    if first == here:
        return mine
    if was.at is None:
        return was.place
    return was.at(first - 1, *rest) if isinstance(first, int) and first > here else was.at(*keys)


def _listed(value: object) -> list[object] | None:
    """A list of hours as the brief has it, or as it is typed; None for no list."""
    if isinstance(value, str):
        return [part for part in value.split(";" if ";" in value else ",") if part.strip()]
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        return [value]
    return list(value) if isinstance(value, list) else None


def _day(item: object) -> date | None:
    """The date of a session; None where there is none that can be read."""
    typed = item.get("date") if isinstance(item, Mapping) else None
    try:
        return None if typed is None else as_day(typed)
    except ValueError:
        return None
