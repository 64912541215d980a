"""Rooms that are never left half done, as the brief names them."""

from __future__ import annotations

import pytest

from budgetfix.brief.whole_days import WholeDays
from budgetfix.intake.brief_days import read_days


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("all", WholeDays(everywhere=True)),
        (["bedroom", "hall"], WholeDays(rooms=("bedroom", "hall"))),
        ("bedroom; hall", WholeDays(rooms=("bedroom", "hall"))),
    ],
)
def test_rooms_by_name_or_all(typed: object, read: WholeDays) -> None:
    """A list, names with semicolons, or all."""
    assert read_days(typed) == read


def test_nothing_named_is_a_slip() -> None:
    """An empty list says nothing."""
    with pytest.raises(ValueError, match="name a room, or leave it out"):
        read_days([])


def test_which_rooms_are_covered() -> None:
    """The named ones, or every one."""
    assert WholeDays(rooms=("bedroom",)).covers("bedroom")
    assert not WholeDays(rooms=("bedroom",)).covers("hall")
    assert WholeDays(everywhere=True).covers("hall")
