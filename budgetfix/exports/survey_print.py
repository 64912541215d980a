"""How the survey form prints: landscape, large enough to write on, wide sheets on two pages with the names on both."""

from __future__ import annotations

from xlsxwriter.worksheet import Worksheet

from budgetfix.forms.column import Column

LIVE_WIDE = 16
"""Width of column A, in characters."""
HEADED = 0.9
"""Inches above a table for its title."""
HEADINGS = 3
"""The row of headings, counted from 0; hints stand below."""
ONE_PAGE = 150
"""Characters that one page takes across without print too small to write on."""


def pages(columns: tuple[Column, ...]) -> int:
    """How many pages a sheet takes across."""
    return 1 if LIVE_WIDE + sum(column.wide for column in columns) <= ONE_PAGE else 2


def print_table(page: Worksheet, columns: tuple[Column, ...], title: str, how: str, last: int) -> None:
    """One table, as large as fits; column A and the names stand on each page, the second page follows the first.

    The title is a header, whole on each page too; one line, since a break in it does not survive a marked copy.
    Whoever prints decides where to cut: how wide letters are is known to nobody else. `last`: the last row, from 0.
    """
    print_page(page, pages(columns), HEADED)
    page.set_header(f"&L&B&16{plain(title)}&B&10    {plain(how)}")
    page.print_area(HEADINGS, 0, last, len(columns))
    page.repeat_rows(HEADINGS, HEADINGS + 1)
    if pages(columns) > 1:
        page.repeat_columns(0, 1)
        page.print_across()


def plain(text: str) -> str:
    """Text in a header: an ampersand would be a command, and a digit right after a size would belong to it."""
    return f" {text.replace('&', '&&')}"


def print_page(page: Worksheet, across: int = 1, top: float = 0.5) -> None:
    """Paper, margins and footer of every sheet."""
    page.set_landscape()
    page.set_paper(9)
    page.fit_to_pages(across, 0)
    page.set_margins(left=0.4, right=0.4, top=top, bottom=0.75)
    page.set_footer("&L&9&A&C&9Room survey&R&9page &P of &N")
