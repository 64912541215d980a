"""The sheet `Do`: every step in working order, by session, with room for ticks and real minutes."""

from __future__ import annotations

from dataclasses import dataclass

from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.by_person import times, who_words, workers_of
from budgetfix.exports.carried import PAST, SO_FAR, STILL_TO_DO, TICK, carried, in_session
from budgetfix.exports.lettering import day
from budgetfix.exports.plan_book_do_sums import HELP, do_sums, session_when, worked_minutes
from budgetfix.exports.plan_book_page import (
    FIRST,
    Col,
    Page,
    Styles,
    Table,
    Value,
    kept,
)
from budgetfix.outcome.book import PlanBook, SessionRow, Task
from budgetfix.outcome.remembering import step_id
from budgetfix.outcome.so_far import StepBack

COLUMNS = (
    Col("Done", 7, "mark", yours=True),
    Col("Session", 9, "mark"),
    Col("When", 12),
    Col("Time", 12, "mark"),
    Col("Bag", 6, "mark"),
    Col("No.", 5, "mark"),
    Col("Step", 25, "strong"),
    Col("What to do", 46),
    Col("People", 8, "mark"),
    Col("Who", 10, "quiet"),
    Col("Helper's minutes", 9, "whole"),
    Col("Minutes", 9, "whole"),
    Col("If it goes badly", 9, "whole"),
    Col("Real minutes", 9, "whole", yours=True),
    Col("Tools", 15, "quiet"),
    Col("Done when", 20),
    Col("Leaves in the wall", 10, "quiet"),
    Col("Mind", 36, "warn"),
)
OVER = ("Bag", "Tools", "Done when", "Mind")
"""What is told of no step that is done."""
ALWAYS = ("Done", "No.", "Step", "What to do", "People", "Minutes", "Real minutes")


@dataclass(frozen=True, slots=True)
class DoAt:
    """Where other sheets find the ticks and the real minutes; empty when there is nothing to do."""

    ticks: tuple[str, ...]
    """An area of steps carried on, one of steps still to do; none for none."""
    steps: int
    real: str
    people: str
    help: str = ""
    """Helpers' minutes; empty where nobody helps."""
    each: tuple[str, ...] = ()
    """The cell of each tick, one a step, carried on ones first."""
    done: int = 0
    worked: int = 0
    """Minutes really worked so far, every person's."""


def do_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> DoAt:
    """Lay out the sheet."""
    note = "The pale green cells are yours: tick what is done, type the minutes that it really took."
    page = Page(book, styles, "Do", "What to do, in this order", note, plan.title)
    sessions = {row.number: row for row in plan.sessions or ()}
    many, before = len(workers_of(plan)) > 1, carried(plan)
    typed = dict(before.minutes)
    past = [in_session(one.planned, plan.sessions) for one in before.steps]
    whole = [
        _settled(_values(PAST, task, sessions.get(task.session or 0), many), one)
        for task, one in zip(past, before.steps, strict=True)
    ]
    for number, task in enumerate(plan.tasks, start=1):
        values = _values(number, task, sessions.get(task.session or 0), many)
        whole.append(_with_minutes(values, typed.get(step_id(task))))
    places = kept(COLUMNS, whole, ALWAYS)
    table = Table(page, [COLUMNS[place] for place in places])
    rows = [[values[place] for place in places] for values in whole]
    ids = [one.planned.id for one in before.steps]
    settled = _part(table, list(zip(ids, past, rows, strict=False)), SO_FAR if past else "")
    left = [(step_id(task), task, row) for task, row in zip(plan.tasks, rows[len(past) :], strict=True)]
    still = _part(table, left, STILL_TO_DO if past and left else "")
    if not plan.tasks:
        table.says("Nothing more to do." if past else "Nothing to do.")
    if not rows:
        return DoAt((), 0, "", "")
    end = still if plan.tasks else settled
    last = end[-1]
    _yours(table, last)
    at = DoAt(
        tuple(table.area("Done", part[0], part[-1], away=True) for part in (settled, still) if part),
        len(rows),
        table.area("Real minutes", FIRST, last, away=True),
        table.area("People", FIRST, last, away=True),
        table.area(HELP, FIRST, last, away=True) if HELP in table.at else "",
        tuple(page.ref(row, table.at["Done"], away=True) for row in (*settled, *still)),
        sum(1 for one in before.steps if one.done),
        worked_minutes(plan),
    )
    do_sums(table, plan, last)
    return at


