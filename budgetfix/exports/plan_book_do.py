"""The sheet `Do`: every step in working order, by session, with room for ticks and real minutes."""

from __future__ import annotations

from dataclasses import dataclass

from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.by_person import times, who_words, workers_of
from budgetfix.exports.lettering import clocks, day, span
from budgetfix.exports.plan_book_page import FIRST, TICK, Col, Formula, Page, Styles, Table, Value, kept
from budgetfix.outcome.book import PlanBook, SessionRow, Task

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
HELP = "Helper's minutes"
ALWAYS = ("Done", "No.", "Step", "What to do", "People", "Minutes", "Real minutes")


@dataclass(frozen=True, slots=True)
class DoAt:
    """Where other sheets find the ticks and the real minutes; empty when there is nothing to do."""

    ticks: str
    steps: int
    real: str
    people: str
    help: str = ""
    """Helpers' minutes; empty where nobody helps."""
    each: tuple[str, ...] = ()
    """The cell of each tick, one a step."""


def do_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> DoAt:
    """Lay out the sheet."""
    note = "The pale green cells are yours: tick what is done, type the minutes that it really took."
    page = Page(book, styles, "Do", "What to do, in this order", note, plan.title)
    sessions = {row.number: row for row in plan.sessions or ()}
    many = len(workers_of(plan)) > 1
    whole = [_values(at, task, sessions.get(task.session or 0), many) for at, task in enumerate(plan.tasks, start=1)]
    places = kept(COLUMNS, whole, ALWAYS)
    table = Table(page, [COLUMNS[place] for place in places])
    before: int | None = None
    for number, (task, values) in enumerate(zip(plan.tasks, whole, strict=True)):
        begins = number > 0 and task.session != before
        table.row(f"{task.candidate}#{task.step}", [values[place] for place in places], look=_edge if begins else None)
        before = task.session
    if not plan.tasks:
        table.says("Nothing to do.")
        return DoAt("", 0, "", "")
    _yours(table)
    at = DoAt(
        table.area("Done", away=True),
        len(plan.tasks),
        table.area("Real minutes", away=True),
        table.area("People", away=True),
        table.area(HELP, away=True) if HELP in table.at else "",
        tuple(page.ref(FIRST + number, table.at["Done"], away=True) for number in range(len(plan.tasks))),
    )
    _sums(table, plan)
    return at


def _edge(heading: str) -> dict[str, object]:
    """A session begins with a line above."""
    return {"top": 2, "top_color": palette.TEAL} if heading else {}


def _when(row: SessionRow | None) -> str:
    if row is None or row.on is None:
        return ""
    return f"{day(row.on)}, {clocks(row.start_minute, row.end_minute)}"


def when_words(row: SessionRow | None, task: Task) -> str:
    """The day of a task; with the start of its session where the task has no time of its own."""
    return day(row.on) if row is not None and row.on is not None and task.spells else _when(row)


def _values(number: int, task: Task, session: SessionRow | None, many: bool) -> list[Value]:
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


def _yours(table: Table) -> None:
    page, styles = table.page, table.page.styles
    page.sheet.data_validation(
        table.area("Done"), {"validate": "list", "source": [TICK], "ignore_blank": True, "show_error": False}
    )
    real = table.area("Real minutes")
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
        FIRST, 2, table.last, before, {"type": "formula", "criteria": f'={cells["Done"]}<>""', "format": struck}
    )


def _sums(table: Table, plan: PlanBook) -> None:
    """Minutes by session, every person's counted: planned, and really worked so far."""
    last = table.last
    table.next_row += 1
    named: dict[str, Value] = {"Step": "Every person's minutes", "Minutes": "Planned", "Real minutes": "So far"}
    _row(table, named, heading=True)
    for row in plan.sessions or ():
        tasks = [task for task in plan.tasks if task.session == row.number]
        if tasks:
            _session(table, row, tasks, last)
    worked = sum(task.person_minutes for task in plan.tasks)
    planned, real, people = (table.area(name, FIRST, last) for name in ("Minutes", "Real minutes", "People"))
    helped = table.area(HELP, FIRST, last) if HELP in table.at else ""
    made: dict[str, Value] = {
        "Step": "All of it",
        "Minutes": Formula(f"=SUMPRODUCT({planned},{people})" + (f"+SUM({helped})" if helped else ""), worked),
        "Real minutes": Formula(real_formula(real, people, helped), 0),
    }
    _row(table, made, strong=True)


def real_formula(real: str, people: str, helped: str, which: str = "") -> str:
    """Minutes really worked, every person's: a helper's as planned, once the step has its real minutes."""
    more = f'+SUMPRODUCT({which}--({real}<>""),{helped})' if helped else ""
    return f"=SUMPRODUCT({which}{real},{people}){more}"


def _session(table: Table, row: SessionRow, tasks: list[Task], last: int) -> None:
    this = table.page.ref(table.next_row, table.at["Session"])
    which = f"--({table.area('Session', FIRST, last)}={this})"
    planned, real, people = (table.area(name, FIRST, last) for name in ("Minutes", "Real minutes", "People"))
    helped = table.area(HELP, FIRST, last) if HELP in table.at else ""
    worked = sum(task.person_minutes for task in tasks)
    extra = row.minutes_used - worked
    words = f"{span(row.minutes_used)} of {span(row.minutes_available)}"
    made: dict[str, Value] = {
        "Session": row.number,
        "Step": _when(row) or f"Session {row.number}",
        "What to do": f"{words}, {span(extra)} of it setting up" if extra > 0 else words,
        "Minutes": Formula(
            f"=SUMPRODUCT({which},{planned},{people})" + (f"+SUMPRODUCT({which},{helped})" if helped else ""), worked
        ),
        "Real minutes": Formula(real_formula(real, people, helped, f"{which},"), 0),
    }
    _row(table, made)


def _row(table: Table, values: dict[str, Value], heading: bool = False, strong: bool = False) -> None:
    page, row = table.page, table.next_row
    edge: dict[str, object] = {"bottom": 1, "bottom_color": palette.TEAL if heading else palette.LINE}
    if heading or strong:
        edge["bold"] = True
    if heading:
        edge["font_color"] = palette.TEAL
    if strong:
        edge |= {"bg_color": palette.STRAW, "top": 1, "top_color": palette.TEAL}
    for place in range(2, table.at["Real minutes"] + 1):
        column = table.columns[place - 1]
        look = "mark" if column.heading == "Session" else column.look if column.look == "whole" else "text"
        page.put(row, place, values.get(column.heading), page.styles(look, **edge))
    page.sheet.set_row(row, 18)
    table.next_row += 1
