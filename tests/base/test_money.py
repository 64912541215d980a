"""Money: minor units in, plain digits out, nothing rounded on the way."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction

import pytest
from babel.numbers import get_currency_precision
from hypothesis import given
from hypothesis import strategies as st

from budgetfix.base.limits import MOST_NUMBER
from budgetfix.base.money import (
    CURRENCIES,
    DIGITS,
    digits_of,
    read_money,
    read_number,
    write_money,
    write_money_long,
)
from budgetfix.base.numbers import half_up


@pytest.mark.parametrize(
    ("typed", "currency", "minor"),
    [
        ("137.80", "EUR", 13780),
        ("137.8", "EUR", 13780),
        (137.8, "EUR", 13780),
        (Decimal("137.80"), "EUR", 13780),
        (0.29, "USD", 29),
        (1.1, "USD", 110),
        (4.35, "USD", 435),
        (150, "USD", 15000),
        (0, "USD", 0),
        ("0", "JPY", 0),
        ("1200", "JPY", 1200),
        ("1200.00", "JPY", 1200),
        ("12.345", "BHD", 12345),
        (" 12.50 ", "GBP", 1250),
        (".5", "GBP", 50),
        ("12.", "GBP", 1200),
        (1e-7, "USD", None),
        (1e10, "USD", 10**12),
        ("9999999999.99", "USD", 10**12 - 1),
    ],
)
def test_money_is_read_exactly(typed: object, currency: str, minor: int | None) -> None:
    """What is typed becomes whole minor units: 137.80 euros are 13,780 cents, 0.29 dollars 29 (never 28.999)."""
    if minor is None:
        with pytest.raises(ValueError, match="digits after the point"):
            read_money(typed, currency)
    else:
        assert read_money(typed, currency) == minor


@pytest.mark.parametrize(
    ("typed", "currency", "advice"),
    [
        ("12,5", "EUR", "write a point, not a comma: 12.5"),
        ("10000000000.01", "USD", "no sum is above 10000000000.00"),
        (10**12 + 1, "JPY", "no number here is above 1,000,000,000,000"),
        ("1" * 5000, "JPY", "no number here is above 1,000,000,000,000"),
        ("1.200,50", "EUR", "write a point, not a comma: 1200.50"),
        ("1,200", "EUR", "write no comma between thousands: 1200"),
        ("1,200.50", "USD", "write no comma between thousands: 1200.50"),
        ("12,5O", "USD", "write no commas"),
        ("12.505", "USD", "USD has 2 digits after the point"),
        ("12.50", "JPY", "JPY has 0 digits after the point"),
        ("-3", "USD", "money cannot be below 0"),
        (-0.01, "USD", "money cannot be below 0"),
        ("12.5O", "USD", ""),
        ("$12.50", "USD", ""),
        ("3_4.50", "USD", ""),
        ("0x10", "USD", ""),
        ("1e3", "USD", ""),
        ("", "USD", ""),
        (True, "USD", ""),
        (None, "USD", ""),
        (float("nan"), "USD", ""),
        (float("inf"), "USD", ""),
        ([12], "USD", ""),
        ({"a": 1}, "USD", ""),
    ],
)
def test_what_is_no_money_is_refused(typed: object, currency: str, advice: str) -> None:
    """Commas, letters, yes and no, too many digits, less than nothing: refused, with advice where there is some."""
    with pytest.raises(ValueError, match=f"^{re.escape(advice)}$"):
        read_money(typed, currency)


def test_negative_numbers_are_read_where_they_may_stand() -> None:
    """A relief may be below 0: reading a number does not mind, reading money does."""
    assert read_number("-0.25") == Decimal("-0.25")


@pytest.mark.parametrize(
    ("minor", "currency", "plain", "long"),
    [
        (13780, "EUR", "137.80", "€137.80"),
        (5, "USD", "0.05", "$0.05"),
        (-120, "USD", "-1.20", "-$1.20"),
        (-1, "USD", "-0.01", "-$0.01"),
        (0, "USD", "0.00", "$0.00"),
        (113780, "USD", "1137.80", "$1,137.80"),
        (1200, "JPY", "1200", "¥1,200"),
    ],
)
def test_money_is_written(minor: int, currency: str, plain: str, long: str) -> None:
    """Plain digits for lists and files; the currency's sign and thousands for people."""
    assert write_money(minor, currency) == plain
    assert write_money_long(minor, currency) == long


