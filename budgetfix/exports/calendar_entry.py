"""What every entry of a calendar has: a name that stays, a stamp, and text that a calendar can hold."""

from __future__ import annotations

import hashlib
import unicodedata
from datetime import UTC, datetime, time
from typing import TYPE_CHECKING

from budgetfix.exports.files import LONG_AGO
from budgetfix.outcome.book import PlanBook

if TYPE_CHECKING:
    from icalendar import Event, Todo


def stamp(entry: Event | Todo, book: PlanBook, what: str) -> None:
    """A session keeps its UID when the plan is made anew, so that a calendar replaces the entry."""
    name = f"{book.title}\n{book.room_words}\n{what}"
    entry.add("uid", f"{hashlib.sha256(name.encode('utf-8', 'replace')).hexdigest()[:32]}@budgetfix")
    entry.add("dtstamp", datetime.combine(book.ordered or LONG_AGO, time(), UTC))


def clean(text: str) -> str:
    """Section 3.3.11: text holds no control letters but the line break."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").replace("\t", " ")
    return "".join(letter for letter in lines if letter == "\n" or unicodedata.category(letter) not in ("Cc", "Cs"))
