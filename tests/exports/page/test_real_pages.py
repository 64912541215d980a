"""The pages of the three demo plans, drawings and all, in Chromium: as pictures, for everybody, on every width."""

from __future__ import annotations

import struct
import zlib

import pytest
from playwright.sync_api import Page

from budgetfix.exports.drawings.draw import pictures
from budgetfix.exports.page.page import plan_page
from tests.exports.conftest import Opener
from tests.exports.page.breaches import breaches
from tests.exports.page.test_page_in_chromium import comes
from tests.scenarios import EACH, run

pytestmark = [pytest.mark.chromium, pytest.mark.slow]


def page_of(name: str) -> bytes:
    """A demo plan's page."""
    book = run(name).book
    return plan_page(book, pictures(book))


@EACH
def test_nobody_is_kept_out(name: str, open_page: Opener) -> None:
    """No breach of WCAG 2.2 AA (axe-core) on phone and desk, here and at both ends of the slider, all opened up."""
    data = page_of(name)
    for width in (375, 1200):
        page = open_page(data, width).page
        page.evaluate("document.querySelectorAll('details').forEach(one => one.open = true)")
        assert breaches(page) == []
        if page.locator("#slide").count():
            for key in ("Home", "End"):
                page.locator("#slide").press(key)
        assert breaches(page) == []


@EACH
def test_it_is_quiet_alone_and_fits_every_width(name: str, open_page: Opener) -> None:
    """One request, no complaint, nothing wider than the screen from 320 to 1,200 pixels."""
    data = page_of(name)
    for width in (320, 375, 768, 1200):
        opened = open_page(data, width)
        assert opened.asked == [opened.page.url]
        assert opened.complaints == []
        assert opened.page.evaluate("document.documentElement.scrollWidth") <= width


@EACH
def test_a_picture_of_it_shows_its_drawings(name: str, open_page: Opener) -> None:
    """Every drawing is seen: where it stands on the page there are marks, not paper."""
    page = open_page(page_of(name), 1200).page
    drawings = page.locator("#changes svg")
    assert drawings.count() == len(pictures(run(name).book))
    for at in range(0, drawings.count(), 5):
        assert _shades(drawings.nth(at).screenshot()) > 50


def _shades(png: bytes) -> int:
    """How many different bytes the dots of a PNG have (PNG specification, sections 5 and 11)."""
    at, packed = 8, b""
    while at < len(png):
        (length,) = struct.unpack(">I", png[at : at + 4])
        if png[at + 4 : at + 8] == b"IDAT":
            packed += png[at + 8 : at + 8 + length]
        at += 12 + length
    return len(set(zlib.decompress(packed)))


@EACH
def test_ticks_outlive_a_reload(name: str, open_page: Opener) -> None:
    """The first thing to buy and the last step, ticked, are ticked when the page comes again."""
    page: Page = open_page(page_of(name), 375).page
    boxes = [page.locator("#buy [data-tick]").first, page.locator("#do [data-tick]").last]
    for box in boxes:
        box.check()
    assert comes(page, lambda: all(box.is_checked() for box in boxes))
