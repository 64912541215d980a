"""When to buy, as entries of the calendar, where money comes by date: one a day on which anything is to be bought."""

from __future__ import annotations

from typing import TYPE_CHECKING

from budgetfix.base.money import write_money
from budgetfix.exports.calendar_entry import clean, stamp
from budgetfix.exports.lettering import count
from budgetfix.exports.money_days import from_words
from budgetfix.outcome.book import MoneyLine, PlanBook

if TYPE_CHECKING:
    from icalendar import Event, Todo

GOODS = ("product", "tool", "hire")
"""Kinds of lines that somebody sees to in a shop."""


def buy_entries(book: PlanBook) -> list[Event | Todo]:
    """All-day entries, or tasks where sessions have no dates; none where all money is there at once."""
    if not book.purses:
        return []
    phases = sorted({line.phase for line in book.money if line.kind in GOODS})
    return [_entry(book, phase, [line for line in book.money if line.phase == phase]) for phase in phases]


def _entry(book: PlanBook, phase: int, lines: list[MoneyLine]) -> Event | Todo:
    from icalendar import Event, Todo

    on, session = lines[0].buy_on, lines[0].buy_session
    entry: Event | Todo = Todo() if on is None else Event()
    stamp(entry, book, f"buy {phase + 1}")
    goods = [line for line in lines if line.kind in GOODS]
    entry.add("summary", clean(f"{book.title}: buy {count(len(goods), 'thing')}"))
    if on is not None:
        entry.add("dtstart", on)
    entry.add("description", clean("\n".join(_words(book, lines, from_words(on, session)))))
    return entry


def _words(book: PlanBook, lines: list[MoneyLine], when: str) -> list[str]:
    spent = write_money(sum(line.line_minor for line in lines), book.currency)
    found = [f"From {when} on the money for this is there: {spent} {book.currency} in all.", ""]
    for line in lines:
        if line.line_minor or line.kind in GOODS:
            packs = f"{line.packs} × " if (line.packs or 1) > 1 and line.kind == "product" else ""
            shop = f", {line.shop_name}" if line.shop_name and line.kind == "product" else ""
            found.append(f"- {packs}{line.name}{shop}: {write_money(line.line_minor, book.currency)}")
    return found
