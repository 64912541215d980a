"""Below the list of `Do`: every person's minutes by session, planned and really worked."""

from __future__ import annotations

from budgetfix.exports import palette
from budgetfix.exports.carried import carried, in_session
from budgetfix.exports.lettering import clocks, day, lines_on_paper, span
from budgetfix.exports.plan_book_page import AIR_POINTS, FIRST, INDENT, LINE_POINTS, Formula, Table, Value
from budgetfix.outcome.book import PlanBook, SessionRow, Task
from budgetfix.outcome.remembering import step_id

HELP = "Helper's minutes"


def do_sums(table: Table, plan: PlanBook, last: int) -> None:
    """Minutes by session, every person's counted, what is done with them: planned, and really worked so far."""
    table.next_row += 1
    named: dict[str, Value] = {"Step": "Every person's minutes", "Minutes": "Planned", "Real minutes": "So far"}
    _row(table, named, heading=True)
    past = [in_session(one.planned, plan.sessions) for one in carried(plan).steps]
    for row in plan.sessions or ():
        done = [task for task in past if task.session == row.number]
        tasks = [task for task in plan.tasks if task.session == row.number]
        if tasks or done:
            _session(table, row, (done, tasks), last, worked_minutes(plan, row.number))
    worked = sum(task.person_minutes for task in (*past, *plan.tasks))
    planned, real, people = (table.area(name, FIRST, last) for name in ("Minutes", "Real minutes", "People"))
    helped = table.area(HELP, FIRST, last) if HELP in table.at else ""
    made: dict[str, Value] = {
        "Step": "All of it",
        "Minutes": Formula(f"=SUMPRODUCT({planned},{people})" + (f"+SUM({helped})" if helped else ""), worked),
        "Real minutes": Formula(real_formula(real, people, helped), worked_minutes(plan)),
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
        "Step": session_when(row) or f"Session {row.number}",
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


def worked_minutes(plan: PlanBook, session: int | None = None) -> int:
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


def session_when(row: SessionRow | None) -> str:
    """Day and hours of a session; empty where it has no date."""
    if row is None or row.on is None:
        return ""
    return f"{day(row.on)}, {clocks(row.start_minute, row.end_minute)}"
