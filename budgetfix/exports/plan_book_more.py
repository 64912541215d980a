"""The sheets `Left out` and `What more buys`: why not this, and what another sum of money would bring."""

from __future__ import annotations

from xlsxwriter.chart import Chart
from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.more_words import more_note, next_lines
from budgetfix.exports.plan_book_page import FIRST, Col, Formula, Page, Styles, Table, Value
from budgetfix.outcome.book import LeftOutRow, MorePlan, PlanBook

LEFT_OUT = (
    Col("Remedy", 46, "strong"),
    Col("Costs", 12, "money"),
    Col("Minutes", 10, "whole"),
    Col("Would add", 11, "whole"),
    Col("Why not now", 62, "quiet"),
)
MORE = (
    Col("Spend", 13, "money"),
    Col("Points fixed", 12, "whole"),
    Col("Against this plan", 13, "gain"),
    Col("Hazards left", 13, "whole"),
    Col("Minutes", 11, "whole"),
    Col("What changes", 76, "quiet"),
)
BARS = 14
"""Sums of money up to which each has a bar with its figure; more of them are a line."""
NAMED = 3
"""Remedies that are named in one row."""
THIS = "◆ this plan"
NAME = "What more buys"


def left_out_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> None:
    """Lay out `Left out`."""
    note = "Nothing here is wrong: it did less for the same money and time, or it did not fit."
    page = Page(book, styles, "Left out", "What was left out, and why", note, plan.title)
    table = Table(page, LEFT_OUT)
    for row in plan.left_out:
        table.row(row.id, _left_out(row, styles))
    if not plan.left_out:
        table.says("Nothing was left out.")


def _left_out(row: LeftOutRow, styles: Styles) -> list[Value]:
    return [row.name, styles.amount(row.cost_minor), row.minutes, row.would_add, row.why]


def more_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> None:
    """Lay out `What more buys`, with its chart on the same printed page."""
    page = Page(book, styles, NAME, "What more money would buy, and less", more_note(plan), plan.title)
    page.sheet.fit_to_pages(1, 1 if len(plan.more) <= BARS else 0)
    table = Table(page, MORE)
    this = next((FIRST + at for at, row in enumerate(plan.more) if row.this_one), None)
    for row in plan.more:
        tint = _this_look if row.this_one else None
        table.row(f"{row.spent_minor}", _more(table, row, plan, this), look=tint)
    if not plan.more:
        table.says("No other sums of money were tried.")
    table.next_row += 1
    for line in next_lines(plan):
        table.says(line)
        table.next_row -= 1
    if plan.more:
        _chart(book, table, plan)


def _this_look(heading: str) -> dict[str, object]:
    return {"bg_color": palette.STRAW, "bold": True, "font_color": palette.TEAL} if heading else {}


def _more(table: Table, row: MorePlan, plan: PlanBook, this: int | None) -> list[Value]:
    points = xl_col_to_name(table.at["Points fixed"])
    gain = row.improvement - plan.improvement
    against: Value = gain
    if this is not None:
        own = table.page.ref(this, table.at["Points fixed"])
        against = Formula(f"={points}{table.next_row + 1}-{own}", gain)
    changes = [f"with {_named(row.with_)}"] if row.with_ else []
    changes += [f"without {_named(row.without)}"] if row.without else []
    words = THIS if row.this_one else "\n".join(changes) or "the same remedies, done otherwise"
    return [
        table.page.styles.amount(row.spent_minor),
        row.improvement,
        against,
        row.hazards_after,
        row.minutes,
        words,
    ]


def _named(names: tuple[str, ...]) -> str:
    """Some names, and how many more there are."""
    more = f" and {len(names) - NAMED} more" if len(names) > NAMED else ""
    return " · ".join(names[:NAMED]) + more


def _shown(table: Table) -> str:
    return table.page.styles.money.removesuffix("_)")


def _chart(book: Workbook, table: Table, plan: PlanBook) -> None:
    """Points fixed for each sum of money, with this plan in a colour of its own."""
    chart = _bars(book, table, plan) if len(plan.more) <= BARS else _steps(book, table, plan)
    options = {"description": "Points fixed by the best plan for each sum of money", "object_position": 3}
    if len(plan.more) > BARS:
        table.page.sheet.set_h_pagebreaks([table.next_row + 1])
    table.page.sheet.insert_chart(table.next_row + 1, 1, chart, options)


def _bars(book: Workbook, table: Table, plan: PlanBook) -> Chart:
    """Bars from the top down, cheapest first."""
    chart = book.add_chart({"type": "bar"})
    spend, points = (table.area(heading, away=True) for heading in ("Spend", "Points fixed"))
    fills = [
        {"fill": {"color": palette.TEAL}, "border": {"color": palette.INK, "width": 1.5}}
        if row.this_one
        else {"fill": {"color": palette.BAR}}
        for row in plan.more
    ]
    font = {"name": "Arial", "size": 10, "color": palette.INK}
    chart.add_series(
        {
            "name": "Points fixed",
            "categories": f"={spend}",
            "values": f"={points}",
            "points": fills,
            "gap": 40,
            "data_labels": {"value": True, "font": font, "num_format": "#,##0"},
        }
    )
    chart.set_title({"name": "Points fixed by what is spent", "name_font": {**font, "size": 12, "color": palette.TEAL}})
    chart.set_legend({"none": True})
    chart.set_y_axis({"reverse": True, "num_format": _shown(table), "num_font": font, "line": {"color": palette.LINE}})
    chart.set_x_axis({"visible": False, "min": 0, "major_gridlines": {"visible": False}})
    chart.set_chartarea({"border": {"color": palette.LINE}})
    chart.set_size({"width": 760, "height": 90 + 30 * len(plan.more)})
    return chart


def _steps(book: Workbook, table: Table, plan: PlanBook) -> Chart:
    """One mark a sum of money, from left to right, joined by a line; this plan's mark is large."""
    chart = book.add_chart({"type": "scatter", "subtype": "straight_with_markers"})
    spend, points = (table.area(heading, away=True) for heading in ("Spend", "Points fixed"))
    font = {"name": "Arial", "size": 10, "color": palette.INK}
    small = {"type": "circle", "size": 5, "fill": {"color": palette.BAR}, "border": {"color": palette.BAR}}
    line = {"color": palette.BAR, "width": 1.5}
    chart.add_series(
        {"name": "Points fixed", "categories": f"={spend}", "values": f"={points}", "marker": small, "line": line}
    )
    at = next((FIRST + at for at, row in enumerate(plan.more) if row.this_one), None)
    if at is not None:
        own = (table.area(heading, at, at, away=True) for heading in ("Spend", "Points fixed"))
        spend, points = own
        large = {"type": "diamond", "size": 11, "fill": {"color": palette.TEAL}, "border": {"color": palette.INK}}
        label = {"series_name": True, "value": False, "position": "above", "font": font}
        chart.add_series(
            {"name": THIS, "categories": f"={spend}", "values": f"={points}", "marker": large, "data_labels": label}
        )
    chart.set_title({"name": "Points fixed by what is spent", "name_font": {**font, "size": 12, "color": palette.TEAL}})
    chart.set_legend({"none": True})
    grid = {"visible": True, "line": {"color": palette.LINE}}
    chart.set_x_axis({"num_format": _shown(table), "num_font": font, "line": {"color": palette.LINE}, "min": 0})
    chart.set_y_axis(
        {"num_format": "#,##0", "num_font": font, "major_gridlines": grid, "line": {"color": palette.LINE}}
    )
    chart.set_chartarea({"border": {"color": palette.LINE}})
    chart.set_size({"width": 860, "height": 400})
    return chart
