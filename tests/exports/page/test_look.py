from __future__ import annotations

import re
from importlib.resources import files

import pytest

from budgetfix.exports import palette
from budgetfix.exports.page.page import NAMES
from budgetfix.exports.palette import contrast

STYLE = files("budgetfix.exports.page").joinpath("page.css").read_text("utf-8")
ON_THE_PAGE = [
    *(pair for pair in palette.PAIRS if palette.YOURS not in pair),
    (palette.BAR, palette.TEAL),
]
SEEN = [(palette.TEAL, palette.WHITE), (palette.TEAL, palette.STRAW), (palette.QUIET, palette.STRAW)]
"""Focus rings, buttons, the slider and its bars, each with its ground."""


@pytest.mark.parametrize(("text", "ground"), ON_THE_PAGE)
def test_text_can_be_read(text: str, ground: str) -> None:
    """4.5 to 1 (WCAG 2.2, 1.4.3)."""
    assert contrast(text, ground) >= 4.5


@pytest.mark.parametrize(("sign", "ground"), SEEN)
def test_controls_can_be_seen(sign: str, ground: str) -> None:
    """3 to 1 for what is no text (WCAG 2.2, 1.4.11)."""
    assert contrast(sign, ground) >= 3


def test_the_sheet_knows_no_colour_but_the_palettes() -> None:
    """Every colour is a name, every name is in the palette, and none is there for nothing."""
    assert re.findall(r"#[0-9a-fA-F]{3,8}\b(?=[;} ])", STYLE) == []
    assert set(re.findall(r"var\(--([\w-]+)\)", STYLE)) == {name.lower().replace("_", "-") for name in NAMES}
