"""What all tests share: tests that need a program say NOT RUN where it is missing, and fail where it was promised."""

from __future__ import annotations

import os
import shutil

import pytest

PROGRAMS = {
    "libreoffice": ("LibreOffice", ("soffice", "libreoffice")),
    "poppler": ("poppler", ("pdftotext",)),
    "chromium": ("Chromium", ("chromium", "chromium-browser")),
}


def missing_program(mark: str) -> str | None:
    """Name of the program behind a mark, where it is not installed."""
    name, commands = PROGRAMS[mark]
    return None if any(shutil.which(command) for command in commands) else name


def pytest_runtest_setup(item: pytest.Item) -> None:
    """Skip a marked test whose program is missing; under BUDGETFIX_CI=1 fail it: there it should be installed."""
    for mark in PROGRAMS:
        if item.get_closest_marker(mark) is None:
            continue
        name = missing_program(mark)
        if name and os.environ.get("BUDGETFIX_CI") == "1":
            pytest.fail(f"{name} is missing, and the gate promised it", pytrace=False)
        if name:
            pytest.skip(f"NOT RUN: {name} is missing")
