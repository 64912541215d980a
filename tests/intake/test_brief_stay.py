"""The days of a stay in the brief."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from budgetfix.brief.stay import Stay
from budgetfix.intake.brief_stay import WANTED_STAY as WANTED
from tests.intake.test_brief import read, sound


def test_both_days(tmp_path: Path) -> None:
    """From the day of bringing to the day of taking back: that last day is not paid for."""
    stay = sound(tmp_path, "stay: {from: 2026-06-04, until: 2026-07-04}").stay
    assert stay == Stay(first=date(2026, 6, 4), until=date(2026, 7, 4))
    assert stay.days == 30
    assert sound(tmp_path, "budget: 5").stay is None


def test_days_to_fetch_and_clean(tmp_path: Path) -> None:
    """Days after the last one on which no other house may have the pieces; none where nothing is said."""
    stay = sound(tmp_path, "stay: {from: 2026-06-04, until: 2026-07-04, turnaround: 2}").stay
    assert stay is not None
    assert (stay.turnaround_days, stay.days) == (2, 30)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("stay: 30", f"found 30, wanted {WANTED}"),
        ("stay: {from: 2026-06-04}", f"found nothing, wanted {WANTED}; a date such as 2026-06-06"),
        (
            "stay: {from: 2026-06-04, until: soon}",
            f"found 'soon', wanted {WANTED}; a date such as 2026-06-06",
        ),
        (
            "stay: {from: 2026-06-04, till: 2026-07-04}",
            f"found 'till', wanted {WANTED}; known here: from, until, turnaround",
        ),
        ("stay: {from: 2026-06-04, until: 2026-06-04}", f"found a date, wanted {WANTED}; later than `from`"),
        (
            "stay: {from: 2026-06-04, until: 2026-07-04, turnaround: -1}",
            f"found -1, wanted {WANTED}; whole days such as 1",
        ),
    ],
)
def test_wrong_values(tmp_path: Path, typed: str, said: str) -> None:
    """Each message, word for word: where, what was found, what was wanted."""
    assert read(tmp_path, typed)[1] == [f"brief.yaml [line 1] {said}"]
