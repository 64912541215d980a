"""Lengths as people read them off a tape: feet and inches with fractions, metres, centimetres, millimetres."""

from __future__ import annotations

import math
import re
from decimal import Decimal
from fractions import Fraction

MM_PER: dict[str, Fraction] = {
    "ft": Fraction(3048, 10),
    "in": Fraction(254, 10),
    "m": Fraction(1000),
    "cm": Fraction(10),
    "mm": Fraction(1),
}
"""Exactly: 36 in = 914.4 mm (NBS Circular 572, Addendum, 1959)."""

WANTED_LENGTH = "a length such as 6' 2 1/2\", 74.5 or 188 cm"
LONGEST_MM = 10**6
TAPE_DENOMINATORS = (2, 4, 8, 16, 32, 64)

_SPELLINGS = {
    "ft": ("feet", "foot", "ft.", "ft", "'", "’", "′"),
    "in": ("inches", "inch", "in.", "in", '"', "”", "“", "″", "''", "’’"),
    "mm": ("mm",),
    "cm": ("cm",),
    "m": ("meters", "metres", "meter", "metre", "m"),
}
_UNIT_OF = {spelling: unit for unit, spellings in _SPELLINGS.items() for spelling in spellings}
_UNIT = "|".join(re.escape(word) for word in sorted(_UNIT_OF, key=lambda word: (-len(word), word)))
_PART = re.compile(
    rf"(?:(?P<whole>\d+)[\s-]+)?(?P<over>\d+)\s*/\s*(?P<under>\d+)\s*(?P<unit_f>{_UNIT})?"
    rf"|(?P<decimal>\d+(?:\.\d+)?|\.\d+)\s*(?P<unit_d>{_UNIT})?"
)
_GAP = re.compile(r"\s*-\s*(?=[\d.])|\s*")
_GLYPHS = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3"}

Part = tuple[Fraction, str]


class NotALength(ValueError):
    """Nothing like a length was typed: there is no better advice than an example."""


def read_length(value: object, unit: str, *, negative: bool = False) -> float:
    """Millimetres of what was typed; a bare number is in `unit` (in, cm, mm).

    Errors: ValueError with a short text that says why and what to write instead.
    """
    if isinstance(value, bool):
        raise ValueError("yes or no is not a length")
    if isinstance(value, (int, float)):
        if not math.isfinite(value):
            raise ValueError("that is not a number")
        mm = Fraction(repr(value)) * MM_PER[unit]
    elif isinstance(value, str):
        mm = _read_text(value, unit)
    else:
        raise ValueError("that is not a length")
    if abs(mm) > LONGEST_MM:
        raise ValueError("nothing in a home is that long")
    if mm < 0 and not negative:
        raise ValueError("a length here is never below 0")
    return float(mm)


def _read_text(text: str, unit: str) -> Fraction:
    plain = text.strip().lower().replace("⁄", "/")
    for glyph, spelled in _GLYPHS.items():
        plain = plain.replace(glyph, f" {spelled}")
    plain = " ".join(plain.split())
    if not plain or len(plain) > 60:
        raise NotALength("nothing that can be a length is written there")
    if "," in plain:
        raise ValueError(f"write a point, not a comma: {plain.replace(',', '.')}")
    sign = -1 if plain[0] in "-−" else 1
    return sign * _sum(_parts(plain.lstrip("-− ") if sign < 0 else plain, text), unit)


def _parts(plain: str, text: str) -> list[Part]:
    """The amounts with their units ('' where none is written), in the order they stand."""
    found: list[Part] = []
    at = 0
    while at < len(plain):
        match = _PART.match(plain, at)
        if match is None:
            raise NotALength(f"{text.strip()!r} cannot be read as a length")
        found.append((_amount(match), _UNIT_OF.get(match["unit_f"] or match["unit_d"] or "", "")))
        at = match.end()
        gap = _GAP.match(plain, at)
        at = gap.end() if gap else at
    return found


def _amount(match: re.Match[str]) -> Fraction:
    if match["decimal"] is not None:
        return Fraction(match["decimal"])
    over, under = int(match["over"]), int(match["under"])
    if under not in TAPE_DENOMINATORS:
        raise ValueError(f"a tape has no {over}/{under}: halves, quarters, eighths, 16ths, 32nds or 64ths")
    if over >= under:
        digits = match["over"]
        hint = f"; did you mean {digits[:-1]} {digits[-1]}/{under}?" if len(digits) > 1 and not match["whole"] else ""
        raise ValueError(f"{over}/{under} is more than a whole one{hint}")
    return int(match["whole"] or 0) + Fraction(over, under)


def _sum(parts: list[Part], unit: str) -> Fraction:
    if len(parts) == 1:
        amount, own = parts[0]
        return amount * MM_PER[own or unit]
    named = [own for _, own in parts]
    if named[0] == "":
        first, second = _short(parts[0][0]), _short(parts[1][0])
        raise ValueError(f"two numbers without units; write {first}' {second}\" or {first}.{second}")
    if named == ["ft", ""]:
        named = ["ft", "in"]
    if tuple(named) not in {("ft", "in"), ("m", "cm"), ("m", "mm"), ("cm", "mm"), ("m", "cm", "mm")}:
        raise ValueError("those units do not go together in that order")
    return _stacked([amount for amount, _ in parts], named)


def _stacked(amounts: list[Fraction], named: list[str]) -> Fraction:
    """Feet and inches, metres and centimetres: whole ones first, the rest less than one of them."""
    for amount, own, after, under in zip(amounts, named, amounts[1:], named[1:], strict=False):
        if amount.denominator != 1:
            raise ValueError(f"write whole {own} before {under}")
        if after * MM_PER[under] >= MM_PER[own]:
            raise ValueError(f"{_short(after)} {under} is a whole {own} or more")
    return sum((amount * MM_PER[own] for amount, own in zip(amounts, named, strict=True)), Fraction(0))


def _short(amount: Fraction) -> str:
    return f"{float(amount):g}"


def in_unit(mm: float, unit: str) -> float | str:
    """The length as a bare number in `unit` if that reads back to the same length, else as text in mm."""
    number = round(mm / float(MM_PER[unit]), 6)
    if read_length(number, unit, negative=True) == mm:
        return int(number) if number == int(number) else number
    return f"{format(Decimal(repr(mm)), 'f').removesuffix('.0')} mm"


def write_length(mm: float, unit: str) -> str:
    """For people: `6 1/2 in` (to 1/8 in), or `188 cm`, `1880 mm` (to 5 mm)."""
    if unit == "in":
        return f"{_mixed(_nearest(mm, MM_PER['in'] / 8) / 8)} in"
    fives = _nearest(mm, Fraction(5)) * 5
    return f"{fives.numerator} mm" if unit == "mm" else f"{_short(fives / 10)} cm"


def _nearest(mm: float, step: Fraction) -> Fraction:
    """How many steps, halves away from zero."""
    steps = int(abs(Fraction(repr(mm))) / step + Fraction(1, 2))
    return Fraction(-steps if mm < 0 else steps)


def _mixed(inches: Fraction) -> str:
    whole, rest = divmod(abs(inches), 1)
    sign = "-" if inches < 0 else ""
    words = ([str(whole)] if whole or not rest else []) + ([f"{rest.numerator}/{rest.denominator}"] if rest else [])
    return sign + " ".join(words)
