"""Several jobs as one workbook: the jobs and their sums, where each piece stands when, and one list to buy from.

Made anew by each `plan`; ticks and real prices belong into the workbooks of the jobs.
"""

from __future__ import annotations

import io
from datetime import datetime, time

from xlsxwriter.workbook import Workbook

from budgetfix.base.fingerprint import PROPERTY, fingerprint
from budgetfix.exports import palette
from budgetfix.exports.files import LONG_AGO
from budgetfix.exports.lettering import day, span
from budgetfix.exports.plan_book_page import BASE, FIRST, Col, Formula, Page, Styles, Table, Value, clean
from budgetfix.exports.portfolio_csv import minutes_used
from budgetfix.exports.portfolio_rows import Bought, bought
from budgetfix.exports.portfolio_stock import stock_sheet, vans_sheet
from budgetfix.outcome.portfolio import House, Portfolio

JOBS = (
    Col("Job", 26, "strong"),
    Col("From", 11),
    Col("Until", 11),
    Col("Budget", 12, "money"),
    Col("Spent", 12, "money"),
    Col("Points before", 9, "whole"),
    Col("Points after", 9, "whole"),
    Col("Hazards before", 9, "whole"),
    Col("Hazards after", 9, "whole"),
    Col("Hours of work", 13),
    Col("Proof", 11, "mark"),
    Col("Its lists", 26, "quiet"),
)
SUMMED = ("Budget", "Spent", "Points before", "Points after", "Hazards before", "Hazards after")
PROVEN, STOPPED = "✓ proven", "not proven"
MOST_HOUSES = 12
"""Columns of packs by job; with more jobs their packs stand in one cell."""


def portfolio_book(portfolio: Portfolio) -> bytes:
    """The workbook: Jobs, Stock, Buy, Vans."""
    data = io.BytesIO()
    safe = {"strings_to_formulas": False, "strings_to_urls": False, "strings_to_numbers": False}
    book = Workbook(data, {"in_memory": True, "default_format_properties": dict(BASE), **safe})
    created = datetime.combine(portfolio.ordered or LONG_AGO, time())
    book.set_properties({"title": clean(portfolio.name)[:250], "created": created})
    styles = Styles(book, portfolio.currency)
    _jobs(book, styles, portfolio)
    if portfolio.pieces:
        stock_sheet(book, styles, portfolio)
    _buy(book, styles, portfolio)
    if portfolio.runs:
        vans_sheet(book, styles, portfolio)
    book.set_custom_property(PROPERTY, fingerprint(styles.typed), "text")
    book.close()
    return data.getvalue()


def _jobs(book: Workbook, styles: Styles, portfolio: Portfolio) -> None:
    note = (
        f"Money in {portfolio.currency}. Tick and type in each job's own plan.xlsx: this book is made anew each time."
    )
    page = Page(book, styles, "Jobs", f"{portfolio.name}: all jobs", note, portfolio.name)
    table = Table(page, JOBS)
    for house in portfolio.houses:
        name: Value = Formula(_link(house), clean(house.name)) if _linked(house) else house.name
        row = table.row(house.said, [name, *_job(styles, house)])
        link = styles("strong", bottom=1, bottom_color=palette.LINE, font_color=palette.TEAL, underline=1)
        page.put(row, 1, name, link)
    _totals(table, portfolio)
    row = table.next_row + 1
    for text in (_proof(portfolio), *portfolio.notes):
        page.put(row, 1, text, styles(font_color=palette.QUIET))
        row += 1
    page.sheet.activate()


MOST_IN_TEXT = 255
"""Characters that a text inside of a formula can hold."""


def _linked(house: House) -> bool:
    return max(len(house.said) + 10, len(house.name)) <= MOST_IN_TEXT and house.name.isprintable()


def _link(house: House) -> str:
    """Leads to the job's own workbook, on every system and wherever the folder goes."""
    folder, name = (text.replace('"', '""') for text in (house.said, clean(house.name)))
    return f'=HYPERLINK("{folder}/plan.xlsx","{name}")'


def _job(styles: Styles, house: House) -> list[Value]:
    plan = house.book
    names = [file.replace("\\", "/").rsplit("/", 1)[-1] for file in house.files]
    return [
        None if house.first is None else day(house.first),
        None if house.until is None else day(house.until),
        "no limit" if plan.budget_minor is None else styles.amount(plan.budget_minor),
        styles.amount(plan.spent_minor),
        plan.points_before,
        plan.points_after,
        plan.hazards_before,
        plan.hazards_after,
        span(minutes_used(house)),
        PROVEN if plan.proven else STOPPED,
        f"{house.said}: {', '.join(names)}",
    ]


