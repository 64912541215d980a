"""The sheet `Before and after`: each fault as measured, and as measured again in the changed room."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.lettering import SIGNS
from budgetfix.exports.plan_book_page import FIRST, Col, Formula, Page, Styles, Table, Value
from budgetfix.outcome.book import FaultRow, PlanBook

COLUMNS = (
    Col("Sort", 11, "quiet"),
    Col("Fault", 28, "strong"),
    Col("On", 22),
    Col("Before", 24, "quiet"),
    Col("Sound", 22),
    Col("After", 24, "quiet"),
    Col("Points before", 11, "whole"),
    Col("Points after", 11, "whole"),
    Col("Now", 15),
)
DOUBT = "~ is too close to call with a tape, or rests on a figure that was guessed."
RISE = "Points can rise while a fault shrinks: the worst of a family counts whole, the others a third."
COLORS = {
    "fixed": palette.TEAL,
    "better": palette.AMBER,
    "still there": palette.QUIET,
    "worse": palette.WARN,
    "new": palette.WARN,
}
NAME = "Before and after"


@dataclass(frozen=True, slots=True)
class FaultsAt:
    """Where the Summary finds the state of each fault; empty without faults."""

    states: str


def state_words(state: str) -> str:
    """A state with its sign: `✓ fixed`."""
    return f"{SIGNS[state]} {state}"


def faults_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> FaultsAt:
    """Lay out the sheet."""
    note = "Each fault as measured, and as the changed room was measured again."
    if any(not row.certain for row in plan.faults):
        note += f" {DOUBT}"
    if any(row.state in ("better", "still there") and row.points_after > row.points_before for row in plan.faults):
        note += f" {RISE}"
    page = Page(book, styles, NAME, "Before and after", note, plan.title)
    rooms = len({row.room for row in plan.faults if row.room}) > 1
    rows = sorted(plan.faults, key=lambda row: not row.safety)
    table = Table(page, COLUMNS)
    for row in rows:
        table.row(row.fault, _values(row, rooms), look=partial(_look, row.state))
    if not rows:
        table.says("No faults were found.")
        return FaultsAt("")
    _bars(table)
    _sums(table, plan, sum(1 for row in rows if row.safety), len(rows))
    return FaultsAt(page.span(table.at["Now"], FIRST, FIRST + len(rows) - 1, away=True))


def _values(row: FaultRow, rooms: bool) -> list[Value]:
    on = f"{row.subject}, {row.room}" if rooms and row.room else row.subject
    sort = "! safety" if row.safety else "listed" if row.listed else "look, use"
    before = row.before if row.certain else f"{row.before} ~"
    return [
        sort,
        row.title,
        on,
        before,
        row.sound,
        row.after,
        row.points_before,
        row.points_after,
        state_words(row.state),
    ]


def _look(state: str, heading: str) -> dict[str, object]:
    return {"font_color": COLORS[state], "bold": True} if heading == "Now" else {}


def _bars(table: Table) -> None:
    """Bars behind both columns of points, on one scale."""
    first, last = table.at["Points before"], table.at["Points after"]
    table.page.sheet.conditional_format(
        FIRST,
        first,
        table.last,
        last,
        {"type": "data_bar", "bar_solid": True, "bar_color": palette.BAR, "min_type": "num", "min_value": 0},
    )


def _sums(table: Table, plan: PlanBook, safety: int, rows: int) -> None:
    """Points leave hazards out, so there are two sums."""
    table.next_row += 1
    if safety:
        values = (plan.hazard_points_before, plan.hazard_points_after)
        _sum(table, "Safety", FIRST, FIRST + safety - 1, values)
    if rows > safety:
        _sum(table, "All else", FIRST + safety, FIRST + rows - 1, (plan.points_before, plan.points_after))


def _sum(table: Table, label: str, first: int, last: int, values: tuple[int, int]) -> None:
    page, row = table.page, table.next_row
    edge: dict[str, object] = {"bold": True, "bg_color": palette.STRAW, "top": 1, "top_color": palette.TEAL}
    for place in range(1, len(COLUMNS) + 1):
        page.put(row, place, None, page.styles("", **edge))
    page.put(row, table.at["Fault"], label, page.styles("text", **edge))
    for heading, value in zip(("Points before", "Points after"), values, strict=True):
        made = Formula(f"=SUM({table.area(heading, first, last)})", value)
        page.put(row, table.at[heading], made, page.styles("whole", **edge))
    page.sheet.set_row(row, 18)
    table.next_row += 1
