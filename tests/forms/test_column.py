"""One column reads one cell."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest

from budgetfix.forms.column import Column, Unread


@pytest.mark.parametrize(
    ("kind", "raw", "value"),
    [
        ("length", "6' 2\"", 74 * 25.4),
        ("length", None, None),
        ("length", "  ", None),
        ("yes-no", "✓", True),
        ("yes-no", "x", True),
        ("yes-no", 1, True),
        ("yes-no", True, True),
        ("yes-no", "No", False),
        ("yes-no", 0, False),
        ("yes-no-unknown", "not sure", "not sure"),
        ("count", 3, 3),
        ("count", 3.0, 3),
        ("count", "3", 3),
        ("number", "2.4", 2.4),
        ("percent", "10%", Fraction(1, 10)),
        ("turn", "left", -90.0),
        ("turn", 45, 45.0),
        ("turn", "-45°", -45.0),
        ("wall", " b ", "B"),
        ("text", 12.0, "12"),
        ("text", " Big  window ", "Big window"),
    ],
)
def test_read(kind: str, raw: object, value: object) -> None:
    """Ticks, counts, shares, turns and words are read as people mean them."""
    read = Column("f", "Field", kind=kind).read(raw, "in")  # type: ignore[arg-type]
    assert read == (pytest.approx(value) if isinstance(value, float) else value)


@pytest.mark.parametrize(
    ("kind", "raw", "advice"),
    [
        ("length", date(2026, 5, 8), "found a date; if you typed 5/8, write 0 5/8"),
        ("length", 46150, "the spreadsheet made a date of it; if you typed 5/8, write 0 5/8"),
        ("length", "1,5 m", "write a point, not a comma: 1.5 m"),
        ("length", "5O in", ""),
        ("length", 0, ""),
        ("length", ["1"], "that is not a length"),
        ("count", 2.5, ""),
        ("count", -1, ""),
        ("count", "2,5", "write a point, not a comma: 2.5"),
        ("number", "many", ""),
        ("number", True, ""),
        ("yes-no", "perhaps", ""),
        ("turn", "back", ""),
        ("turn", 200, ""),
        ("choice", "blue", ""),
        ("text", True, ""),
        ("text", ["a"], "write one value, not a list"),
    ],
)
def test_refused(kind: str, raw: object, advice: str) -> None:
    """What cannot be meant is refused, with advice where there is some."""
    column = Column("f", "Field", kind=kind, positive=True, choices=("red",))  # type: ignore[arg-type]
    with pytest.raises(Unread) as refused:
        column.read(raw, "in")
    assert str(refused.value) == advice


def test_choices_and_suggestions() -> None:
    """Big and small letters do not matter; a suggestion may be left for a word of one's own."""
    assert Column("f", "F", kind="choice", choices=("no leaf",)).read("No Leaf", "mm") == "no leaf"
    assert Column("f", "F", kind="suggestion", choices=("sofa",)).read("Sofa", "mm") == "sofa"
    assert Column("f", "F", kind="suggestion", choices=("sofa",)).read("Gong", "mm") == "Gong"
