"""A plan as a workbook that stays useful: ticks, real prices and real minutes go back into it.

Written with XlsxWriter: each formula is stored with its value, so phones and previews show numbers, and with a
fixed date of creation the same plan gives the same bytes. Formulas use plain ranges and defined names only.
"""

from __future__ import annotations

import io
from datetime import datetime, time

from xlsxwriter.workbook import Workbook

from budgetfix.base.fingerprint import PROPERTY, fingerprint
from budgetfix.exports.drawings.picture import Picture
from budgetfix.exports.files import LONG_AGO
from budgetfix.exports.plan_book_buy import buy_sheet
from budgetfix.exports.plan_book_chances import chances_sheet
from budgetfix.exports.plan_book_costing import costing_sheet
from budgetfix.exports.plan_book_do import do_sheet
from budgetfix.exports.plan_book_drawings import drawings_sheet
from budgetfix.exports.plan_book_faults import faults_sheet
from budgetfix.exports.plan_book_kept import kept_sheet
from budgetfix.exports.plan_book_landlord import landlord_sheet
from budgetfix.exports.plan_book_more import left_out_sheet, more_sheet
from budgetfix.exports.plan_book_page import BASE, Styles, clean
from budgetfix.exports.plan_book_people import people_sheets
from budgetfix.exports.plan_book_quote import quote_sheet
from budgetfix.exports.plan_book_record import record_sheet
from budgetfix.exports.plan_book_summary import Links, fill_summary, summary_page
from budgetfix.outcome.book import PlanBook


def plan_book(plan: PlanBook, pictures: tuple[Picture, ...] = ()) -> bytes:
    """The workbook of a plan: Summary, Buy, Do, a sheet for each of several people, Before and after, Left out,
    What more buys, Chances.

    Drawings and how everything was follow, for a measured room that changes.
    """
    data = io.BytesIO()
    safe = {"strings_to_formulas": False, "strings_to_urls": False, "strings_to_numbers": False}
    book = Workbook(data, {"in_memory": True, "default_format_properties": dict(BASE), **safe})
    created = datetime.combine(plan.ordered or LONG_AGO, time())
    book.set_properties({"title": clean(plan.title)[:250], "created": created})
    styles = Styles(book, plan.currency)
    first = summary_page(book, styles, plan)
    buy = buy_sheet(book, styles, plan)
    do = do_sheet(book, styles, plan)
    people_sheets(book, styles, plan, do)
    faults = faults_sheet(book, styles, plan)
    left_out_sheet(book, styles, plan)
    more_sheet(book, styles, plan)
    chances_sheet(book, styles, plan)
    drawings_sheet(book, styles, plan, pictures)
    kept_sheet(book, styles, plan)
    landlord_sheet(book, styles, plan)
    quote_sheet(book, styles, plan)
    costing_sheet(book, styles, plan)
    record_sheet(book, styles, plan)
    fill_summary(first, plan, Links(buy, do, faults))
    for name, place in first.names.items():
        if " " not in name:
            book.define_name(name, f"={place}")
    first.sheet.activate()
    book.set_custom_property(PROPERTY, fingerprint(styles.typed), "text")
    book.close()
    return data.getvalue()
