"""Days by name."""

from __future__ import annotations

import calendar
import locale
from datetime import date

import pytest

from budgetfix.base.days import DAYS, MONTHS, day_words


def test_a_day_in_words() -> None:
    """The day without a nought before it, the month in full."""
    assert day_words(date(2027, 11, 30)) == "30 November 2027"
    assert day_words(date(2026, 6, 4)) == "4 June 2026"


def test_names_are_those_of_the_calendar_in_any_language_of_the_machine() -> None:
    """Against the standard library's calendar, in the C locale; ours do not follow another one."""
    before = locale.setlocale(locale.LC_TIME)
    try:
        locale.setlocale(locale.LC_TIME, "C")
        assert list(DAYS) == list(calendar.day_name)
        assert list(MONTHS) == list(calendar.month_name)[1:]
        try:
            locale.setlocale(locale.LC_TIME, "de_DE.UTF-8")
        except locale.Error:
            pytest.skip("no other language here")
        assert day_words(date(2027, 5, 1)) == "1 May 2027"
    finally:
        locale.setlocale(locale.LC_TIME, before)
