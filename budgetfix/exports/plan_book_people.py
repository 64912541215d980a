"""A sheet for each person who works, and one for what several do at once.

The ticks are those of the sheet `Do`: a tick there shows here by a formula. Two places to tick would be two truths, and
what both do would have to be ticked twice.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.by_person import TOGETHER, own, sheet_names, times, who_words, with_words, workers_of
from budgetfix.exports.carried import PAST, TICK, carried, in_session
from budgetfix.exports.lettering import span
from budgetfix.exports.plan_book_do import DoAt, in_lines, when_words
from budgetfix.exports.plan_book_page import FIRST, Col, Formula, Page, Styles, Table, Value, kept
from budgetfix.outcome.book import PlanBook, SessionRow, Task

COLUMNS = (
    Col("Done", 7, "mark"),
    Col("Session", 9, "mark"),
    Col("When", 12),
    Col("Time", 12, "mark"),
    Col("Minutes", 9, "whole"),
    Col("Bag", 6, "mark"),
    Col("No.", 5, "mark"),
    Col("Step", 25, "strong"),
    Col("What to do", 46),
    Col("With", 14, "quiet"),
    Col("Tools", 15, "quiet"),
    Col("Done when", 20),
    Col("Mind", 36, "warn"),
)
ALWAYS = ("Done", "No.", "Step", "What to do")
OPEN = "☐"
"""Not ticked yet; on paper a box for a pen."""
NOTE = "Numbers, bags and ticks are those of the sheet Do: tick there, and it shows here."


@dataclass(frozen=True, slots=True)
class _Row:
    """A row of Do: its place, from 0, its number (`PAST`: carried on), whether it is ticked."""

    place: int
    number: int | str
    task: Task
    done: bool = False


@dataclass(frozen=True, slots=True)
class _Own:
    """One row: where it stands on Do, the task, when, for how long and with whom."""

    row: _Row
    task: Task
    time: str
    minutes: int
    beside: str


def people_sheets(book: Workbook, styles: Styles, plan: PlanBook, do: DoAt) -> None:
    """Lay out the sheets; none where only one person works."""
    people = workers_of(plan)
    for person, name in zip(people, sheet_names(people), strict=True):
        _sheet(book, styles, plan, do, name, f"Tasks for {person}", _of(plan, person))
    joint = _joint(plan) if people else []
    if joint:
        title = "Tasks for both at once" if len(people) == 2 else "Tasks for several at once"
        _sheet(book, styles, plan, do, TOGETHER, title, joint)


def _of(plan: PlanBook, person: str) -> list[_Own]:
    """The tasks of one person, a helper's minutes only while helping."""
    rows = {row.number: row for row in plan.sessions or ()}
    return [
        _Own(
            row,
            row.task,
            times(rows.get(row.task.session or 0), own(row.task, person), True),
            row.task.help_minutes if row.task.helper == person else row.task.minutes,
            with_words(row.task, person),
        )
        for row in _rows(plan)
        if person in row.task.who
    ]


def _rows(plan: PlanBook) -> list[_Row]:
    """All rows of Do: steps carried on first."""
    steps = carried(plan).steps
    past = [_Row(at, PAST, in_session(one.planned, plan.sessions), one.done) for at, one in enumerate(steps)]
    return [*past, *(_Row(len(past) + at, at + 1, task) for at, task in enumerate(plan.tasks))]


def _joint(plan: PlanBook) -> list[_Own]:
    """What takes several at once, while it does."""
    rows = {row.number: row for row in plan.sessions or ()}
    return [
        _Own(
            row,
            row.task,
            times(rows.get(row.task.session or 0), [spell for spell in row.task.spells if len(spell.who) > 1], True),
            row.task.help_minutes or row.task.minutes,
            who_words(row.task),
        )
        for row in _rows(plan)
        if len(row.task.who) > 1
    ]


def _sheet(book: Workbook, styles: Styles, plan: PlanBook, do: DoAt, name: str, title: str, mine: list[_Own]) -> None:
    left = sum(one.minutes for one in mine if one.row.number != PAST)
    page = Page(book, styles, name, title, f"{span(left)} of work. {NOTE}", plan.title)
    sessions = {row.number: row for row in plan.sessions or ()}
    whole = [_values(one, sessions.get(one.task.session or 0), do) for one in mine]
    places = kept(COLUMNS, whole, ALWAYS)
    table = Table(page, [COLUMNS[place] for place in places])
    before: int | None = None
    for at, (one, values) in enumerate(zip(mine, whole, strict=True)):
        begins = at > 0 and one.task.session != before
        table.row(
            f"{one.task.candidate}#{one.task.step}", [values[place] for place in places], look=_edge if begins else None
        )
        before = one.task.session
    _struck(table)


def _edge(heading: str) -> dict[str, object]:
    """A session begins with a line above."""
    return {"top": 2, "top_color": palette.TEAL} if heading else {}


def _values(one: _Own, session: SessionRow | None, do: DoAt) -> list[Value]:
    task = replace(one.task, bag="", tools=(), done_when="", cares=()) if one.row.done else one.task
    part = f" ({task.step} of {task.steps})" if task.steps > 1 else ""
    tick = do.each[one.row.place]
    return [
        Formula(f'=IF({tick}<>"",{tick},"{OPEN}")', TICK if one.row.done else OPEN),
        task.session,
        when_words(session, task),
        one.time,
        one.minutes,
        task.bag,
        one.row.number,
        task.name + part,
        in_lines(task.text) if task.text != task.name else "",
        one.beside,
        ", ".join(task.tools),
        task.done_when,
        " ".join(task.cares),
    ]


def _struck(table: Table) -> None:
    """What is ticked is struck through, as on the sheet Do."""
    page = table.page
    struck = page.styles.bare(font_strikeout=True, font_color=palette.QUIET)
    done = f"${xl_col_to_name(table.at['Done'])}{FIRST + 1}"
    page.sheet.conditional_format(
        FIRST,
        2,
        table.last,
        len(table.columns),
        {"type": "formula", "criteria": f'={done}<>"{OPEN}"', "format": struck},
    )
