"""Text for a narrow terminal: nothing is lost, nothing is wider than it may be."""

from __future__ import annotations

import pytest

from budgetfix.exports.inspect_screen import inspect_text
from budgetfix.exports.lettering import columns_of
from budgetfix.exports.lines import wrapped
from budgetfix.exports.narrow import LEAST, narrow
from budgetfix.exports.plan_screen import plan_text
from budgetfix.pipeline.manual import page_of
from tests.exports.sample_book import ACCENTS, BOOK, LONG, LONG_TEXT, NO_HOURS, NOTHING, RTL, many
from tests.exports.test_inspect_screen import SEEN

PLANS = [plan_text(book, ("a/plan.xlsx", "a/plan.html")) for book in (BOOK, NO_HOURS, NOTHING, LONG_TEXT, many(12))]
PAGES = [page_of(slug) or "" for slug in ("rod-too-narrow", "walkway-too-narrow", "longer-rod")]


@pytest.mark.parametrize("width", [24, 39, 59, 78])
@pytest.mark.parametrize("text", [*PLANS, *PAGES])
def test_nothing_is_wider_and_nothing_is_lost(text: str, width: int) -> None:
    """Every word is still there in its order, bars apart, in lines of at most that many columns."""
    made = narrow(text, width)
    assert max(map(columns_of, made.split("\n"))) <= width
    words = [word for word in text.split() if not word.startswith("█")]
    again = [word for word in made.split() if not word.startswith("█")]
    assert "".join(again) == "".join(words)


def test_at_full_width_it_is_left_alone() -> None:
    """79 columns and more: to the letter."""
    for text in (*PLANS, *PAGES):
        assert narrow(text, 79) == text
        assert narrow(text, 200) == text


def test_a_broken_sentence_is_joined_before_it_is_broken_anew() -> None:
    """No ragged short lines in between; a list below a sentence stays a list."""
    text = "\n".join([*wrapped("NOTE  " + "one and two and three " * 6, 6), "NOTE  short", "", "  a list"])
    lines = narrow(text, 40).split("\n")
    assert all(columns_of(line) > 25 for line in lines[:-4])
    assert all(line.startswith("      ") for line in lines[1:-4])
    assert lines[-3:] == ["NOTE  short", "", "  a list"]


def test_bars_keep_their_ratio() -> None:
    """Both bars of the verdict shrink alike."""
    bars = [line.count("█") for line in narrow(PLANS[0], 47).split("\n") if "█" in line]
    assert bars[0] == (47 - 27)
    assert bars[1] == pytest.approx(bars[0] * 600 / 1553, abs=1)


def test_less_than_anybody_has_is_not_tried() -> None:
    """A terminal of ten columns breaks the lines itself."""
    assert max(map(columns_of, narrow("word " * 30, 10).split("\n"))) <= LEAST


@pytest.mark.parametrize("width", [39, 59])
def test_each_fault_is_a_paragraph_on_a_narrow_terminal(width: int) -> None:
    """Points and fault, then what was measured; commands stand on lines of their own."""
    lines = narrow(inspect_text(SEEN, width=width), width).split("\n")
    assert max(map(columns_of, lines)) <= width
    assert "  375  Rod too narrow" in lines
    text = " ".join(" ".join(lines).split())
    assert "Big window: 2 in; sound: 8 in or more" in text
    assert lines[-1] == "  budgetfix plan front-room"


@pytest.mark.parametrize("name", [LONG, RTL, ACCENTS])
def test_names_from_all_the_world_fit(name: str) -> None:
    """A name without a space is broken where it must be."""
    assert max(map(columns_of, narrow(f"   1  {name}{name}   12     3.00", 40).split("\n"))) <= 40
