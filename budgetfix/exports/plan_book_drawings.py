"""The sheet `Drawings`: each pair of before and after side by side, no pair cut in two by a page's end."""

from __future__ import annotations

import io
from collections.abc import Sequence
from itertools import groupby

from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.drawings.picture import Picture
from budgetfix.exports.plan_book_page import Page, Styles
from budgetfix.outcome.book import PlanBook

ACROSS, SCALE = 455, 70
"""Pixels that a picture is wide on the sheet, and the scale in print: two of them fit on A4 and on Letter, upright."""
COLUMNS, CHARACTERS = 2, 65
ROW = 20
"""Pixels of a plain row (15 points)."""
PAGE = 1230
"""Pixels of a printed page below the sheet's heading, on the shorter of the two papers."""
TOP = 3
"""First row below the heading, from 0."""


def drawings_sheet(book: Workbook, styles: Styles, plan: PlanBook, pictures: Sequence[Picture]) -> None:
    """Lay out the sheet; nothing where there is nothing to see."""
    if not pictures:
        return
    note = "Numbers in circles are the numbers of the steps on the sheet Do."
    page = Page(book, styles, "Drawings", "What changes, before and after", note, plan.title)
    page.sheet.set_portrait()
    page.sheet.set_print_scale(SCALE)
    page.sheet.set_column(1, COLUMNS, CHARACTERS)
    row, used, breaks = TOP, 70, []
    for _, pair in groupby(pictures, key=lambda one: (one.room, one.view)):
        both = list(pair)
        tall = ROW + max(round(one.height * ACROSS / one.width) for one in both) + ROW
        if used + tall > PAGE and row > TOP:
            breaks.append(row)
            used = 0
        row = _pair(page, row, both)
        used += tall
    page.sheet.set_h_pagebreaks(breaks)
    page.sheet.freeze_panes(TOP - 1, 0)


def _pair(page: Page, row: int, both: Sequence[Picture]) -> int:
    """One pair with its titles; returns the row below."""
    from budgetfix.exports.drawings.raster import SHARP, png

    for place, one in enumerate(both, start=1):
        page.put(row, place, one.title, page.styles("", bold=True, font_color=palette.TEAL))
        scale = ACROSS / (one.width * SHARP)
        page.sheet.insert_image(
            row + 1,
            place,
            f"{one.view} {one.when}.png",
            {
                "image_data": io.BytesIO(png(one)),
                "x_scale": scale,
                "y_scale": scale,
                "description": one.words,
                "object_position": 2,
            },
        )
    tall = max(round(one.height * ACROSS / one.width) for one in both)
    return row + 1 + -(-tall // ROW) + 1
