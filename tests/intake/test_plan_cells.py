"""Ticks, sums and minutes in all the ways in which people and spreadsheet programs write them."""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from budgetfix.base.money import digits_of, write_money
from budgetfix.intake.plan_cells import LONGEST_MINUTES, read_minutes, read_state, read_sum, read_tick


def refused(how: object, *given: object) -> str:
    """The advice with which a value is refused."""
    with pytest.raises(ValueError) as caught:  # noqa: PT011
        how(*given)  # type: ignore[operator]
    return str(caught.value)


@pytest.mark.parametrize(
    "value",
    ["✓", "✔️", "☑", "✅", "x", "X", " x ", "Yes", "y", "1", 1, 1.0, True, "TRUE", "ok", "OK!", "done", "bought"],
)
def test_a_tick_is_a_tick(value: object) -> None:
    """Signs, words and numbers that people put into a box, and what a check box of a spreadsheet holds."""
    assert read_tick(value) is True
    assert read_state(value) == "bought"


@pytest.mark.parametrize("value", [None, "", "  ", False, "FALSE", 0, "0", "no", "☐", "-", "not yet"])
def test_no_tick_is_none(value: object) -> None:
    """An empty box, however it is said."""
    assert read_tick(value) is False
    assert read_state(value) is None


def test_goods_can_go_back_and_be_sold_out() -> None:
    """Two more words are understood of goods, in any letters; of work they are not."""
    assert [read_state(word) for word in ("returned", "Sent back", " Returned. ")] == ["returned"] * 3
    assert [read_state(word) for word in ("sold out", "SOLD  OUT!", "out of stock")] == ["sold out"] * 3
    assert refused(read_tick, "returned") == ""


@pytest.mark.parametrize("value", ["maybe", 2, 0.5, "half", date(2026, 6, 1), "returned?", float("nan"), [], b"x"])
def test_a_doubtful_tick_is_refused(value: object) -> None:
    """Nobody guesses what was meant."""
    assert refused(read_state, value) == ""


@pytest.mark.parametrize(
    ("value", "currency", "minor"),
    [
        (43.5, "EUR", 4350), (0, "EUR", 0), (43, "EUR", 4300), ("43,50", "EUR", 4350), ("43.50", "EUR", 4350),
        ("EUR 43.50", "EUR", 4350), ("43.5 EUR", "EUR", 4350), ("€ 43,50", "EUR", 4350), ("1,234.50", "EUR", 123450),
        ("1.234,50", "EUR", 123450), ("1\u00a0234,50", "EUR", 123450), ("1'234.50", "EUR", 123450),
        ("1,200", "EUR", 120000), (".5", "EUR", 50), ("1,234,567.8", "EUR", 123456780), ("1.234.567", "EUR", 123456700),
        (25.299999999999997, "EUR", 2530), (4350, "JPY", 4350), ("1,200", "JPY", 1200), ("1.200", "JPY", 1200),
        ("JPY 4350", "JPY", 4350), (43.505, "KWD", 43505), ("43.505", "KWD", 43505), ("1,234.505", "KWD", 1234505),
    ],
)  # fmt: skip
def test_a_sum_is_read_to_the_cent(value: object, currency: str, minor: int) -> None:
    """Numbers, and texts with a point or a comma, thousands, the currency's sign; the dust of binary sums is none."""
    assert read_sum(value, currency) == minor


@pytest.mark.parametrize(
    ("value", "currency", "advice"),
    [
        (-5, "EUR", "a sum cannot be below 0"), ("-5", "EUR", "a sum cannot be below 0"),
        ("− 5 €", "EUR", "a sum cannot be below 0"), (43.505, "EUR", "EUR has 2 digits after the point"),
        ("43.5", "JPY", "JPY has no digits after the point"), (0.5, "JPY", "JPY has no digits after the point"),
        (1.0005, "KWD", "KWD has 3 digits after the point"), ("1.200", "EUR", "write 1200, or 2 digits after a point"),
        ("43,505", "KWD", "write 43505, or 3 digits after a point"),
        (1e300, "EUR", "nothing in a home costs that much"),
        ("nan", "EUR", ""), (float("nan"), "EUR", ""), (float("inf"), "EUR", ""), (True, "EUR", ""),
        ("USD 4", "EUR", ""), ("about 40", "EUR", ""), ("1,2,3", "EUR", ""), ("1.2.3,4", "EUR", ""),
        (date(2026, 6, 1), "EUR", ""), (time(0, 45), "EUR", ""), ("９", "EUR", ""), ("9" * 50, "EUR", ""),
        (",", "EUR", ""), ("1,23.4,5", "EUR", ""),
    ],
)  # fmt: skip
def test_a_sum_that_is_none_is_refused(value: object, currency: str, advice: str) -> None:
    """Below nothing, finer than the money, too much, or two things at once: refused, with advice if any."""
    assert refused(read_sum, value, currency) == advice


