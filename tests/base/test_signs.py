"""Signs that do something instead of being read."""

from __future__ import annotations

import pytest

from budgetfix.base.signs import forbidden, shortened, shown, tidied, whole, without


@pytest.mark.parametrize("sign", ["\u202e", "\u2066", "\u200b", "\ufeff", "\u00ad", "\u200f", "\U000e0041"])
def test_signs_that_nobody_sees_are_taken_out(sign: str) -> None:
    """Overrides and isolates (UAX #9), spaces of no width, marks of byte order, soft hyphens, tags."""
    assert tidied(f"so{sign}fa") == "sofa"


@pytest.mark.parametrize(
    "text", ["\U0001f469\u200d\U0001f373", "\u0646\u200c\u0645", "e\u0301", "\u2764\ufe0f", "\u845b\U000e0100"]
)
def test_what_scripts_and_pictures_need_stays(text: str) -> None:
    """A picture of two signs, a Persian word, an accent of its own, a sign with its form, a written form of a name
    (variation selectors 17 to 256, UTS #37).
    """
    assert tidied(text) == text
    assert forbidden(text) == ""
    assert shown(text) == text


@pytest.mark.parametrize(
    ("text", "said"),
    [("a\x1b[31m", "\\x1b"), ("\x07", "\\x07"), ("\x9b2J", "\\x9b"), ("\x00", "\\x00"), ("\ud800", "\\ud800"),
     ("\x7f", "\\x7f")],
)  # fmt: skip
def test_controls_are_forbidden(text: str, said: str) -> None:
    """What a terminal would obey (ECMA-48), nothing at all, half a sign: each is named, and can be left out."""
    assert forbidden(text) == said
    assert forbidden(without(text)) == ""


def test_tabs_and_ends_of_lines_are_spaces_not_controls() -> None:
    """A cell may hold several lines."""
    assert forbidden("a\tb\r\nc\x85d") == ""


def test_what_is_shown_does_nothing() -> None:
    """Each sign that would do something is written out; spaces of other scripts stay."""
    assert shown("a\x1b]0;b\x07\u202e\n") == "a\\x1b]0;b\\x07\\u202e\\n"
    assert shown("a\u00a0b\u3000c") == "a\u00a0b\u3000c"


def test_a_quote_is_short_and_keeps_its_end() -> None:
    """The last sign closes the quote."""
    assert shortened(f"'{'x' * 50}'", 20) == f"'{'x' * 17}…'"
    assert shortened("'sofa'", 20) == "'sofa'"


def test_halves_of_a_sign_are_put_together() -> None:
    """JSON writes a sign outside of the first 65,536 as two (RFC 8259, 7); half a sign stays half."""
    assert whole("\ud83d\udc69") == "\U0001f469"
    assert forbidden(whole("\ud83d")) == "\\ud83d"
