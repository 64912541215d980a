"""The sample report in `reports/renter` is what the tool makes today."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.make_reports import REPORTS, make


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
    for name in ("inspect.txt", "plan.txt", "plan.ics", "buy.csv", "do.csv"):
        assert (tmp_path / name).read_bytes() == (REPORTS / name).read_bytes(), f"{name} is stale: make reports"
    assert cells(tmp_path / "plan.xlsx") == cells(REPORTS / "plan.xlsx"), "plan.xlsx is stale: make reports"
