"""Drawings as a viewer sets them: real letters, real widths, on a phone and on a desk."""

from __future__ import annotations

from itertools import combinations

import pytest

from budgetfix.exports.drawings.draw import pictures
from tests.exports.conftest import Opener
from tests.exports.drawings.reading_svg import Box, overlap
from tests.scenarios import EACH, run

pytestmark = pytest.mark.chromium

BOXES = """() => [...document.querySelectorAll('svg')].map(svg => {
  const box = one => { const r = one.getBoundingClientRect(); return [r.left, r.top, r.right, r.bottom]; };
  return [box(svg), [...svg.querySelectorAll('text')].map(text => [text.textContent, box(text)])];
})"""
PAGE = "<!doctype html><meta charset=utf-8><style>{}</style>{}"
FONTS = ("", "*{font-family:serif}", "*{font-family:monospace}")
"""The drawings' own letters, and two that a viewer may put in their place."""
SMALLEST = 6.9
"""Pixels that the smallest letters are high on a phone of 375 pixels."""


def seen(open_page: Opener, html: str, wide: int) -> list[tuple[Box, list[tuple[str, Box]]]]:
    """Every drawing of a page with the ground of its texts, in pixels."""
    found = open_page(html.encode(), wide).page.evaluate(BOXES)
    return [(tuple(frame), [(text, tuple(box)) for text, box in words]) for frame, words in found]


@EACH
def test_no_label_leaves_its_picture_or_lies_on_another(name: str, open_page: Opener) -> None:
    """Measured by Chromium with its own letters, at 375 and 1,200 pixels, whatever font it takes."""
    body = "".join(f"<div>{one.svg}</div>" for one in pictures(run(name).book))
    for style in FONTS:
        for wide in (375, 1200):
            css = f"svg{{width:{343 if wide == 375 else 540}px}}{style}"
            for frame, words in seen(open_page, PAGE.format(css, body), wide):
                scale = (frame[2] - frame[0]) / 360
                for text, box in ((text, _ink(box)) for text, box in words):
                    inside = (
                        frame[0] - 1 <= box[0],
                        frame[1] - 1 <= box[1],
                        box[2] <= frame[2] + 1,
                        box[3] <= frame[3] + 1,
                    )
                    assert all(inside), (style, wide, text)
                for (one, here), (other, there) in combinations(words, 2):
                    assert overlap(_ink(here), _ink(there)) <= 3 * scale * scale, (style, wide, one, other)


def _ink(box: Box) -> Box:
    """The part of a line of text that letters fill: a box has room above and below them."""
    if box[2] - box[0] >= box[3] - box[1]:
        air = 0.2 * (box[3] - box[1])
        return (box[0], box[1] + air, box[2], box[3] - air)
    air = 0.2 * (box[2] - box[0])
    return (box[0] + air, box[1], box[2] - air, box[3])


@pytest.mark.xdist_group("renter")
def test_letters_are_large_enough_on_a_phone(open_page: Opener) -> None:
    """The smallest words of a drawing stay readable at 343 pixels of width."""
    body = "".join(f"<div>{one.svg}</div>" for one in pictures(run("renter").book))
    css = "svg{width:343px}"
    for _, words in seen(open_page, PAGE.format(css, body), 375):
        assert min(min(box[2] - box[0], box[3] - box[1]) for text, box in words if len(text) > 2) >= SMALLEST
