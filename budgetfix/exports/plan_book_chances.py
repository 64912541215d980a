"""The sheet `Chances`: how sure it is that all of it fits, what falls off first, and how quick the household is."""

from __future__ import annotations

from xlsxwriter.workbook import Workbook

from budgetfix.exports import palette
from budgetfix.exports.chance_words import (
    SAME_TWICE,
    chance_lines,
    leave_words,
    price_lines,
    price_words,
    session_words,
)
from budgetfix.exports.pace_words import copied, pace_rows
from budgetfix.exports.plan_book_page import Col, Page, Styles, Table, Value
from budgetfix.outcome.book import PlanBook
from budgetfix.outcome.odds import DRAWS, Chances, in_ten

NAME = "Chances"
COLUMNS = (
    Col("What", 50, "strong"),
    Col("How often", 15),
    Col("Points", 10, "whole"),
    Col("Minutes", 10, "whole"),
    Col("What that means", 68, "quiet"),
)
NOTE = f"The plan was played out {DRAWS:,} times with low, likely and high minutes. {SAME_TWICE}"
PART: dict[str, object] = {"bg_color": palette.STRAW, "bold": True, "font_color": palette.TEAL}


def chances_sheet(book: Workbook, styles: Styles, plan: PlanBook) -> None:
    """Lay out the sheet; nothing where nothing can be told."""
    told = plan.chances
    if (told is None or not told.said) and plan.paces is None:
        return
    page = Page(
        book, styles, NAME, "How sure is this plan?", NOTE if told is not None and told.said else "", plan.title
    )
    table = Table(page, COLUMNS)
    if told is not None and told.said:
        _told(table, plan, told)
        _prices(table, plan, told)
    _paces(table, plan)


def _told(table: Table, plan: PlanBook, told: Chances) -> None:
    lines = [line for line in chance_lines(plan) if line not in price_lines(plan)]
    if told.fits is not None:
        _part(table, "all", "All of it fits", in_ten(told.fits), " ".join(lines[1:]))
    elif lines:
        _part(table, "all", "All work together", "", " ".join(lines))
    if told.sessions:
        _part(
            table, "sessions", "Ends with nothing put off", "", "Points and minutes are those of what to leave first."
        )
        _sessions(table, plan, told)
    if told.falls:
        _part(
            table,
            "falls",
            "Falls off, most often first",
            "",
            "What finds no later session either; points lost if it alone is missing.",
        )
        _falls(table, plan, told)


def _part(table: Table, id: str, heading: str, often: str, words: str) -> None:
    """A row that begins a part of the table."""
    plain: dict[str, object] = {"bg_color": palette.STRAW, "font_color": palette.INK}
    table.row(id, [heading, often, None, None, words], look=lambda at: plain if at == COLUMNS[-1].heading else PART)


def _sessions(table: Table, plan: PlanBook, told: Chances) -> None:
    rows = {row.number: row for row in plan.sessions or ()}
    for one in told.sessions:
        left: list[Value] = [one.leave_worth, one.leave_minutes] if one.leave else [None, None]
        name = session_words(rows[one.session])
        table.row(f"session {one.session}", [name, in_ten(one.times), *left, leave_words(one)])


def _falls(table: Table, plan: PlanBook, told: Chances) -> None:
    for one in told.falls:
        minutes = sum(task.person_minutes for task in plan.tasks if task.candidate == one.id)
        table.row(one.id, [one.name, in_ten(one.times), one.worth, minutes, None])


def _paces(table: Table, plan: PlanBook) -> None:
    if plan.paces is None:
        return
    words = f"For the next room's brief: {copied(plan.paces)}"
    _part(table, "paces", "How quick this household is", "times", words)
    for row in pace_rows(plan.paces):
        table.row(f"pace {row.kind}", [row.name, row.times, None, row.minutes, row.words])


def _prices(table: Table, plan: PlanBook, told: Chances) -> None:
    if told.money is None:
        return
    often = "" if told.money.covered is None else in_ten(told.money.covered)
    _part(table, "prices", "The money covers the prices", often, " ".join(price_lines(plan)))
    for one in told.money.ranges:
        table.row(f"price {one.id}", [one.name, None, None, None, price_words(one, plan.currency)])