def _part(table: Table, rows: list[tuple[str, Task, list[Value]]], head: str) -> range:
    """One part of the list below its heading, if it has one; the rows where it stands, counted from 0."""
    if head:
        table.band("Step", head)
    first = table.next_row
    before: int | None = None
    for number, (id, task, values) in enumerate(rows):
        begins = number > 0 and task.session != before
        table.row(id, values, look=_edge if begins else None)
        before = task.session
    return range(first, table.next_row)


def _settled(values: list[Value], one: StepBack) -> list[Value]:
    """A step that is done, with its tick and minutes; it is not told again how."""
    at = {column.heading: place for place, column in enumerate(COLUMNS)}
    values[at["Done"]] = TICK if one.done else None
    for heading in OVER:
        values[at[heading]] = ""
    return _with_minutes(values, one.real_minutes)


def _with_minutes(values: list[Value], minutes: int | None) -> list[Value]:
    values[[column.heading for column in COLUMNS].index("Real minutes")] = minutes
    return values


def _edge(heading: str) -> dict[str, object]:
    """A session begins with a line above."""
    return {"top": 2, "top_color": palette.TEAL} if heading else {}


def when_words(row: SessionRow | None, task: Task) -> str:
    """The day of a task; with the start of its session where the task has no time of its own."""
    return day(row.on) if row is not None and row.on is not None and task.spells else session_when(row)


def _values(number: int | str, task: Task, session: SessionRow | None, many: bool) -> list[Value]:
    part = f" ({task.step} of {task.steps})" if task.steps > 1 else ""
    return [
        None,
        task.session,
        when_words(session, task),
        times(session, task.spells, many),
        task.bag,
        number,
        task.name + part,
        in_lines(task.text) if task.text != task.name else "",
        task.people,
        who_words(task),
        task.help_minutes or None,
        task.minutes,
        task.high if task.high > task.minutes else None,
        None,
        ", ".join(task.tools),
        task.done_when,
        task.leaves,
        " ".join(task.cares),
    ]


def in_lines(text: str) -> str:
    """One thing to do a line, numbered where there are several."""
    parts = text.split("; ")
    return "\n".join(f"{number}. {part}" for number, part in enumerate(parts, 1)) if len(parts) > 1 else text


def _yours(table: Table, last: int) -> None:
    page, styles = table.page, table.page.styles
    page.sheet.data_validation(
        table.area("Done", FIRST, last),
        {"validate": "list", "source": [TICK], "ignore_blank": True, "show_error": False},
    )
    real = table.area("Real minutes", FIRST, last)
    page.sheet.data_validation(
        real,
        {
            "validate": "integer",
            "criteria": ">=",
            "value": 0,
            "error_title": "How long did it take?",
            "error_message": "Type whole minutes, as a number.",
        },
    )
    cells = {heading: f"${xl_col_to_name(place)}{FIRST + 1}" for heading, place in table.at.items()}
    most = f"MAX({cells['Minutes']},{cells.get('If it goes badly', '0')})"
    typed = cells["Real minutes"]
    over = styles.bare(bold=True, font_color=palette.WARN, bg_color=palette.WARN_GROUND, num_format='"▲ "#,##0_)')
    page.sheet.conditional_format(
        real, {"type": "formula", "criteria": f"=AND(ISNUMBER({typed}),{typed}>{most})", "format": over}
    )
    struck = styles.bare(font_strikeout=True, font_color=palette.QUIET)
    before = table.at["Real minutes"] - 1
    page.sheet.conditional_format(
        FIRST, 2, last, before, {"type": "formula", "criteria": f'={cells["Done"]}<>""', "format": struck}
    )
