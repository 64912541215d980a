from __future__ import annotations

import pytest

from budgetfix.exports.palette import PAIRS, contrast


def test_black_on_white_is_twenty_one() -> None:
    """The ratio runs from 1 to 21 (WCAG 2.2, definition of contrast ratio)."""
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)
    assert contrast("#777777", "#FFFFFF") == pytest.approx(4.48, abs=0.005)  # just fails AA, as WCAG's papers tell
    assert contrast("#1F4E4A", "#1F4E4A") == 1


@pytest.mark.parametrize(("text", "ground"), PAIRS)
def test_every_text_can_be_read_on_its_ground(text: str, ground: str) -> None:
    """Text keeps 4.5 to 1 on every ground it is used on (WCAG 2.2, 1.4.3, level AA)."""
    assert contrast(text, ground) >= 4.5
