"""The sheet `Moving out`: how things were, what is left in the walls, and what to keep to put it all back."""

from __future__ import annotations

import re

from xlsxwriter.workbook import Workbook

from budgetfix.base.days import day_words
from budgetfix.exports.lines import hours_words
from budgetfix.exports.plan_book_page import Col, Formula, Page, Styles, Table, Value
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.changes import Altered, altered
from budgetfix.outcome.leased import Undoing

COLUMNS = (
    Col("Thing", 24, "strong"),
    Col("As it was", 46),
    Col("As the plan leaves it", 46),
    Col("Steps", 8, "mark"),
    Col("Left in the wall", 14, "warn"),
    Col("To put it back", 40, "quiet"),
)
MINUTES = Col("Minutes", 10, "whole")
"""Only under a lease."""
DRY = "Filler is dry before it is painted: start a day or two early."
BACK = {
    "plugs": "Draw the plugs, fill the holes, touch up: keep filler and a little of the wall's paint.",
    "pins": "Draw the pins and press filler in.",
    "strips": "Pull the strips slowly along the wall, as their pack says; keep the pack.",
    "peels off": "Peel it off slowly; keep the backing.",
    "asks leave": "Keep the leave that you were given, in writing.",
}
"""What each way of holding asks for when it goes (common practice)."""


def kept_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> None:
    """Lay out the sheet; nothing where nothing is changed in a measured room."""
    rows = altered(plan.drawn) if plan.drawn is not None else ()
    undoing = plan.undoing if plan.undoing is not None and plan.undoing.rows else None
    if not rows and undoing is None:
        return
    rent = undoing is not None or (plan.drawn is not None and plan.drawn.before.household.rent)
    name, title = ("Moving out", "What to keep for moving out") if rent else ("As it was", "How everything was")
    note = "Keep this sheet, the old things that are not yours to give away, and the receipts. Your lease decides."
    page = Page(book, styles, name, title, note if rent else "To put anything back where it was.", plan.title)
    if undoing is not None:
        _with_minutes(Table(page, (*COLUMNS, MINUTES)), plan, rows, undoing)
        return
    table = Table(page, COLUMNS)
    for row in rows:
        table.row(row.item, _values(plan, row))


def _with_minutes(table: Table, plan: PlanBook, rows: tuple[Altered, ...], undoing: Undoing) -> None:
    """Each remedy is undone at the first thing that it changed; those that changed no thing stand last."""
    todo, at = {row.id: row for row in undoing.rows}, dict[str, str]()
    for row in rows:
        values = _values(plan, row)
        ids = list(dict.fromkeys(plan.tasks[number - 1].candidate for number in row.tasks))
        here = [todo[id] for id in ids if id in todo and id not in at]
        words = [*(f"{one.what}." for one in here), *(f"Goes with the {at[id]}." for id in ids if id in at)]
        if words:
            values[-1] = " ".join(words)
        at |= {one.id: row.item for one in here}
        table.row(row.item, [*values, sum(one.minutes for one in here) or None])
    for one in undoing.rows:
        if one.id not in at:
            table.row(one.id, [one.name, "", "", "", "", f"{one.what}.", one.minutes])
    look = table.page.styles("whole", bold=True)
    table.page.put(table.next_row, len(COLUMNS), "In all, minutes", table.page.styles(bold=True, align="right"))
    table.page.put(table.next_row, len(COLUMNS) + 1, _sum(table, undoing), look)
    table.next_row += 2
    for text in undo_words(undoing):
        table.page.put(table.next_row, 1, text, table.page.styles())
        table.next_row += 1


def _sum(table: Table, undoing: Undoing) -> Formula:
    return Formula(f"=SUM({table.area('Minutes')})", undoing.minutes)


def undo_words(undoing: Undoing) -> tuple[str, ...]:
    """What it comes to, what to keep for it, when; a sentence each."""
    most = f", of {hours_words(undoing.most_minutes)} at most" if undoing.most_minutes is not None else ""
    holes = [f"{count} {what}{'' if count == 1 else 's'}" for count, what in
             ((undoing.plugs, "plug hole"), (undoing.pins, "pin hole")) if count]  # fmt: skip
    paid = ", paid for in this plan" if undoing.counted else ""
    return (
        f"Putting all back takes about {hours_words(undoing.minutes)}{most}: our judgement, yours replaces it.",
        *((f"Holes to fill: {' and '.join(holes)}. {DRY}",) if holes else ()),
        *((f"To keep until then: {'; '.join(undoing.keep)}{paid}.",) if undoing.keep else ()),
        *((f"The lease ends on {day_words(undoing.ends)}.",) if undoing.ends is not None else ()),
    )


def _values(plan: PlanBook, row: Altered) -> list[Value]:
    tasks = [plan.tasks[number - 1] for number in row.tasks]
    leaves = list(dict.fromkeys(task.leaves for task in tasks if task.leaves))
    back = [BACK[what] for what in leaves if what in BACK]
    own = plan.undoing is not None and row.item not in plan.undoing.lent
    if row.was and not own and _replaced(row, [task.text for task in tasks]):
        back.insert(0, f"Keep the old {row.item}, or the landlord's word that it may go.")
    return [
        row.item,
        row.was or "not there",
        row.now or "taken away",
        ", ".join(str(number) for number in row.tasks),
        ", ".join(leaves),
        " ".join(back),
    ]


def _replaced(row: Altered, texts: list[str]) -> bool:
    """True where a task asks where the old thing will go (a screen is no screen bench), or the thing is taken away."""
    asks = re.compile(rf"the old {re.escape(row.item)}(?=,| and | will go)")
    return not row.now or any(asks.search(text) for text in texts)
