"""A plan's workbook read back: what was bought, paid and done, whatever a spreadsheet program did to the file.

Rows are known by their hidden ids, columns by their headings: both may be moved, sorted and hidden. Ticks are read on
Buy and Do only. What cannot be believed is a problem that names its cell; then nothing is read.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import TypeVar

from budgetfix.base.money import digits_of, write_money
from budgetfix.base.problems import FileProblem, Place
from budgetfix.intake.door import book_bytes
from budgetfix.intake.plan_astray import astray
from budgetfix.intake.plan_cells import (
    WANTED_MINUTES,
    WANTED_STATE,
    WANTED_TICK,
    read_minutes,
    read_state,
    read_sum,
    read_tick,
)
from budgetfix.intake.plan_record import read_record
from budgetfix.intake.plan_rows import Listed, key, listed
from budgetfix.intake.raw_rows import RawCell
from budgetfix.intake.survey_xlsx import Book, book_of
from budgetfix.outcome.money_lines import NOT_BOUGHT
from budgetfix.outcome.so_far import LineBack, PlannedLine, PlannedStep, Remembered, SoFar, State, StepBack

T = TypeVar("T")
A_BOOK = "the workbook that budgetfix wrote, saved as .xlsx"
SAVE_AGAIN = "open the workbook in a spreadsheet program and save it"
STRANGE = "a row that the plan does not have"
OF_THE_PLAN = "a row of the plan with its hidden id"
ELSEWHERE = "write it into the row that it is for; money for anything else belongs under fixed in brief.yaml"
TAKE_AWAY = "take one of the two rows away"
EVERY_ROW = "every row of the plan: rows may be sorted, not deleted"
PUT_BACK = "put it back, or take a copy of the workbook that still has it"


def read_back(path: Path, currency: str) -> tuple[SoFar | None, tuple[FileProblem, ...]]:
    """What became of the plan in a workbook; or None, with everything that is wrong."""
    problems: list[FileProblem] = []
    data = book_bytes(path, problems)
    return (None, tuple(problems)) if data is None else back_from(data, path.name, currency)


def back_from(data: bytes, name: str, currency: str) -> tuple[SoFar | None, tuple[FileProblem, ...]]:
    """The same for the bytes of a workbook called `name`."""
    refused: list[FileProblem] = []
    book = book_of(data, name, refused, A_BOOK)
    if book is None:
        return None, tuple(refused)
    remembered, problems = read_record(book)
    if remembered is None:
        return None, problems
    reading = _Reading(book, currency)
    lines = reading.lines(remembered)
    steps = reading.steps(remembered)
    reading.problems += astray(book, steps)
    if reading.problems:
        return None, tuple(sorted(set(reading.problems)))
    return SoFar(remembered, lines, steps), ()


class _Reading:
    """One workbook being read, with what is wrong so far."""

    def __init__(self, book: Book, currency: str) -> None:
        self.book = book
        self.currency = currency
        self.problems: list[FileProblem] = []
        self.strange: set[tuple[str, str]] = set()

    def lines(self, remembered: Remembered) -> tuple[LineBack, ...]:
        """Every line of the plan with what was typed on Buy."""
        planned = {key(one.id): one for one in remembered.lines}
        told: dict[str, LineBack] = {}
        rows = self._rows("Buy")
        for row in rows:
            if row.id in planned:
                self._once(told, row, self._line(planned[row.id], row))
            elif self._said(row.cells["paid in all"]) or (row.ours and self._said(row.cells["bought"])):
                self._strange(row)
        self._missing("Buy", rows, {id: one.line.name for id, one in planned.items()})
        return tuple(told.get(id, LineBack(one)) for id, one in planned.items())

    def steps(self, remembered: Remembered) -> tuple[StepBack, ...]:
        """Every step of the plan with what was typed on Do."""
        planned = {key(one.id): one for one in remembered.steps}
        told: dict[str, StepBack] = {}
        rows = self._rows("Do")
        for row in rows:
            if row.id in planned:
                self._once(told, row, self._step(planned[row.id], row))
            elif row.ours and any(map(self._said, row.cells.values())):
                self._strange(row)
        self._missing("Do", rows, {id: _step_name(one) for id, one in planned.items()})
        return tuple(told.get(id, StepBack(one)) for id, one in planned.items())

    def _rows(self, title: str) -> tuple[Listed, ...]:
        rows, problems = listed(self.book, title)
        self.problems += problems
        return rows

    def _missing(self, title: str, rows: tuple[Listed, ...], names: dict[str, str]) -> None:
        """A row that is gone would take with it what was paid and done; a sheet that cannot be read says so itself."""
        if not rows and self.problems:
            return
        there = {row.id for row in rows}
        called = self.book.titles.get(title.lower(), title)
        place = Place(self.book.file, self.book.shown.sheetnames.index(called) + 1, 0, 0, called)
        gone = sorted({name for id, name in names.items() if id not in there})
        gone = [name for name in gone if (title, key(name)) not in self.strange]
        self.problems += [FileProblem(place, f"no row '{name}'", EVERY_ROW, PUT_BACK) for name in gone]

    def _line(self, planned: PlannedLine, row: Listed) -> LineBack:
        tickable = planned.line.kind not in NOT_BOUGHT
        state = self._read(row.cells["bought"], _state_of(tickable), None, WANTED_STATE if tickable else WANTED_TICK)
        paid = self._read(row.cells["paid in all"], self._sum, None, _wanted_sum(self.currency))
        if state is not None and not tickable and paid is None:
            paid = planned.line.line_minor
        return LineBack(planned, state, paid)

    def _sum(self, value: object) -> int | None:
        return read_sum(value, self.currency)

    def _step(self, planned: PlannedStep, row: Listed) -> StepBack:
        done = self._read(row.cells["done"], read_tick, False, WANTED_TICK)
        return StepBack(planned, done, self._read(row.cells["real minutes"], _minutes, None, WANTED_MINUTES))

    def _read(self, cell: RawCell | None, how: Callable[[object], T], default: T, wanted: str) -> T:
        if cell is None:
            return default
        if cell.value == "=" and cell.trouble:
            self.problems.append(FileProblem(cell.place, cell.trouble, wanted, SAVE_AGAIN))
            return default
        try:
            return how(cell.value)
        except ValueError as error:
            self.problems.append(FileProblem(cell.place, _shown(cell), wanted, str(error)))
            return default

    def _once(self, told: dict[str, T], row: Listed, back: T) -> None:
        """A row that was copied does no harm while both say the same."""
        if told.setdefault(row.id, back) != back:
            found = f"'{row.name or row.id}' a second time, with something else in it"
            self.problems.append(FileProblem(row.place, found, "each row once", TAKE_AWAY))

    def _said(self, cell: RawCell | None) -> bool:
        """True where something is typed that is no blank of ours, and no sum that the sheet works out."""
        if cell is None or cell.value in (False, "☐"):
            return False
        place = cell.place
        title = self.book.shown.sheetnames[place.sheet_index - 1]
        return self.book.typed[title].cell(place.row, place.column).data_type != "f"

    def _strange(self, row: Listed) -> None:
        cell = next(cell for cell in row.cells.values() if self._said(cell))
        assert cell is not None
        self.strange.add((row.place.label.partition("!")[0], row.name))
        self.problems.append(FileProblem(cell.place, f"{_shown(cell)} in {STRANGE}", OF_THE_PLAN, ELSEWHERE))


def _state_of(tickable: bool) -> Callable[[object], State | None]:
    """Of a line that nobody brings home, one can say only that it is paid, as planned where no sum is typed."""

    def paid(value: object) -> State | None:
        return "bought" if read_tick(value) else None

    return read_state if tickable else paid


def _step_name(step: PlannedStep) -> str:
    task = step.task
    return task.name + (f" ({task.step} of {task.steps})" if task.steps > 1 else "")


def _minutes(value: object) -> int | None:
    return read_minutes(value)


def _wanted_sum(currency: str) -> str:
    return f"a sum in {currency} such as {write_money(43 * 10 ** digits_of(currency), currency)}"


def _shown(cell: RawCell) -> str:
    return replace(cell, value=cell.value[:60]).shown if isinstance(cell.value, str) else cell.shown