def _totals(table: Table, portfolio: Portfolio) -> None:
    page, row, styles = table.page, table.next_row, table.page.styles
    plans = [house.book for house in portfolio.houses]
    values: dict[str, int | float] = {
        "Budget": styles.amount(sum(plan.budget_minor or 0 for plan in plans)),
        "Spent": styles.amount(portfolio.spent_minor),
        "Points before": sum(plan.points_before for plan in plans),
        "Points after": sum(plan.points_after for plan in plans),
        "Hazards before": sum(plan.hazards_before for plan in plans),
        "Hazards after": sum(plan.hazards_after for plan in plans),
    }
    edge: dict[str, object] = {"bold": True, "top": 1, "top_color": palette.TEAL, "bg_color": palette.STRAW}
    for column in table.columns:
        page.put(row, table.at[column.heading], None, page.styles("", **edge))
    page.put(row, 1, "Together", page.styles("text", **edge))
    for heading in SUMMED:
        if heading == "Budget" and portfolio.budget_minor is None:
            continue
        look = next(column.look for column in table.columns if column.heading == heading)
        page.put(
            row, table.at[heading], Formula(f"=SUM({table.area(heading)})", values[heading]), page.styles(look, **edge)
        )
    page.sheet.set_row(row, 18)
    table.next_row += 1


def _proof(portfolio: Portfolio) -> str:
    if not portfolio.proven:
        return f"Stopped by the clock: at most {portfolio.bound - portfolio.improvement:,} points more exist."
    shared = "no other way to share the stock, and " if portfolio.pieces else ""
    return f"Proven: {shared}no other plans take away more in all."


def _buy(book: Workbook, styles: Styles, portfolio: Portfolio) -> None:
    lines = bought(portfolio)
    note = f"Packs by job, so that one round of a shop serves all of them. Money in {portfolio.currency}."
    note += " The sums hold the mark-up." if any(_marked_up(line) for line in lines) else ""
    page = Page(book, styles, "Buy", "What to buy for all jobs", note, portfolio.name)
    houses = portfolio.houses if len(portfolio.houses) <= MOST_HOUSES else ()
    each = [Col(name, max(9.0, min(14.0, len(name) + 2.0)), "whole") for name in _headings(houses)]
    columns = [Col("Shop", 18, "strong"), Col("What", 30), Col("Label size", 18), *each]
    columns += [] if houses else [Col("Packs by job", 34, "quiet")]
    columns += [Col("Packs in all", 8, "whole"), Col("Price each", 10, "money"), Col("In all", 12, "money")]
    table = Table(page, columns)
    last = ""
    for number, line in enumerate(lines, start=1):
        table.row(f"b{number}", _bought(styles, portfolio, line, houses, line.place if line.place != last else ""))
        last = line.place
    if not lines:
        table.says("Nothing to buy: everything in these plans is free.")
        return
    row = table.next_row
    edge: dict[str, object] = {"bold": True, "top": 1, "top_color": palette.TEAL, "bg_color": palette.STRAW}
    for column in table.columns:
        page.put(row, table.at[column.heading], None, styles("", **edge))
    page.put(row, 1, "Together", styles("text", **edge))
    whole = Formula(f"=SUM({table.area('In all', FIRST, table.last)})", styles.amount(portfolio.spent_minor))
    page.put(row, table.at["In all"], whole, styles("money", **edge))


def _marked_up(line: Bought) -> bool:
    """True where a line costs more than its packs on the shelf."""
    return (
        line.packs is not None and line.price_minor is not None and sum(line.packs) * line.price_minor < line.line_minor
    )


def _headings(houses: tuple[House, ...]) -> list[str]:
    """Names of the houses; two of one name are told apart by their folders."""
    names = [house.name for house in houses]
    return [house.said if names.count(house.name) > 1 else house.name for house in houses]


def _bought(styles: Styles, portfolio: Portfolio, line: Bought, houses: tuple[House, ...], place: str) -> list[Value]:
    counts: list[Value] = [None] * len(houses) if line.packs is None else [count or None for count in line.packs]
    words: list[Value] = []
    if not houses:
        named = zip(portfolio.houses, line.packs or (), strict=False)
        words, counts = ["; ".join(f"{house.name} {count}" for house, count in named if count)], []
    price = None if line.price_minor is None or line.packs is None else styles.amount(line.price_minor)
    packs = None if line.packs is None else sum(line.packs)
    return [place, line.name, line.label, *counts, *words, packs, price, styles.amount(line.line_minor)]
