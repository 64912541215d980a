from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as some

from budgetfix.exports.lettering import columns_of
from budgetfix.exports.lines import WIDTH, bar, cut, hours_words, left, plain, right, wrapped


@given(some.text(max_size=200), some.integers(1, 90))
def test_columns_stay_straight_whatever_was_typed(text: str, width: int) -> None:
    """A cell is exactly as wide as its column for any text in any script."""
    assert columns_of(cut(text, width)) <= width
    assert columns_of(left(text, width)) == columns_of(right(text, width)) == width


@given(some.text(max_size=400), some.integers(0, 20))
def test_no_line_runs_over_the_edge(text: str, indent: int) -> None:
    """Wrapped text keeps to 79 columns and loses no letter but spaces and breaks."""
    lines = wrapped(text, indent)
    assert all(columns_of(line) <= WIDTH for line in lines)
    assert "".join("".join(lines).split()) == "".join(text.split())


def test_words_are_cut_with_a_mark() -> None:
    """Eight letters in five columns keep four; a wide letter that would stick out goes whole."""
    assert [cut("bookcase", 5), cut("棚板棚板", 6), cut("two\nlines", 20)] == ["book…", "棚板…", "two lines"]


def test_wrapped_lines_hang_under_their_heading() -> None:
    """Spaces that line a heading up stay; other lines are indented; a word too long is broken."""
    assert wrapped("BUY   rod, panels, bulbs", 6, 18) == ["BUY   rod, panels,", "      bulbs"]
    assert wrapped("x" * 12, 2, 8) == ["x" * 6, "  " + "x" * 6]


@pytest.mark.parametrize(
    ("part", "whole", "blocks"), [(0, 10, 0), (1, 1000, 1), (5, 10, 20), (10, 10, 40), (11, 10, 40), (3, 0, 0)]
)
def test_a_bar_shows_whatever_is_left(part: int, whole: int, blocks: int) -> None:
    """Something above nothing is at least one block, and no bar is longer than its column."""
    assert bar(part, whole) == "█" * blocks


def test_ascii_where_nothing_else_shows() -> None:
    """Our own signs get a twin of the same width; what people typed becomes as many question marks."""
    assert plain("█ … – 棚 e\u0301", False) == "# > - ?? e"
    assert plain("█ …", True) == "█ …"


def test_minutes_in_words() -> None:
    """Hours and minutes, each left out where it is 0."""
    assert [hours_words(minutes) for minutes in (0, 59, 120, 135)] == ["0 min", "59 min", "2 h", "2 h 15 min"]
