"""The sheet `Do`: every step in working order, by session, with room for ticks and real minutes."""

from __future__ import annotations

from dataclasses import dataclass

from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.by_person import times, who_words, workers_of
from budgetfix.exports.carried import PAST, SO_FAR, STILL_TO_DO, TICK, carried, in_session
from budgetfix.exports.lettering import clocks, day, lines_on_paper, span
from budgetfix.exports.plan_book_page import (
    AIR_POINTS,
    FIRST,
    INDENT,
    LINE_POINTS,
    Col,
    Formula,
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
HELP = "Helper's minutes"
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
        _worked(plan),
    )
    _sums(table, plan, last)
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


def _worked(plan: PlanBook, session: int | None = None) -> int:
    """Minutes really worked so far, every person's: of all, or of one session."""
    before = carried(plan)
    typed = dict(before.minutes)
    past = [(in_session(one.planned, plan.sessions), one.real_minutes) for one in before.steps]
    left = [(task, typed.get(step_id(task))) for task in plan.tasks]
    return sum(
        minutes * task.people + task.help_minutes
        for task, minutes in (*past, *left)
        if minutes is not None and session in (None, task.session)
    )


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


def _sums(table: Table, plan: PlanBook, last: int) -> None:
    """Minutes by session, every person's counted, what is done with them: planned, and really worked so far."""
    table.next_row += 1
    named: dict[str, Value] = {"Step": "Every person's minutes", "Minutes": "Planned", "Real minutes": "So far"}
    _row(table, named, heading=True)
    past = [in_session(one.planned, plan.sessions) for one in carried(plan).steps]
    for row in plan.sessions or ():
        done = [task for task in past if task.session == row.number]
        tasks = [task for task in plan.tasks if task.session == row.number]
        if tasks or done:
            _session(table, row, (done, tasks), last, _worked(plan, row.number))
    worked = sum(task.person_minutes for task in (*past, *plan.tasks))
    planned, real, people = (table.area(name, FIRST, last) for name in ("Minutes", "Real minutes", "People"))
    helped = table.area(HELP, FIRST, last) if HELP in table.at else ""
    made: dict[str, Value] = {
        "Step": "All of it",
        "Minutes": Formula(f"=SUMPRODUCT({planned},{people})" + (f"+SUM({helped})" if helped else ""), worked),
        "Real minutes": Formula(real_formula(real, people, helped), _worked(plan)),
    }
    _row(table, made, strong=True)


def real_formula(real: str, people: str, helped: str, which: str = "") -> str:
    """Minutes really worked, every person's: a helper's as planned, once the step has its real minutes."""
    more = f'+SUMPRODUCT({which}--({real}<>""),{helped})' if helped else ""
    return f"=SUMPRODUCT({which}{real},{people}){more}"


def _session(table: Table, row: SessionRow, tasks: tuple[list[Task], list[Task]], last: int, real_minutes: int) -> None:
    """`tasks`: those that are done, and those still to do."""
    this = table.page.ref(table.next_row, table.at["Session"])
    which = f"--({table.area('Session', FIRST, last)}={this})"
    planned, real, people = (table.area(name, FIRST, last) for name in ("Minutes", "Real minutes", "People"))
    helped = table.area(HELP, FIRST, last) if HELP in table.at else ""
    done, still = (sum(task.person_minutes for task in part) for part in tasks)
    made: dict[str, Value] = {
        "Session": row.number,
        "Step": _when(row) or f"Session {row.number}",
        "What to do": _used_words(row, done, still),
        "Minutes": Formula(
            f"=SUMPRODUCT({which},{planned},{people})" + (f"+SUMPRODUCT({which},{helped})" if helped else ""),
            done + still,
        ),
        "Real minutes": Formula(real_formula(real, people, helped, f"{which},"), real_minutes),
    }
    _row(table, made)


def _used_words(row: SessionRow, done: int, still: int) -> str:
    """`4 h of 6 h, 10 min of it setting up`; what was done in it before stands in front of that."""
    words = f"{span(row.minutes_used)} of {span(row.minutes_available)}"
    extra = row.minutes_used - still
    words = f"{words}, {span(extra)} of it setting up" if extra > 0 else words
    if not done:
        return words
    return f"{span(done)} done; {words}" if still else f"{span(done)} done"


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
    words, width = values.get("What to do"), table.columns[table.at["What to do"] - 1].width
    lines = lines_on_paper(words, width - INDENT) if isinstance(words, str) else 1
    page.sheet.set_row(row, max(18.0, lines * LINE_POINTS + AIR_POINTS))
    table.next_row += 1
