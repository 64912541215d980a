"""Days by name: the same words on every machine, whatever its language."""

from __future__ import annotations

from datetime import date

DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def day_words(on: date) -> str:
    """`30 November 2027`."""
    return f"{on.day} {MONTHS[on.month - 1]} {on.year}"
