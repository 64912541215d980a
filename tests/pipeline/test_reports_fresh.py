"""The sample report in `reports/renter` is what the tool makes today."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests import make_pictures
from tests.make_reports import MADE, QUOTE, REPO, REPORTS, make, quote


def cells(path: Path) -> list[tuple[str, str, object]]:
    """Every filled cell of a workbook."""
    book = load_workbook(path)
    return [
        (sheet.title, cell.coordinate, cell.value)
        for sheet in book.worksheets
        for row in sheet.iter_rows()
        for cell in row
        if cell.value is not None
    ]


@pytest.mark.slow
def test_the_renters_report_is_fresh(tmp_path: Path) -> None:
    """Texts and lists to the byte, the workbook cell by cell; `make reports` writes them anew."""
    make(tmp_path)
    for name in ("inspect.txt", "plan.txt", *(name for name in MADE if name != "plan.xlsx")):
        assert (tmp_path / name).read_bytes() == (REPORTS / name).read_bytes(), f"{name} is stale: make reports"
    assert cells(tmp_path / "plan.xlsx") == cells(REPORTS / "plan.xlsx"), "plan.xlsx is stale: make reports"
    names = re.findall(r"renter/([\w.-]+)", (tmp_path / "plan.txt").read_text("utf-8").partition("Wrote ")[2])
    assert sorted(names) == sorted(MADE), "the report holds every file that the plan says it wrote, and no other"


@pytest.mark.slow
@pytest.mark.xdist_group("quote")
def test_the_quote_of_the_stagers_client_is_fresh() -> None:
    """The page to the byte."""
    assert quote() == QUOTE.read_bytes(), "reports/stager/quote.html is stale: make reports"


def test_the_readmes_pictures_are_of_what_the_tool_makes_today() -> None:
    """Each picture is there, is shown in the README or a guide, and was made from the file as it stands."""
    assert json.loads(make_pictures.SOURCES.read_text("utf-8")) == make_pictures.sources(), "stale: make reports"
    pages = [REPO / "README.md", *(REPO / "reports").glob("*.md")]
    shown = " ".join(page.read_text("utf-8") for page in pages)
    for name in make_pictures.MADE_FROM:
        assert (make_pictures.PICTURES / name).read_bytes().startswith(b"\x89PNG")
        assert f"pictures/{name}" in shown
