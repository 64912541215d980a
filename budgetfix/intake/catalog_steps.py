"""The steps of remedies: minutes rounded up, of one figure or of three, and their waits."""

from __future__ import annotations

import math
from collections.abc import Iterable
from fractions import Fraction
from functools import partial

from budgetfix.base.limits import MOST_MINUTES, MOST_STEPS
from budgetfix.base.money import read_number
from budgetfix.base.numbers import half_up
from budgetfix.base.problems import FileProblem
from budgetfix.catalog.models import WorkStep
from budgetfix.intake.catalog_raw import RawCatalog
from budgetfix.intake.inside import Inside, Part, each, only
from budgetfix.intake.raw_rows import RawCell, RawRow
from budgetfix.intake.reader import WANTED_HANDS, Record, as_hands, name_of, unknown_fields

STEP_FIELDS = ("hours", "minutes", "wait_sessions", "wait_hours", "people", "text", "from_stock", "help")
THREE = ("low", "likely", "high")


def sheet_steps(raw: RawCatalog, problems: list[FileProblem]) -> dict[str, list[Record]]:
    """The rows of the sheet Steps, by remedy, their three figures gathered as minutes."""
    found: dict[str, list[Record]] = {}
    known = {name_of(row, "remedy") for row in raw.rows.get("remedies", [])}
    for row in raw.rows.get("steps", []):
        record = Record(row, problems)
        remedy = record.id("remedy")
        if remedy and remedy not in known:
            record.problem("remedy", "a remedy from the sheet Remedies")
        given = {name: row.cells[name].value for name in THREE if name in row.cells}
        value = given["likely"] if list(given) == ["likely"] else given
        row.cells["minutes"] = RawCell(value, row.place_of("likely"), at=row.place_of)
        found.setdefault(remedy, []).append(record)
    return found


def read_alone(steps: dict[str, list[Record]], remedies: Iterable[str]) -> None:
    """Steps on the sheet whose remedy could not be read are read all the same: what is wrong in them is told, too."""
    known = frozenset(remedies)
    for remedy, rows in steps.items():
        for row in rows if remedy not in known else ():
            _step(row)


def steps_of(record: Record, sheet: list[Record]) -> tuple[WorkStep, ...]:
    """The steps of a remedy: its own list, its rows on the sheet Steps, or one of `hours`; none for 0 hours."""
    once = "hours" if record.has("hours") else "minutes"
    if record.has(once) and (record.has("steps") or sheet):
        record.problem(once, "either steps or hours, not both")
    if len(sheet) > MOST_STEPS:
        sheet[MOST_STEPS].problem("remedy", f"{MOST_STEPS} steps of a remedy at most")
    if record.has("steps"):
        listed = record.row.cells["steps"].value
        if not isinstance(listed, list):
            record.problem("steps", "a list such as [{hours: 0.5}, {hours: 1, wait_sessions: 1}]")
            return ()
        if len(listed) > MOST_STEPS:
            record.problem("steps", f"{MOST_STEPS} at most", found=f"{len(listed):,} steps")
            return ()
        return tuple(_step(_nested(record, index, item)) for index, item in enumerate(listed))
    if sheet:
        return tuple(_step(row) for row in sheet)
    if record.has(once):
        step = _step(record, own_people=False)
        return (step,) if step.minutes > 0 else ()
    return ()


def _nested(record: Record, index: int, item: object) -> Record:
    """One step of a remedy's own list, as a record."""
    cell = record.row.cells["steps"]
    place = cell.at(index) if cell.at is not None else cell.place
    row = RawRow("steps", place)
    for key, value in item.items() if isinstance(item, dict) else [("hours", item)]:
        inner = partial(cell.at, index, str(key)) if cell.at is not None else None
        row.cells[str(key)] = RawCell(value, inner() if inner is not None else place, at=inner)
    nested = Record(row, record.problems)
    unknown_fields(nested, STEP_FIELDS, row.cells)
    return nested


def _step(record: Record, *, own_people: bool = True) -> WorkStep:
    field, per = ("minutes", 1) if record.has("minutes") else ("hours", 60)
    wanted = f"{field} such as 0.5, or {{low: 0.5, likely: 0.75, high: 1.5}}"
    if not record.has(field):
        record.problem(field, wanted)
    low, likely, high = record.read(field, (Fraction(0),) * 3, as_three, wanted)
    if high * per > MOST_MINUTES:
        record.problem(field, wanted, f"no step takes more than {MOST_MINUTES:,} minutes")
    wait = record.number("wait_hours", Fraction(0), most=MOST_MINUTES // 60) * 60
    people = record.read("people", 1, as_hands, WANTED_HANDS) if own_people and record.has("people") else None
    three = None if low == likely == high else (low, likely, high)
    minutes = math.ceil((low + likely + high) / 3 * per)
    return WorkStep(
        minutes=minutes,
        low=half_up(three[0] * per) if three else None,
        likely=half_up(three[1] * per) if three else None,
        high=half_up(three[2] * per) if three else None,
        wait_sessions=record.whole("wait_sessions", 0) if record.row.table != "remedies" else 0,
        wait_minutes=math.ceil(wait),
        people=people,
        text=record.text("text") if record.row.table != "remedies" else "",
        from_stock=record.yes("from_stock", True),
        help=_help(record, minutes, people) if record.row.table != "remedies" else 0,
    )


def _help(record: Record, minutes: int, people: int | None) -> int:
    """Minutes of a second pair of hands: beside one person, and no longer than the step."""
    helped = record.whole("help", 0)
    if helped and (people or 1) > 1:
        record.problem("help", "people: 1 beside it: one person works, a second one helps")
    elif helped > minutes:
        record.problem("help", f"no more than the {minutes} minutes of the step")
    return helped


def as_three(value: object) -> tuple[Fraction, Fraction, Fraction]:
    """(low, likely, high), all the same for one number. Errors: ValueError."""
    if not isinstance(value, dict):
        number = Fraction(read_number(value))
        if number < 0:
            raise ValueError("time cannot be below 0")
        return number, number, number
    only(value, THREE)
    missing = [Part(None, "all three: low, likely, high", (name,)) for name in THREE if value.get(name) is None]
    if missing:
        raise Inside(*missing)
    low, likely, high = each(((name, value[name]) for name in THREE), lambda _, one: Fraction(read_number(one)))
    if low < 0:
        raise Inside(Part(value["low"], "time cannot be below 0", ("low",)))
    if likely < low:
        raise Inside(Part(value["likely"], "no less than low", ("likely",)))
    if high < likely:
        raise Inside(Part(value["high"], "no less than likely", ("high",)))
    return low, likely, high
