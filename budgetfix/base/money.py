"""Money in minor units, read and written exactly.

Digits after the point are those of ISO 4217, kept here: editions of the Unicode CLDR, which babel carries, differ in
what people still pay with (HUF, COP, IDR), and a plan must not change with the edition.
"""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from budgetfix.base.limits import MOST_MONEY_MINOR, MOST_NUMBER

_BY_DIGITS = {
    0: "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF",
    3: "BHD IQD JOD KWD LYD OMR TND",
    4: "CLF UYW",
}
_OTHERWISE = 2
DIGITS: dict[str, int] = {code: digits for digits, codes in _BY_DIGITS.items() for code in codes.split()}
"""Minor digits of the currencies that have not two of them (ISO 4217, table A.1, "minor unit"; from memory)."""
_KNOWN = (
    "AED ARS AUD BGN BHD BRL CAD CHF CLP CNY COP CZK DKK EGP EUR GBP HKD HUF IDR ILS INR ISK JOD JPY KES KRW KWD MAD "
    "MXN MYR NGN NOK NZD OMR PEN PHP PKR PLN PYG RON RSD SAR SEK SGD THB TND TRY TWD UAH UGX USD UYU VND XAF XOF XPF "
    "ZAR"
)
CURRENCIES = frozenset(_KNOWN.split())
"""Currencies that are known without asking babel."""

LETTER_PAPER = ("USD", "CAD", "MXN", "PHP", "CLP", "COP")
"""Homes of Letter paper; everywhere else prints on A4."""

_NUMBER = re.compile(r"-?(\d+(\.\d*)?|\.\d+)")
_THOUSANDS = re.compile(r"-?\d{1,3}(,\d{3})+(\.\d+)?")


@lru_cache(maxsize=64)
def digits_of(currency: str) -> int:
    """Digits after the point. Errors: KeyError for no such currency."""
    if currency not in CURRENCIES:
        from babel.numbers import is_currency

        if not is_currency(currency):
            raise KeyError(currency)
    return DIGITS.get(currency, _OTHERWISE)


def read_number(value: object) -> Decimal:
    """An exact decimal from a number or plain text. Errors: ValueError with advice."""
    if isinstance(value, bool):
        raise ValueError("")
    if isinstance(value, (int, Decimal)):
        return _no_slip(Decimal(value))
    text = format(Decimal(repr(value)), "f") if isinstance(value, float) else str(value).strip()
    if "," in text:
        raise ValueError(_about_comma(text))
    if not _NUMBER.fullmatch(text):
        raise ValueError("")
    return _no_slip(Decimal(text))


def _no_slip(number: Decimal) -> Decimal:
    if number.is_finite() and abs(number) <= MOST_NUMBER:
        return number
    raise ValueError(f"no number here is above {MOST_NUMBER:,}")


def _about_comma(text: str) -> str:
    """Advice for a number with commas: `1,200` is told apart from `12,5`."""
    if _THOUSANDS.fullmatch(text):
        return f"write no comma between thousands: {text.replace(',', '')}"
    swapped = text.replace(".", "").replace(",", ".")
    return f"write a point, not a comma: {swapped}" if _NUMBER.fullmatch(swapped) else "write no commas"


def read_money(value: object, currency: str) -> int:
    """Minor units, exactly. Errors: ValueError with advice (more digits than the currency has, negative)."""
    number = read_number(value)
    if number < 0:
        raise ValueError("money cannot be below 0")
    scaled = Fraction(number) * 10 ** digits_of(currency)
    if scaled.denominator != 1:
        raise ValueError(f"{currency} has {digits_of(currency)} digits after the point")
    if scaled > MOST_MONEY_MINOR:
        raise ValueError(f"no sum is above {write_money(MOST_MONEY_MINOR, currency)}")
    return int(scaled)


def write_money(minor: int, currency: str) -> str:
    """Plain digits: 13780 in EUR is `137.80`."""
    digits = digits_of(currency)
    sign, amount = ("-" if minor < 0 else ""), abs(minor)
    if digits == 0:
        return f"{sign}{amount}"
    return f"{sign}{amount // 10**digits}.{amount % 10**digits:0{digits}d}"


def write_money_long(minor: int, currency: str) -> str:
    """With the currency's sign, by the CLDR, and thousands: `€1,137.80`."""
    from babel.numbers import format_currency

    digits = digits_of(currency)
    pattern = f"¤#,##0{'.' if digits else ''}{'0' * digits}"
    amount = Decimal(minor).scaleb(-digits)
    return format_currency(amount, currency, pattern, locale="en", currency_digits=False)


__all__ = [
    "CURRENCIES",
    "DIGITS",
    "LETTER_PAPER",
    "digits_of",
    "read_money",
    "read_number",
    "write_money",
    "write_money_long",
]
