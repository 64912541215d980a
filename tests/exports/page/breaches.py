"""What the accessibility engine finds on a page: axe-core, its rules for WCAG 2.2 A and AA and its best practices."""

from __future__ import annotations

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


def breaches(page: Page) -> list[str]:
    """Rules of axe-core that the page breaks, each with the first element that does."""
    found = Axe().run(page, options={"runOnly": {"type": "tag", "values": TAGS}}).response
    assert len(found["passes"]) > 20
    return [f"{one['id']}: {one['nodes'][0]['html']}" for one in found["violations"]]
