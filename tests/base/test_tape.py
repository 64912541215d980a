"""Lengths as people type them."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from budgetfix.base.tape import in_unit, read_length, write_length

READ = [
    ("6' 2 1/2\"", "in", 74.5 * 25.4),
    ("6'2", "in", 74 * 25.4),
    ("5'-6\"", "in", 66 * 25.4),
    ("6’ 2”", "cm", 74 * 25.4),
    ("74-1/2", "in", 74.5 * 25.4),
    ("74 1/2", "in", 74.5 * 25.4),
    ("74.5", "in", 74.5 * 25.4),
    (74.5, "in", 74.5 * 25.4),
    ("6 ft 2 in", "mm", 74 * 25.4),
    ("8 ft", "mm", 96 * 25.4),
    ("1 m 88 cm", "in", 1880.0),
    ("188 cm", "in", 1880.0),
    ("1880mm", "in", 1880.0),
    ("1.88 m", "in", 1880.0),
    ("½", "in", 12.7),
    ("2½", "in", 63.5),
    ("5/8", "in", 15.875),
    ("0 5/8", "in", 15.875),
    (188, "cm", 1880.0),
    (0, "mm", 0.0),
    ("12.", "mm", None),
    ("11/2", "in", None),
    ("1,5 m", "in", None),
    ("6 2", "in", None),
    ("2 1/3", "in", None),
    ("⅓", "in", None),
    ("74 3/2", "in", None),
    ("6' 14\"", "in", None),
    ("6.5' 2\"", "in", None),
    ("2 in 3 ft", "in", None),
    ("1 m 88", "in", None),
    ("5O in", "in", None),
    ("", "in", None),
    ("-5", "in", None),
    (-5, "in", None),
    (True, "in", None),
    (float("nan"), "in", None),
    (float("inf"), "in", None),
    ("0x10", "in", None),
    ("9" * 400, "in", None),
    ("9" * 50, "in", None),
    (1e300, "mm", None),
    ("1e3", "mm", None),
    ("3_4", "in", None),
    ("74 -", "in", None),
    (None, "in", None),
]


@pytest.mark.parametrize(("typed", "unit", "mm"), READ, ids=lambda value: repr(value))
def test_what_a_tape_says(typed: object, unit: str, mm: float | None) -> None:
    """Every usual way to write a length is read; every slip is refused with a reason."""
    if mm is None:
        with pytest.raises(ValueError, match=r"\w{3}"):
            read_length(typed, unit)
    else:
        assert read_length(typed, unit) == pytest.approx(mm, abs=1e-9)


@pytest.mark.parametrize(
    ("typed", "reason"),
    [
        ("11/2", "11/2 is more than a whole one; did you mean 1 1/2?"),
        ("1,5 m", "write a point, not a comma: 1.5 m"),
        ("6 2", "two numbers without units; write 6' 2\" or 6.2"),
        ("-5", "a length here is never below 0"),
        ("5O in", "'5O in' cannot be read as a length"),
        ("6' 14\"", "14 in is a whole ft or more"),
    ],
)
def test_the_reason_is_said(typed: str, reason: str) -> None:
    """A refusal tells people what is wrong and what to write."""
    with pytest.raises(ValueError, match=f"^{re.escape(reason)}$"):
        read_length(typed, "in")


def test_negative_lengths_where_they_make_sense() -> None:
    """A hem may lie on the floor: below 0 is read where the field allows it."""
    assert read_length("-1 1/2 in", "in", negative=True) == pytest.approx(-38.1)


def test_yard_of_1959() -> None:
    """36 in is 914.4 mm: National Bureau of Standards Circular 572, Addendum (1960), redefinition of 1959."""
    assert read_length("36 in", "mm") == pytest.approx(914.4, abs=1e-9)
    assert read_length("27", "in") == pytest.approx(685.8, abs=1e-9)


def test_feet_and_inches_add_up() -> None:
    """8 ft 7 in + 12 ft 11 in = 21 ft 6 in: OpenStax, Prealgebra 2e, Systems of Measurement, exercise answer."""
    both = read_length("8 ft 7 in", "in") + read_length("12 ft 11 in", "in")
    assert both == pytest.approx(read_length("21 ft 6 in", "in"), abs=1e-9)
    assert both == pytest.approx(258 * 25.4, abs=1e-9)


def test_a_framed_picture() -> None:
    """8 in wide with 2 5/8 in each side is 13 1/4 in: OpenStax, Prealgebra 2e, Add and Subtract Mixed Numbers."""
    framed = read_length("8", "in") + 2 * read_length("2 5/8", "in")
    assert write_length(framed, "in") == "13 1/4 in"


@pytest.mark.parametrize(
    ("mm", "unit", "text"),
    [
        (165.1, "in", "6 1/2 in"),
        (0.0, "in", "0 in"),
        (12.7, "in", "1/2 in"),
        (-38.1, "in", "-1 1/2 in"),
        (1878.0, "mm", "1880 mm"),
        (1880.0, "cm", "188 cm"),
        (1885.0, "cm", "188.5 cm"),
        (12345.0, "cm", "1234.5 cm"),
    ],
)
def test_written_for_people(mm: float, unit: str, text: str) -> None:
    """Inches come in eighths, metric lengths to five millimetres."""
    assert write_length(mm, unit) == text


@given(st.integers(-4000, 4000))
def test_eighths_come_back(eighths: int) -> None:
    """Every eighth of an inch that is written reads back to itself."""
    mm = eighths * 3.175
    assert read_length(write_length(mm, "in"), "mm", negative=True) == pytest.approx(mm, abs=1e-6)


@given(st.integers(-4000, 4000), st.sampled_from(["mm", "cm"]))
def test_five_millimetres_come_back(fives: int, unit: str) -> None:
    """Every five millimetres that are written read back to themselves."""
    assert read_length(write_length(fives * 5.0, unit), "in", negative=True) == fives * 5.0


@given(st.floats(-1e5, 1e5, allow_nan=False), st.sampled_from(["mm", "cm", "in"]))
def test_written_is_near(mm: float, unit: str) -> None:
    """What is written for people is never farther off than half its step."""
    step = 3.175 if unit == "in" else 5.0
    assert abs(read_length(write_length(mm, unit), unit, negative=True) - mm) <= step / 2 + 1e-6


@given(st.integers(-64000, 64000), st.sampled_from(["mm", "cm", "in"]))
def test_numbers_for_cells_lose_nothing(sixtyfourths: int, unit: str) -> None:
    """A length goes into a cell and comes back to the same float."""
    mm = sixtyfourths * 25.4 / 64
    assert read_length(in_unit(mm, unit), unit, negative=True) == mm
