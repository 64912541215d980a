from __future__ import annotations

from datetime import date

import pytest

from budgetfix.exports.lettering import clock, columns_of, count, day, lines_on_paper, span


@pytest.mark.parametrize(
    ("text", "columns"), [("rod", 3), ("棚板", 4), ("e\u0301tage\u0300re", 7), ("ستارة", 5), ("", 0), ("a\u200bb", 2)]
)
def test_letters_take_the_columns_that_they_show(text: str, columns: int) -> None:
    """Wide letters take two columns, combining marks and zero-width letters none (Unicode UAX 11)."""
    assert columns_of(text) == columns


@pytest.mark.parametrize(
    ("text", "width", "lines"),
    [("", 10, 1), ("short", 10, 1), ("two words", 6, 2), ("one\ntwo", 10, 2), ("W" * 20, 10, 3), ("棚" * 10, 10, 2)],
)
def test_rows_are_high_enough(text: str, width: float, lines: int) -> None:
    """A text that does not fit its column takes as many lines as it wraps to, broad letters counted broad."""
    assert lines_on_paper(text, width) == lines


def test_minutes_and_days_read_the_same_everywhere() -> None:
    """No locale has a say in minutes, days, times and counts."""
    assert [span(0), span(45), span(60), span(205)] == ["0 min", "45 min", "1 h", "3 h 25 min"]
    assert (day(date(2026, 6, 6)), clock(545)) == ("Sat 6 Jun", "09:05")
    assert [count(1, "fault"), count(1200, "fault"), count(2, "remedy", "remedies")] == [
        "1 fault",
        "1,200 faults",
        "2 remedies",
    ]
