"""The words of a quote in the brief."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from budgetfix.brief.quote import QuoteWords
from budgetfix.intake.brief_quote import WANTED_QUOTE as WANTED
from tests.intake.test_brief import read, sound


def test_all_words(tmp_path: Path) -> None:
    """For whom, by whom, until when, and what else is agreed to."""
    text = "quote: {for: the seller, by: our firm, until: 2026-06-02, agree: [the keys stay with us, no pets]}"
    assert sound(tmp_path, text).quote == QuoteWords(
        addressee="the seller", maker="our firm", until=date(2026, 6, 2), agree=("the keys stay with us", "no pets")
    )
    assert sound(tmp_path, "budget: 5").quote == QuoteWords()


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("quote: yes please", f"found 'yes please', wanted {WANTED}"),
        ("quote: {to: me}", f"found 'to', wanted {WANTED}; known here: for, by, until, agree"),
        ("quote: {until: soon}", f"found 'soon', wanted {WANTED}; a date such as 2026-06-06"),
        ("quote: {for: [a, b]}", f"found a list, wanted {WANTED}"),
    ],
)
def test_wrong_values(tmp_path: Path, typed: str, said: str) -> None:
    """Each message, word for word: where, what was found, what was wanted."""
    assert read(tmp_path, typed)[1] == [f"brief.yaml [line 1] {said}"]