@given(st.integers(min_value=0, max_value=10**12), st.sampled_from(sorted(CURRENCIES | DIGITS.keys())))
def test_written_money_reads_back(minor: int, currency: str) -> None:
    """Whatever is written can be read again, to the last digit."""
    assert read_money(write_money(minor, currency), currency) == minor


def test_the_table_says_what_the_cldr_says() -> None:
    """Digits of ISO 4217 are those of the Unicode CLDR, where its editions (babel 2.14 to 2.19) agree with themselves:
    what they turned about, or count by what is still paid with, is left out.
    """
    unsettled = {"COP", "HUF", "IDR", "RSD", "IQD"}
    for code in sorted((CURRENCIES | DIGITS.keys()) - unsettled):
        assert get_currency_precision(code) == digits_of(code), code


def test_digits_of_the_standard() -> None:
    """Minor units of ISO 4217, from memory: two of most, none of the yen, three of the dinars of the Gulf."""
    assert [digits_of(code) for code in ("USD", "JPY", "BHD", "CLF", "XCD")] == [2, 0, 3, 4, 2]
    assert [digits_of(code) for code in ("COP", "HUF", "IDR", "RSD", "IQD")] == [2, 2, 2, 2, 3]
    assert write_money_long(123450, "HUF").endswith("1,234.50")


def test_an_unknown_currency() -> None:
    """A currency that nobody has is an error of its own."""
    with pytest.raises(KeyError, match="EUX"):
        digits_of("EUX")


@pytest.mark.parametrize(
    ("price", "rate", "tax", "total"),
    [
        ("428.99", "8.25", "35.39", "464.38"),  # 35.391675; the book prints another total, which its own sum refutes
        ("34.88", "8.25", "2.88", "37.76"),  # 2.8776
        ("499.00", "8.81", "43.96", "542.96"),  # 43.9619
    ],
)
def test_sales_tax_as_published(price: str, rate: str, tax: str, total: str) -> None:
    """OpenStax, Contemporary Mathematics, Discounts, Markups, and Sales Tax: price, tax and total to the cent."""
    minor = read_money(price, "USD")
    owed = half_up(minor * Fraction(read_number(rate)) / 100)
    assert (write_money(owed, "USD"), write_money(minor + owed, "USD")) == (tax, total)


@pytest.mark.parametrize(
    ("total", "rate", "price"), [("36.56", "5.75", "34.57"), ("97.17", "4.25", "93.21"), ("467.64", "8.25", "432.00")]
)
def test_price_before_tax_as_published(total: str, rate: str, price: str) -> None:
    """The same section, backwards: what a thing cost before tax."""
    before = half_up(read_money(total, "USD") / (1 + Fraction(read_number(rate)) / 100))
    assert write_money(before, "USD") == price


@pytest.mark.parametrize(("tenths", "minor"), [(1234, 123), (1235, 124), (1236, 124), (1230, 123)])
def test_the_third_decimal(tenths: int, minor: int) -> None:
    """Kansas Statutes 79-3676(a): compute to the third decimal, round up when it exceeds 4."""
    assert half_up(Fraction(tenths, 10)) == minor


def test_the_largest_number() -> None:
    """A million millions is read, one more is not, on either side of 0; nor is what is no number at all."""
    assert [int(read_number(most)) for most in (MOST_NUMBER, -MOST_NUMBER)] == [MOST_NUMBER, -MOST_NUMBER]
    for far in (MOST_NUMBER + 1, -MOST_NUMBER - 1, Decimal("NaN"), Decimal("Infinity"), Decimal("-Infinity")):
        with pytest.raises(ValueError, match=r"no number here is above 1,000,000,000,000"):
            read_number(far)
