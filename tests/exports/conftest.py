"""A Chromium for the tests of the page and of drawings, one a process, and pages opened in it from files."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

Opener = Callable[..., "Opened"]


@dataclass
class Opened:
    """A page in the browser, with what it asked for and what it complained of since it was opened."""

    page: Page
    asked: list[str] = field(default_factory=list)
    complaints: list[str] = field(default_factory=list)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """The system's Chromium, without a window."""
    command = shutil.which("chromium") or shutil.which("chromium-browser")
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=command, args=["--no-sandbox", "--disable-dev-shm-usage"])
        yield started
        started.close()


@pytest.fixture
def open_page(browser: Browser, tmp_path: Path) -> Iterator[Opener]:
    """A function that writes bytes to a file and opens it, `width` pixels wide; each time in a fresh profile."""
    contexts = []

    def opened(data: bytes, width: int = 1200, scripts: bool = True) -> Opened:
        file = tmp_path / "plan.html"
        file.write_bytes(data)
        context = browser.new_context(viewport={"width": width, "height": 900}, java_script_enabled=scripts)
        contexts.append(context)
        made = Opened(context.new_page())
        made.page.on("request", lambda request: made.asked.append(request.url))
        made.page.on("console", lambda message: made.complaints.append(message.text))
        made.page.on("pageerror", lambda error: made.complaints.append(str(error)))
        made.page.goto(file.as_uri())
        return made

    yield opened
    for context in contexts:
        context.close()
