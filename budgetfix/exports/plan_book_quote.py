"""The sheet `Quote`: what the client reads, by room, with live sums."""

from __future__ import annotations

from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette, quote_words
from budgetfix.exports.lettering import lines_on_paper
from budgetfix.exports.plan_book_page import AIR_POINTS, LINE_POINTS, Col, Formula, Page, Styles, Table, Value
from budgetfix.exports.quote_words import Group
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.quote import Quote

ONE_PAGE = 64
"""Rows up to which all stands on one page."""
WHAT = "What we do"


def quote_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> None:
    """Lay out the sheet; nothing for a job without a quote."""
    quote = plan.quote
    if quote is None:
        return
    parts = (quote_words.heading(quote), quote_words.standing(quote))
    note = " · ".join(part for part in parts if part)
    page = Page(book, styles, "Quote", f"Quote: {quote.title}", note, plan.title)
    page.sheet.set_portrait()
    table = Table(page, (Col(WHAT, 60), *(Col(f"{one.letter} {one.name}", 18, "money") for one in quote.options)))
    sums = [_group(table, quote, group) for group in quote_words.groups(quote)]
    _total(table, quote, sums)
    _sentences(table, quote)
    page.sheet.fit_to_pages(1, 1 if table.next_row <= ONE_PAGE else 0)


def _group(table: Table, quote: Quote, group: Group) -> int:
    """The lines of one room under their sums; gives the row of the sums."""
    first, last = table.next_row + 2, table.next_row + 1 + len(group.rows)
    letters = [xl_col_to_name(place) for place in range(2, 2 + len(quote.options))]
    amounts = [table.page.styles.amount(minor) for minor in group.sums]
    sums: list[Value] = [
        Formula(f"=SUM({letter}{first}:{letter}{last})", amount)
        for letter, amount in zip(letters, amounts, strict=True)
    ]
    place = table.row(group.heading, [group.heading, *sums], look=_room_look)
    for row in group.rows:
        prices: list[Value] = [
            quote_words.NOT_IN if minor is None else table.page.styles.amount(minor) for minor in row.prices
        ]
        table.row("", [row.words, *prices], look=_line_look)
    return place


def _total(table: Table, quote: Quote, sums: list[int]) -> None:
    values: list[Value] = []
    for place, option in enumerate(quote.options, start=2):
        cells = "+".join(f"{xl_col_to_name(place)}{row + 1}" for row in sums)
        values.append(Formula(f"={cells}", table.page.styles.amount(option.total_minor)))
    table.row("all", ["In all", *values], look=_total_look)


def _room_look(heading: str) -> dict[str, object]:
    return {"bg_color": palette.STRAW, "bold": True, "font_color": palette.TEAL, "indent": 1 if heading == WHAT else 0}


def _line_look(heading: str) -> dict[str, object]:
    return {"indent": 2} if heading == WHAT else {}


def _total_look(heading: str) -> dict[str, object]:
    return {"bg_color": palette.TEAL, "bold": True, "font_color": palette.WHITE, "indent": 1 if heading == WHAT else 0}


def _sentences(table: Table, quote: Quote) -> None:
    """When, what is included, what the client agrees to."""
    table.next_row += 1
    dates = tuple(f"{what}: {when}." for what, when in quote_words.dates(quote))
    blocks = (
        ("When", dates),
        ("Included", quote_words.included(quote)),
        ("What you agree to", quote_words.agreed(quote)),
    )
    for heading, lines in blocks:
        if lines:
            _block(table, heading, lines)


def _block(table: Table, heading: str, lines: tuple[str, ...]) -> None:

    page, last = table.page, len(table.columns)
    page.put(table.next_row, 1, heading, page.styles("strong", font_color=palette.TEAL))
    table.next_row += 1
    width = sum(column.width for column in table.columns) - 2
    for line in lines:
        look = page.styles("text", valign="top")
        page.sheet.merge_range(table.next_row, 1, table.next_row, last, "", look)
        page.put(table.next_row, 1, line, look)
        page.sheet.set_row(table.next_row, lines_on_paper(line, width) * LINE_POINTS + AIR_POINTS)
        table.next_row += 1
    table.next_row += 1
