"""The sheet `Moving out`: how things were, what is left in the walls, and what to keep to put it all back."""

from __future__ import annotations

from xlsxwriter.workbook import Workbook

from budgetfix.exports.plan_book_page import Col, Page, Styles, Table, Value
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.changes import Altered, altered

COLUMNS = (
    Col("Thing", 24, "strong"),
    Col("As it was", 46),
    Col("As the plan leaves it", 46),
    Col("Steps", 8, "mark"),
    Col("Left in the wall", 14, "warn"),
    Col("To put it back", 40, "quiet"),
)
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
    if plan.drawn is None or not rows:
        return
    rent = plan.drawn.before.household.rent
    name, title = ("Moving out", "What to keep for moving out") if rent else ("As it was", "How everything was")
    note = "Keep this sheet, the old things that are not yours to give away, and the receipts. Your lease decides."
    page = Page(book, styles, name, title, note if rent else "To put anything back where it was.", plan.title)
    table = Table(page, COLUMNS)
    for row in rows:
        table.row(row.item, _values(plan, row))


def _values(plan: PlanBook, row: Altered) -> list[Value]:
    tasks = [plan.tasks[number - 1] for number in row.tasks]
    leaves = list(dict.fromkeys(task.leaves for task in tasks if task.leaves))
    back = [BACK[what] for what in leaves if what in BACK]
    if row.was and _replaced(row, [task.text for task in tasks]):
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
    """True where a task asks where the old thing will go, or the thing is taken away."""
    return not row.now or any(f"the old {row.item}" in text for text in texts)
