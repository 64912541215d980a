"""The sheet `Stock`: every piece, where it is kept, where it stands when, and how many are out in each week."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from xlsxwriter.workbook import Workbook

from budgetfix.base.days import MONTHS
from budgetfix.exports import palette
from budgetfix.exports.lettering import SHORT, clock, count, day
from budgetfix.exports.plan_book_page import FIRST, Col, Page, Styles, Table
from budgetfix.outcome.portfolio import Piece, Portfolio, Run, Standing

WEEK = timedelta(days=7)
MOST_WEEKS = 30
"""Columns of the calendar; where the stays take longer, a column stands for several weeks."""
NOTE = "A figure under a week says how many packs are out on one of its days, at most; empty: all in the store."


def stock_sheet(book: Workbook, styles: Styles, portfolio: Portfolio) -> None:
    """Pieces that are out first, then those that stay in the store."""
    page = Page(book, styles, "Stock", "Where each piece stands", NOTE, portfolio.name)
    weeks = _weeks([one for piece in portfolio.pieces for one in piece.stands])
    columns = [
        Col("Piece", 28, "strong"),
        Col("Kept at", 12),
        Col("kg a pack", 7, "whole"),
        Col("Packs", 7, "whole"),
        Col("Stands in", 40),
    ]
    table = Table(page, [*columns, *(Col(_heading(first), 6.5, "mark") for first, _ in weeks)])
    ordered = sorted(portfolio.pieces, key=lambda piece: not piece.stands)
    for piece in ordered:
        _row(table, piece, weeks, len(columns))
    page.sheet.freeze_panes(FIRST, 2)


def _weeks(stands: Sequence[Standing]) -> list[tuple[date, date]]:
    """First and last day of each column: whole weeks from Monday on, as many together as needed."""
    dated = [(one.first, one.until) for one in stands if one.first is not None and one.until is not None]
    if not dated:
        return []
    monday = min(first for first, _ in dated)
    monday -= timedelta(days=monday.weekday())
    count = (max(until for _, until in dated) - monday).days // 7 + 1
    each = -(-count // MOST_WEEKS)
    starts = [monday + WEEK * number for number in range(0, count, each)]
    return [(start, start + WEEK * each - timedelta(days=1)) for start in starts]


def _heading(monday: date) -> str:
    return f"{monday.day} {MONTHS[monday.month - 1][:SHORT]}"


def _row(table: Table, piece: Piece, weeks: Sequence[tuple[date, date]], before: int) -> None:
    page, styles = table.page, table.page.styles
    weight = None if piece.weight_kg is None else float(piece.weight_kg)
    where = "\n".join(_stands(one, piece) for one in piece.stands) or "in the store"
    if piece.missed:
        where += f"\nwanted as well: {', '.join(piece.missed)}"
    row = table.row(piece.piece, [piece.name, piece.place, weight, piece.packs, where, *[None] * len(weeks)])
    for number, (first, until) in enumerate(weeks):
        out = _most_out(piece, first, until)
        if out:
            full: dict[str, object] = {"bg_color": palette.TEAL, "font_color": palette.WHITE, "bold": True}
            look = full if out >= piece.packs else {"bg_color": palette.BAR}
            page.put(row, 1 + before + number, out, styles("mark", bottom=1, bottom_color=palette.LINE, **look))


def _stands(one: Standing, piece: Piece) -> str:
    packs = f", {one.packs} of {piece.packs}" if piece.packs > 1 else ""
    if one.first is None or one.until is None:
        return f"{one.house}{packs}: all the time (no dates)"
    return f"{one.house}{packs}: {day(one.first)} to {day(one.until)}"


def _most_out(piece: Piece, first: date, until: date) -> int:
    """Packs that are out on the fullest day of some days."""
    days = [first + timedelta(days=number) for number in range((until - first).days + 1)]
    return max(sum(one.packs for one in piece.stands if _there(one, on)) for on in days)


def _there(one: Standing, on: date) -> bool:
    return one.first is None or one.until is None or one.first <= on <= one.until


def vans_sheet(book: Workbook, styles: Styles, portfolio: Portfolio) -> None:
    """Every slot of every van by day and hour, with what to load and where it is kept."""
    note = "What each run carries, as a list to load by; kilograms as far as the catalogue knows them."
    page = Page(book, styles, "Vans", "When the van goes where", note, portfolio.name)
    several = any(run.van for run in portfolio.runs)
    columns = [Col("Day", 16, "strong"), Col("From", 8), Col("To", 8), *([Col("Van", 12)] if several else [])]
    columns += [Col("House", 22, "strong"), Col("Way", 12), Col("Pieces", 48)]
    columns += [Col("Load kg", 9, "whole"), Col("May carry kg", 11, "whole")]
    table = Table(page, columns)
    for number, run in enumerate(portfolio.runs, start=1):
        van = [run.van] if several else []
        window = [clock(run.start_minute), clock(run.end_minute)]
        may = None if run.load_kg is None else float(run.load_kg)
        values = [day(run.on), *window, *van, run.house, run.way, _pieces(run), float(run.weight_kg), may]
        table.row(f"v{number}", values)


def _pieces(run: Run) -> str:
    lines = [f"{packs} × {name}" + (f" ({place})" if place else "") for name, packs, place in run.carried]
    lines += [f"the weight of {count(run.unweighed, 'pack')} is not known"] if run.unweighed else []
    return "\n".join(lines) or "nothing from the stock"
