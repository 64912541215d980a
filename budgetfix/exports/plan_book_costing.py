"""The sheet `Costing`: the plan's bill from inside. Not for the client."""

from __future__ import annotations

from itertools import groupby

from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.workbook import Workbook

from budgetfix.base.money import write_money_long
from budgetfix.exports import palette
from budgetfix.exports.lettering import clock, count, long_day
from budgetfix.exports.plan_book_page import Col, Formula, Page, Styles, Table, Value
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.quote import Costing, CostRow, VanLoad

NAME = "Costing"
COLUMNS = (
    Col("Line", 34, "strong"),
    Col("For", 36, "quiet"),
    Col("From", 15),
    Col("Stands at", 10),
    Col("Packs", 7, "whole"),
    Col("Kilograms", 10, "whole"),
    Col("Minutes", 9, "whole"),
    Col("Price or fee", 12, "money"),
    Col("Mark-up", 9, "mark"),
    Col("Client pays", 12, "money"),
    Col("We pay", 11, "money"),
    Col("Margin", 11, "money"),
)
SUMMED = ("Kilograms", "Minutes", "Price or fee", "Client pays", "We pay", "Margin")
ORDER = ("bought", "stock", "hire", "tool", "work", "van", "fixed", "delivery", "tax")
HEADINGS = {
    "bought": "Bought: shelf price and mark-up",
    "stock": "From our stock: the fee{days}",
    "hire": "Hired{days}",
    "tool": "Tools",
    "work": "Work{rate}",
    "van": "Van",
    "fixed": "Other fixed costs",
    "delivery": "Delivery",
    "tax": "Tax",
}
SUM_LOOK: dict[str, object] = {"bg_color": palette.STRAW, "bold": True, "font_color": palette.TEAL}
NOTE = (
    "Not for the client. Goods are costed at the shelf price; our own stock costs nothing to use, so its fee is "
    "margin; pay and van are costed at what the client pays."
)


def costing_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> None:
    """Lay out the sheet; nothing for a job without a quote."""
    costing = plan.costing
    if costing is None or plan.quote is None:
        return
    letter = next((one.letter for one in reversed(plan.quote.options)), "")
    page = Page(book, styles, NAME, f"Costing of option {letter}, line by line", _note(costing), plan.title)
    table = Table(page, COLUMNS)
    rows = sorted(costing.rows, key=lambda row: ORDER.index(row.sort))
    sums = [_sort(table, plan, sort, list(some)) for sort, some in groupby(rows, key=lambda row: row.sort)]
    _total(table, costing, sums)
    table.next_row += 1
    for line in _below(plan, costing):
        table.says(line)
        table.next_row -= 1


def _note(costing: Costing) -> str:
    """How it is costed, and whose minutes are among those of the remedies."""
    paid = ", ".join(row.name for row in costing.rows if row.sort == "fixed" and row.minutes)
    return f"{NOTE} Minutes include the fixed work too: {paid}." if paid else NOTE


def _sort(table: Table, plan: PlanBook, sort: str, rows: list[CostRow]) -> int:
    """The lines of one sort under their sums; gives the row of the sums."""
    first, last = table.next_row + 2, table.next_row + 1 + len(rows)
    figures = [_figures(row, table.page.styles) for row in rows]
    values: list[Value] = [_heading(plan, sort, rows)]
    for place, column in enumerate(table.columns[1:], start=1):
        letter = xl_col_to_name(place + 1)
        known = [each for each in (one[place] for one in figures) if isinstance(each, (int, float))]
        summed = column.heading in SUMMED and known
        values.append(Formula(f"=SUM({letter}{first}:{letter}{last})", float(sum(known))) if summed else None)
    place = table.row(sort, values, look=lambda _: dict(SUM_LOOK))
    for row, cells in zip(rows, figures, strict=True):
        number = table.next_row + 1
        pays, ours = (xl_col_to_name(table.at[heading]) for heading in ("Client pays", "We pay"))
        cells[-1] = Formula(f"={pays}{number}-{ours}{number}", table.page.styles.amount(row.margin_minor))
        table.row(row.id, cells)
    return place


def _heading(plan: PlanBook, sort: str, rows: list[CostRow]) -> str:
    days = sorted({row.days for row in rows if row.days})
    rate = plan.costing.rate_minor if plan.costing is not None else None
    hourly = f", {write_money_long(rate, plan.currency)} an hour a person" if rate is not None else ""
    spell = f" for {count(days[0], 'day')}" if len(days) == 1 else ""
    return HEADINGS[sort].format(days=spell, rate=hourly)


def _figures(row: CostRow, styles: Styles) -> list[Value]:
    return [
        row.name,
        row.use,
        row.source,
        row.place,
        row.packs,
        row.weight_kg,
        row.minutes,
        None if row.shelf_minor is None else styles.amount(row.shelf_minor),
        row.markup,
        styles.amount(row.client_minor),
        styles.amount(row.out_minor),
        styles.amount(row.margin_minor),
    ]


def _total(table: Table, costing: Costing, sums: list[int]) -> None:
    totals = {
        "Kilograms": sum(row.weight_kg or 0.0 for row in costing.rows),
        "Minutes": float(sum(row.minutes or 0 for row in costing.rows)),
        "Price or fee": table.page.styles.amount(sum(row.shelf_minor or 0 for row in costing.rows)),
        "Client pays": table.page.styles.amount(sum(row.client_minor for row in costing.rows)),
        "We pay": table.page.styles.amount(sum(row.out_minor for row in costing.rows)),
        "Margin": table.page.styles.amount(sum(row.margin_minor for row in costing.rows)),
    }
    values: list[Value] = ["In all"]
    for place, column in enumerate(table.columns[1:], start=2):
        cells = "+".join(f"{xl_col_to_name(place)}{row + 1}" for row in sums)
        values.append(Formula(f"={cells}", totals[column.heading]) if column.heading in totals else None)
    table.row("all", values, look=lambda _: {"bg_color": palette.TEAL, "bold": True, "font_color": palette.WHITE})


def _below(plan: PlanBook, costing: Costing) -> list[str]:
    """What each option leaves, and what the van carries."""
    lines = [
        f"Option {letter}, {name}: the client pays {write_money_long(total, plan.currency)}, "
        f"margin {write_money_long(margin, plan.currency)}."
        for letter, name, total, margin in costing.options
    ]
    return lines + [_load(load) for load in costing.loads]


def _load(load: VanLoad) -> str:
    when = f"{long_day(load.on)}, {clock(load.start_minute)} to {clock(load.end_minute)}"
    most = "" if load.most_kg is None else f" of {load.most_kg:g} kg"
    return f"Van {load.name}: {when}, {load.load_kg:g} kg{most}."