@given(
    st.integers(0, 10**9), st.sampled_from(["EUR", "JPY", "KWD", "USD"]), st.sampled_from(["number", "plain", "sign"])
)
def test_whatever_money_is_written_comes_back(minor: int, currency: str, how: str) -> None:
    """A sum as a number, as plain text or with its currency is the same sum, whatever the digits."""
    text = write_money(minor, currency)
    given = {"number": float(text), "plain": text, "sign": f"{currency} {text}"}[how]
    assert read_sum(given, currency) == minor


@given(st.lists(st.integers(0, 10**6), min_size=1, max_size=30), st.sampled_from(["EUR", "JPY", "KWD"]))
def test_a_sum_of_receipts_is_exact(receipts: list[int], currency: str) -> None:
    """What a spreadsheet adds up in binary is the sum of the receipts to the last digit."""
    digits = 10 ** digits_of(currency)
    assert read_sum(sum(minor / digits for minor in receipts), currency) == sum(receipts)


@pytest.mark.parametrize(
    ("value", "minutes"),
    [
        (45, 45), (45.0, 45), (0, 0), ("45", 45), ("45 min", 45), ("45min", 45), ("45 minutes", 45), ("45'", 45),
        ("90.0", 90), ("1:15", 75), ("0:45", 45), ("01:15:00", 75), ("1:15 h", 75), ("1 h 15", 75), ("1h15", 75),
        ("1 h 15 min", 75), ("2 hours", 120), ("1 hour 5 min", 65), ("1.5 h", 90), ("1,5 h", 90), (time(0, 45), 45),
        (time(1, 15), 75), (timedelta(hours=1, minutes=15), 75), (0.03125, 45), (75 / 1440, 75),
        (LONGEST_MINUTES, LONGEST_MINUTES),
    ],
)  # fmt: skip
def test_minutes_are_read(value: object, minutes: int) -> None:
    """Whole numbers, words, hours and minutes, and what a spreadsheet makes of 0:45."""
    assert read_minutes(value) == minutes


@pytest.mark.parametrize(
    ("value", "advice"),
    [
        (-3, "minutes cannot be below 0"), ("-3", "minutes cannot be below 0"), (12.5, "write whole minutes"),
        (0.5, "write whole minutes"), (0.25, "write whole minutes"), (LONGEST_MINUTES + 1, "no step takes that long"),
        ("999999999 h", "no step takes that long"), (time(0, 45, 30), "leave the seconds out"),
        ("45:00", "hours come first, as in 1:15, and make less than a day"),
        (timedelta(hours=45), "hours come first, as in 1:15, and make less than a day"),
        (-timedelta(minutes=5), "hours come first, as in 1:15, and make less than a day"),
        (datetime(1900, 1, 1, 21, tzinfo=UTC), ""), (date(2026, 6, 1), ""), (True, ""), ("about 40", ""),
        (float("nan"), ""), ("1:75", ""), ("9" * 50, ""), ("1.51 h", ""), (None, ""),
    ],
)  # fmt: skip
def test_minutes_that_are_none_are_refused(value: object, advice: str) -> None:
    """A quarter may be one of an hour or of a day; 45:00 may be hours: refused rather than guessed."""
    assert refused(read_minutes, value) == advice


@given(st.integers(0, 1439))
def test_every_time_of_day_is_its_minutes(minutes: int) -> None:
    """A spreadsheet holds 1:15 as a part of a day; as a time, as text, and as a number it is 75 minutes."""
    hours, rest = divmod(minutes, 60)
    assert read_minutes(time(hours, rest)) == read_minutes(f"{hours}:{rest:02d}") == minutes
    if Fraction(minutes * 100, 1440).denominator > 1:
        assert read_minutes(minutes / 1440) == minutes
